import type { Measure } from "./measure.ts";
import { type Mound, moundVolume } from "./mound.ts";
import { rectangularPlan } from "./plan.ts";

/**
 * Litres in a free-standing ridge of the same outline from end to end.
 *
 * @param baseWidth At the ground, metres.
 * @param length Along the ridge, metres.
 */
export function ridgeVolume(baseWidth: number, length: number, mound: Mound): Measure {
  return moundVolume(rectangularPlan(baseWidth, length), mound);
}
