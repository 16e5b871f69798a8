import { LITRES_PER_CUBIC_METRE, type Measure } from "./measure.ts";
import { type Mound, moundVolume } from "./mound.ts";
import type { Plan } from "./plan.ts";

/** Litres between a bed's floor and its level surface: plan area times mean depth. */
export function bedVolume(plan: Plan, depth: Measure): Measure {
  return {
    value: plan.area.value * depth.value * LITRES_PER_CUBIC_METRE,
    expression: `(${plan.area.expression}) * (${depth.expression})`,
  };
}

/** A bed with a mound on top. */
export function moundedBedVolume(plan: Plan, depth: Measure, mound: Mound): Measure {
  const level = bedVolume(plan, depth);
  const above = moundVolume(plan, mound);
  return { value: level.value + above.value, expression: `${level.expression} + ${above.expression}` };
}
