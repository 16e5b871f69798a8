import { type Caution, inOrderOfUrgency } from "../outcome/caution.ts";
import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Problem } from "../outcome/problem.ts";
import type { WorkingLine } from "../outcome/working.ts";
import { budgetsOf } from "./budget.ts";
import { budgetCautions } from "./budget-cautions.ts";
import type { CivilDate } from "./civil-date.ts";
import { largeFeeds } from "./large-feeds.ts";
import { effectiveEntries, entriesByPlanting, type HarvestedEntry, type LogEntry } from "./log.ts";
import { unknownPlantings } from "./plan-problems.ts";
import { MOST_SHOWN, planWorking, warmthWorking } from "./plan-working.ts";
import { plantingCautions } from "./planting-cautions.ts";
import { type PlantingPlan, planPlanting } from "./planting-plan.ts";
import { recipeBook } from "./recipe-book.ts";
import { recipeCautions } from "./recipe-cautions.ts";
import { aheadOfToday, beforePlanting, productsUnknown } from "./record-cautions.ts";
import type { SeasonInput } from "./season.ts";
import type { SeasonEvent, SeasonPlan } from "./season-plan.ts";
import { shoppingFor } from "./shopping.ts";
import { surroundingsOf } from "./surroundings.ts";
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
    ...recipeCautions(plan, input, book.all()),
    ...budgetCautions(plan, input),
    ...productsUnknown(plan, input),
    ...parts.flatMap(({ planting, slots }) => largeFeeds(planting, slots, input)),
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

/** In order of date; feeds of one day keep the order of the plantings. */
function byDate(a: SeasonEvent, b: SeasonEvent): number {
  return a.date < b.date ? -1 : a.date > b.date ? 1 : 0;
}
