import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { type CivilDate, dateOfDay, dayNumber } from "./civil-date.ts";
import { MILESTONES } from "./crop.ts";
import { eventsOf } from "./events.ts";
import type { FedEntry, LogEntry, RainedOutEntry, UndoneEntry } from "./log.ts";
import { type MilestoneCalendar, milestoneCalendar, type Sighting } from "./milestones.ts";
import { unplacedProblem } from "./plan-problems.ts";
import type { RecipeBook } from "./recipe-book.ts";
import { remindersFor } from "./reminders.ts";
import { type Slot, schedule } from "./schedule.ts";
import type { Planting, SeasonInput } from "./season.ts";
import type { MilestoneDate, Reminder, SeasonEvent, StageSpan } from "./season-plan.ts";
import { placeStages } from "./stages.ts";
import type { Surroundings } from "./surroundings.ts";

/** One planting of a season, planned. */
export interface PlantingPlan {
  readonly planting: Planting;
  readonly calendar: MilestoneCalendar;
  /** The days behind the events, with the lines of the record that they rest on. */
  readonly slots: readonly Slot[];
  readonly events: readonly SeasonEvent[];
  readonly milestones: readonly MilestoneDate[];
  readonly stages: readonly StageSpan[];
  readonly reminders: readonly Reminder[];
}

/** Plans one planting: its milestones, its stages, the days of its feeds and what is in them. */
export function planPlanting(
  planting: Planting,
  input: SeasonInput,
  own: readonly Exclude<LogEntry, UndoneEntry>[],
  today: CivilDate | null,
  book: RecipeBook,
  surroundings: Surroundings,
): Outcome<PlantingPlan> {
  const observed = own.flatMap(sightings);
  const fed = own.filter((entry): entry is FedEntry => entry.kind === "fed");
  const rainedOut = own.filter((entry): entry is RainedOutEntry => entry.kind === "rained-out");
  const calendar = milestoneCalendar(surroundings, planting, observed, today);
  const { placed, unplaced } = placeStages(planting, calendar, today);
  if (unplaced.length > 0) return unusable(...unplaced.map((one) => unplacedProblem(one, planting)));
  const slots = schedule(
    planting,
    placed,
    fed,
    new Set(rainedOut.map(({ date }) => dayNumber(date))),
    today === null ? null : dayNumber(today),
  );
  const events = eventsOf(slots, planting, input, book);
  if (!events.ok) return events;
  return answer({
    planting,
    calendar,
    slots,
    events: events.value,
    milestones: MILESTONES.flatMap((milestone) => calendar.dateOf(milestone) ?? []),
    stages: placed.map(({ stage, begins, ends, provisional }) => ({
      planting: planting.name,
      id: stage.id,
      name: stage.name,
      begins: dateOfDay(begins),
      ends: dateOfDay(ends),
      provisional,
    })),
    reminders: input.reminders ? remindersFor(planting, calendar, input.sowingCelsius) : [],
  });
}

/** What a line shows of the plants: fruit that was picked was ripe enough to pick. */
function sightings(entry: Exclude<LogEntry, UndoneEntry>): Sighting[] {
  if (entry.kind === "observed") return [entry];
  return entry.kind === "harvested" ? [{ milestone: "first-harvest", date: entry.date }] : [];
}
