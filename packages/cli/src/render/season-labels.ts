import { plantingLabel, type SeasonInput, type SeasonPlan } from "nutrient-core";

/** More places than this are counted rather than named. */
export const NAMED = 4;

/** "pots, beds", or the first names and how many more. */
export function namesInShort(names: readonly string[]): string {
  if (names.length <= NAMED) return names.join(", ");
  return `${names.slice(0, NAMED - 1).join(", ")} and ${names.length - NAMED + 1} more`;
}

/**
 * The plan as people are to read it: places that are fed together stand under all their names, where the plan and the
 * record have only the first.
 */
export function withPlaceNames({ plantings }: SeasonInput, plan: SeasonPlan): SeasonPlan {
  const labels = new Map(plantings.map((planting) => [planting.name, plantingLabel(planting)]));
  const named = <T extends { readonly planting: string }>(parts: readonly T[]): T[] =>
    parts.map((part) => ({ ...part, planting: labels.get(part.planting) ?? part.planting }));
  return {
    ...plan,
    events: named(plan.events),
    milestones: named(plan.milestones),
    stages: named(plan.stages),
    reminders: named(plan.reminders),
    budget: named(plan.budget),
    programmes: named(plan.programmes),
  };
}
