import { type BothForms, NUTRIENT_ELEMENTS } from "nutrient-core";
import { shown } from "./number.ts";
import type { RateUnit } from "./rate.ts";

const PAIRS = { P: "P2O5", K: "K2O" } as const;

/** What is delivered, element first and the label's oxide beside P and K: "N 150, P 33 (P2O5 75), K 125 (K2O 150) ppm". */
export function deliveredLine(delivered: BothForms, unit: string | RateUnit): string {
  const { sign, perKept } = typeof unit === "string" ? { sign: unit, perKept: 1 } : unit;
  const parts = NUTRIENT_ELEMENTS.flatMap((element) => {
    const amount = delivered[element];
    if (amount === undefined || amount === 0) return [];
    const oxide = element === "P" || element === "K" ? PAIRS[element] : undefined;
    const beside = oxide ? ` (${oxide} ${shown((delivered[oxide] ?? 0) * perKept)})` : "";
    return [`${element} ${shown(amount * perKept)}${beside}`];
  });
  return parts.length > 0 ? `${parts.join(", ")} ${sign}` : "no nutrient";
}
