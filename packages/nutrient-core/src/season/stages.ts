import { type CivilDate, dayNumber } from "./civil-date.ts";
import type { MilestoneCalendar } from "./milestones.ts";
import type { Condition, Stage } from "./programme.ts";
import type { Planting } from "./season.ts";

/** A stage of a planting's programme with its days. */
export interface PlacedStage {
  readonly stage: Stage;
  readonly begins: number;
  /** Last day, included. */
  readonly ends: number;
  readonly provisional: boolean;
}

/** A stage whose beginning cannot be told, and why. */
export interface UnplacedStage {
  readonly stage: Stage;
  readonly condition: Condition;
}

/**
 * Puts a programme's stages on days. A stage lasts until the next one begins, or until its own end where that is
 * earlier; one that would begin before the stage ahead of it pushes it out.
 *
 * What begins when something is seen does not begin today while that is not on record, however likely it is: the switch
 * is seen, not guessed.
 */
export function placeStages(
  planting: Planting,
  calendar: MilestoneCalendar,
  today: CivilDate | null,
): { readonly placed: readonly PlacedStage[]; readonly unplaced: readonly UnplacedStage[] } {
  const unplaced: UnplacedStage[] = [];
  const lastDay = dayNumber(planting.end);
  const begun: { stage: Stage; begins: number; provisional: boolean }[] = [];
  for (const stage of planting.programme.stages) {
    const when = dayOf(stage.begins, calendar, today);
    if (when === undefined) unplaced.push({ stage, condition: stage.begins });
    else begun.push({ stage, begins: when.day, provisional: when.provisional });
  }
  const placed = begun.flatMap(({ stage, begins, provisional }, index): PlacedStage[] => {
    const next = Math.min(...begun.slice(index + 1).map((later) => later.begins), lastDay + 1);
    const own = stage.ends === undefined ? undefined : dayOf(stage.ends, calendar, today);
    if (stage.ends !== undefined && own === undefined) unplaced.push({ stage, condition: stage.ends });
    const ends = Math.min(next - 1, own === undefined ? lastDay : own.day);
    return ends >= begins ? [{ stage, begins, ends, provisional }] : [];
  });
  return { placed, unplaced };
}

/** The day on which a condition is fulfilled, as far as can be told; provisional where it hangs on something unseen. */
function dayOf(
  condition: Condition,
  calendar: MilestoneCalendar,
  today: CivilDate | null,
): { day: number; provisional: boolean } | undefined {
  if (condition.kind === "date") return { day: dayNumber(condition.date), provisional: false };
  const milestone = calendar.dateOf(condition.milestone);
  if (!milestone) return undefined;
  const seen = ["given", "observed", "implied"].includes(milestone.basis);
  switch (condition.kind) {
    case "observed":
      return { day: Math.max(dayNumber(milestone.likely), earliestUnseen(seen, today)), provisional: !seen };
    case "days-after":
      return { day: dayNumber(milestone.likely) + condition.days, provisional: !seen };
    case "degree-days-after": {
      const range = calendar.warmthAfter(condition.milestone, condition.degreeDays);
      return range && { day: dayNumber(range.likely), provisional: true };
    }
  }
}

function earliestUnseen(seen: boolean, today: CivilDate | null): number {
  return seen || today === null ? Number.NEGATIVE_INFINITY : dayNumber(today) + 1;
}

/** The stage of this day, if it has one. */
export function stageOn(placed: readonly PlacedStage[], day: number): PlacedStage | undefined {
  return placed.find(({ begins, ends }) => begins <= day && day <= ends);
}

/** The stage that a feed of this day is counted to: its own, or the last one that had begun, or the first. */
export function stageAround(placed: readonly PlacedStage[], day: number): PlacedStage | undefined {
  return stageOn(placed, day) ?? placed.filter(({ begins }) => begins <= day).at(-1) ?? placed[0];
}

/** A condition in words, as the season file writes it. */
export function conditionText(condition: Condition): string {
  if (condition.kind === "date") return condition.date;
  const name = condition.milestone.replaceAll("-", " ");
  if (condition.kind === "observed") return name;
  if (condition.kind === "degree-days-after") return `${condition.degreeDays} degree days after ${name}`;
  return condition.days === 0
    ? `${name} + 0 days`
    : `${name} ${condition.days < 0 ? "-" : "+"} ${Math.abs(condition.days)} days`;
}
