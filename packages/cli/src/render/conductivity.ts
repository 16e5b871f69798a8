import { shown, shownRange } from "./number.ts";

/** Below this no meter of a grower shows anything. */
const LEAST_SHOWN = 0.01;

interface Conducts {
  readonly ecMilliSiemensPerCm?: number;
  readonly ecRange?: readonly [number, number];
}

/** What a meter reads above the water's own; between which two readings, where labels do not say enough. */
export function conductivityLine({ ecMilliSiemensPerCm, ecRange }: Conducts): string[] {
  if (ecMilliSiemensPerCm !== undefined)
    return ecMilliSiemensPerCm >= LEAST_SHOWN
      ? [`  EC about ${shown(ecMilliSiemensPerCm, 2)} mS/cm above the water's own`]
      : [];
  if (!ecRange) return [];
  return [
    `  EC ${shownRange(...ecRange, 2)} mS/cm above the water's own: grades do not say which salts they are made of`,
  ];
}
