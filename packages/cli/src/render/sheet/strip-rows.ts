import type { MilestoneDate, SeasonEvent, SeasonPlan, StageSpan } from "nutrient-core";

/** Plantings whose season looks the same: one row of the strip. */
export interface StripRow {
  readonly name: string;
  readonly stages: readonly StageSpan[];
  readonly events: readonly SeasonEvent[];
  readonly flower: MilestoneDate | undefined;
}

/** Longer names would run out of the strip. */
const LONGEST_NAME = 70;

/** The rows of the strip, those alike as one, in the order of the plantings. */
export function stripRows({ stages, events, milestones }: SeasonPlan): readonly StripRow[] {
  const groups = new Map<string, { plantings: string[]; row: Omit<StripRow, "name"> }>();
  const own = { stages: byPlanting(stages), events: byPlanting(events), milestones: byPlanting(milestones) };
  for (const [planting, spans] of own.stages) {
    const feeds = own.events.get(planting) ?? [];
    const flower = own.milestones.get(planting)?.find(({ milestone }) => milestone === "first-flower");
    const key = JSON.stringify([
      spans.map(({ id, begins, ends }) => [id, begins, ends]),
      feeds.map(({ date, status }) => [date, status]),
      [flower?.earliest, flower?.latest, flower?.basis === "observed"],
    ]);
    const group = groups.get(key);
    if (group) group.plantings.push(planting);
    else groups.set(key, { plantings: [planting], row: { stages: spans, events: feeds, flower } });
  }
  return [...groups.values()].map(({ plantings, row }) => ({ ...row, name: shortened(plantings.join(", ")) }));
}

function byPlanting<T extends { readonly planting: string }>(parts: readonly T[]): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const part of parts) {
    const group = groups.get(part.planting);
    if (group) group.push(part);
    else groups.set(part.planting, [part]);
  }
  return groups;
}

function shortened(name: string): string {
  return name.length <= LONGEST_NAME ? name : `${name.slice(0, LONGEST_NAME - 1).trimEnd()}\u2026`;
}
