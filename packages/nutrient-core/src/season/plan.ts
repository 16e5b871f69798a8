import { type Caution, inOrderOfUrgency } from "../outcome/caution.ts";
import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Problem } from "../outcome/problem.ts";
import type { WorkingLine } from "../outcome/working.ts";
import { budgetsOf } from "./budget.ts";
import { type CivilDate, dateOfDay, dayNumber } from "./civil-date.ts";
import { MILESTONES } from "./crop.ts";
import { eventsOf } from "./events.ts";
import { type RecipeBook, recipeBook } from "./feeds.ts";
import {
  effectiveEntries,
  entriesByPlanting,
  type FedEntry,
  type HarvestedEntry,
  type LogEntry,
  type RainedOutEntry,
  type UndoneEntry,
} from "./log.ts";
import {
  type MilestoneCalendar,
  milestoneCalendar,
  type Sighting,
  type Surroundings,
  surroundingsOf,
} from "./milestones.ts";
import { aheadOfToday, beforePlanting, seasonCautions } from "./plan-cautions.ts";
import { unknownPlantings, unplacedProblem } from "./plan-problems.ts";
import { MOST_SHOWN, planWorking, warmthWorking } from "./plan-working.ts";
import { plantingCautions } from "./planting-cautions.ts";
import { remindersFor } from "./reminders.ts";
import { schedule } from "./schedule.ts";
import type { Planting, SeasonInput } from "./season.ts";
import type { MilestoneDate, Reminder, SeasonEvent, SeasonPlan, StageSpan } from "./season-plan.ts";
import { shoppingFor } from "./shopping.ts";
import { placeStages } from "./stages.ts";
import { totalsOf } from "./totals.ts";

/**
 * What to do on which day, how much, what to buy and what it comes to: the whole season, as it stands on `today`.
 *
 * A pure function of the season, its record and the day, so that planning again after every line of the record gives
 * the plan that follows: recorded feeds count as they were, an observed flower moves what comes after, and what was
 * given already is taken into account.
 *
 * @param log The record's lines in the order they were written.
 * @param today Null for the season as it looks before anything has happened.
 * @returns Events in order of date, milestones, stages, reminders, totals, shopping and budget; cautions and working.
 *   Problems: `planting-unknown`, `planting-missing`, `stage-without-date`, `product-unknown`, `area-unknown`, and those
 *   of the dose, blend and order that it works out.
 * @example
 * const pots = { name: "pots", fill: "20 pots 20 L" };
 * const dates = { setOut: "2027-05-15", end: "2027-10-10" };
 * const document = { name: "roof", crop: "sweet pepper", ...dates, places: [pots], programme: "two-phase", products: ["20-10-20"], can: "10 L" };
 * const asked = readSeason(document, { shelf: [], quantity: readPlainQuantity });
 * planSeason(asked.value).value.events[0]  // => { date: "2027-05-29", stage: "leaf", cans: 2 }
 */
export function planSeason(
  input: SeasonInput,
  log: readonly LogEntry[] = [],
  today: CivilDate | null = null,
): Outcome<SeasonPlan> {
  const entries = effectiveEntries(log);
  const strangers = unknownPlantings(input, entries);
  if (strangers.length > 0) return unusable(...strangers);
  const book = recipeBook(input);
  const surroundings = surroundingsOf(input);
  const lines = entriesByPlanting(
    entries,
    input.plantings.map(({ name }) => name),
  );
  const parts: PlantingPlan[] = [];
  const problems: Problem[] = [];
  for (const planting of input.plantings) {
    const part = planPlanting(planting, input, lines.get(planting.name)!, today, book, surroundings);
    if (part.ok) parts.push(part.value);
    else problems.push(...part.problems);
  }
  if (problems.length > 0) return unusable(...problems);
  const events = parts.flatMap((part) => part.events).sort(byDate);
  const budget = budgetsOf({
    plantings: input.plantings,
    events,
    recipes: book.all(),
    ceilings: input.ceilings,
    leachingShare: input.leachingShare,
  });
  const shopping = shoppingFor(events, input.shelf, input.stockCounted);
  if (!shopping.ok) return shopping;
  const plants = input.plantings.reduce((sum, planting) => sum + planting.plants, 0);
  const harvested = entries.filter((entry): entry is HarvestedEntry => entry.kind === "harvested");
  const plan: SeasonPlan = {
    today,
    events,
    milestones: parts.flatMap((part) => part.milestones),
    stages: parts.flatMap((part) => part.stages),
    reminders: parts.flatMap((part) => part.reminders).sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0)),
    totals: totalsOf(events, plants, harvested),
    shopping: shopping.value.lines,
    ...(shopping.value.cost === undefined ? {} : { shoppingCost: shopping.value.cost }),
    budget,
    programmes: input.plantings.map(({ name, programme: { id, name: called, evidence, sources, notes } }) => ({
      planting: name,
      id,
      name: called,
      evidence,
      sources,
      notes,
    })),
  };
  const cautions: Caution[] = [
    ...plantingCautions(parts, input, today),
    ...seasonCautions(plan, input, book.all()),
    ...aheadOfToday(entries, today),
    ...beforePlanting(lines, input.plantings),
  ];
  const working: WorkingLine[] = [
    ...parts.slice(0, MOST_SHOWN).flatMap(({ planting, calendar }) => warmthWorking(planting, calendar, input)),
    ...planWorking(plan, input, book.all()),
    ...shopping.working,
  ];
  return answer(plan, inOrderOfUrgency(cautions), working);
}

interface PlantingPlan {
  readonly planting: Planting;
  readonly calendar: MilestoneCalendar;
  readonly events: readonly SeasonEvent[];
  readonly milestones: readonly MilestoneDate[];
  readonly stages: readonly StageSpan[];
  readonly reminders: readonly Reminder[];
}

function planPlanting(
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

/** In order of date; feeds of one day keep the order of the plantings. */
function byDate(a: SeasonEvent, b: SeasonEvent): number {
  return a.date < b.date ? -1 : a.date > b.date ? 1 : 0;
}
