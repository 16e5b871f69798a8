import { type Caution, raise } from "../outcome/caution.ts";
import { ceilingMayBePassed, ceilingPassed, drainsAway } from "./caution-kinds/budget.ts";
import { ofPlanting } from "./caution-kinds/planting.ts";
import type { SeasonInput } from "./season.ts";
import type { SeasonPlan } from "./season-plan.ts";

/** What to heed in what the season comes to: ceilings, and what drains away. */
export function budgetCautions({ budget, totals }: SeasonPlan, { plantings, leachingShare }: SeasonInput): Caution[] {
  const named = new Map(plantings.map((planting) => [planting.name, ofPlanting(planting)]));
  const cautions = budget.flatMap(({ planting, nutrient, ceilings }) =>
    ceilings.flatMap(({ passedOn, mayPassOn, shareUsed }): Caution[] => {
      const facts = { ...named.get(planting)!, nutrient, percentOfCeiling: shareUsed * 100 };
      if (passedOn !== null) return [raise(ceilingPassed, { ...facts, date: passedOn })];
      return mayPassOn === null ? [] : [raise(ceilingMayBePassed, { ...facts, date: mayPassOn })];
    }),
  );
  const nitrogenGrams = (totals.nutrientGrams.N ?? 0) * leachingShare;
  if (!(nitrogenGrams > 0)) return cautions;
  return [...cautions, raise(drainsAway, { leachedPercent: leachingShare * 100, nitrogenGrams })];
}
