import { type Caution, raise } from "../outcome/caution.ts";
import { hazardCautions } from "../product/hazard-cautions.ts";
import {
  ceilingMayBePassed,
  ceilingPassed,
  drainsAway,
  flowerNotRecorded,
  manureNearHarvest,
  nothingRecorded,
  productNotOnShelf,
  recordedAhead,
  ruleOfThumb,
  targetNotReached,
  tooLittleToMeasure,
  weatherGoesOn,
} from "./cautions.ts";
import { type CivilDate, daysBetween } from "./civil-date.ts";
import type { MilestoneCalendar } from "./milestones.ts";
import type { Programme } from "./programme.ts";
import type { Recipe } from "./recipe.ts";
import type { Planting, SeasonInput } from "./season.ts";
import type { SeasonEvent, SeasonPlan } from "./season-plan.ts";

/** What a planting's cautions are made from. */
export interface PlantingCase {
  readonly planting: Planting;
  readonly calendar: MilestoneCalendar;
  readonly events: readonly SeasonEvent[];
  readonly input: SeasonInput;
  readonly today: CivilDate | null;
}

/** For crops that touch the soil; staked ones have 90, which the sentence says. */
const MANURE_DAYS = 120;

/** What to heed in one planting. */
export function plantingCautions({ planting, calendar, events, input, today }: PlantingCase): Caution[] {
  const cautions: Caution[] = [];
  const { name } = planting;
  if (followsRuleOfThumb(planting.programme)) {
    cautions.push(
      raise(ruleOfThumb, {
        programme: planting.programme.name,
        sourcesAgainst: ["ndsu-high-phosphorus", "phosphorus-need-hortscience", "tamu-excess-phosphorus", "xu-2001"],
        sourcesFor: ["illinois-container-feeding", "purdue-geranium-phosphorus"],
      }),
    );
  }
  for (const milestone of ["first-flower", "first-harvest"] as const) {
    const date = calendar.dateOf(milestone);
    const latest = date?.expected?.latest;
    if (today === null || latest === undefined || latest >= today) continue;
    cautions.push(raise(flowerNotRecorded, { planting: name, milestone: milestone.replace("-", " "), latest }));
  }
  const assumed = events.filter(({ status }) => status === "assumed").length;
  if (assumed > 0) cautions.push(raise(nothingRecorded, { planting: name, feeds: assumed }));
  const lastRecorded = input.weather.at(-1)?.date;
  const flower = calendar.dateOf("first-flower");
  if (
    lastRecorded !== undefined &&
    calendar.weatherBasis() === "recent-days" &&
    flower?.expected !== undefined &&
    flower.expected.latest > lastRecorded
  ) {
    cautions.push(raise(weatherGoesOn, { planting: name, lastRecorded }));
  }
  cautions.push(...manure(planting, calendar, events, input));
  return cautions;
}

function manure(
  planting: Planting,
  calendar: MilestoneCalendar,
  events: readonly SeasonEvent[],
  input: SeasonInput,
): Caution[] {
  const harvest = calendar.dateOf("first-harvest")?.earliest ?? planting.setOut;
  const carriers = new Map(
    input.shelf.filter(({ hazards }) => hazards.includes("pathogens")).map(({ id, name }) => [id, name]),
  );
  if (carriers.size === 0) return [];
  const near = events.flatMap(({ date, amounts }) => {
    const products = amounts.flatMap(({ product }) => carriers.get(product) ?? []);
    const days = daysBetween(date, harvest);
    return products.length > 0 && days < MANURE_DAYS ? [{ date, products, days: Math.max(0, days) }] : [];
  });
  const [first] = near;
  return first ? [raise(manureNearHarvest, { planting: planting.name, ...first, harvest })] : [];
}

/** Whether a later stage cuts nitrogen and raises phosphorus against the stage before it. */
export function followsRuleOfThumb({ stages }: Programme): boolean {
  return stages.some((stage, index) => {
    const before = stages[index - 1];
    if (!before || before.target.basis !== stage.target.basis) return false;
    const rate = (of: typeof stage, nutrient: "N" | "P"): number =>
      of.target.wanted.find((wanted) => wanted.nutrient === nutrient)?.rate ?? 0;
    return rate(stage, "N") < rate(before, "N") && rate(stage, "P") > rate(before, "P");
  });
}

/** So many misses are explained in full, with what would help; each takes the trying of all materials. */
const MOST_EXPLAINED = 6;

/** Of each kind of caution the one of the strongest feed: it covers the weaker ones. */
function strongestOfEach(recipes: readonly Recipe[]): Caution[] {
  const byStrength = [...recipes].sort((a, b) => (b.delivered.N ?? 0) - (a.delivered.N ?? 0));
  const kinds = new Map<string, Caution>();
  for (const caution of byStrength.flatMap((recipe) => recipe.cautions)) {
    const kind = `${caution.code} ${caution.severity}`;
    if (!kinds.has(kind)) kinds.set(kind, caution);
  }
  return [...kinds.values()];
}

/** What to heed in the season as a whole: its recipes, its ceilings, its record, what drains away. */
export function seasonCautions(plan: SeasonPlan, input: SeasonInput, recipes: readonly Recipe[]): Caution[] {
  const used = recipes.flatMap(({ amounts }) => amounts.filter(({ massGrams }) => massGrams > 0));
  const cautions: Caution[] = [...hazardCautions(used.map(({ product }) => product)), ...strongestOfEach(recipes)];
  const told = new Set<number>();
  const missed = new Set<string>();
  for (const { planting, stage, stageName, recipe, reached, explanation } of plan.events) {
    if (recipe === null || told.has(recipe)) continue;
    told.add(recipe);
    const place = `${planting}\n${stage}`;
    // The first feed of a stage that misses speaks for those like it.
    if (reached === "closest" && !missed.has(place)) {
      missed.add(place);
      const reasons = missed.size <= MOST_EXPLAINED ? recipes[recipe]!.reasons() : [];
      const shown = reasons.length > 0 ? reasons : explanation;
      cautions.push(raise(targetNotReached, { planting, stage: stageName, reasons: shown }));
    }
    const { amounts, exactGrams } = recipes[recipe]!;
    const lost = amounts.filter(({ massGrams }, index) => massGrams === 0 && exactGrams[index]! > 0);
    if (lost.length > 0) {
      const products = lost.map(({ product }) => product.name);
      cautions.push(raise(tooLittleToMeasure, { stage: stageName, products }));
    }
  }
  for (const { planting, nutrient, ceilings } of plan.budget) {
    for (const { passedOn, mayPassOn, shareUsed } of ceilings) {
      const percentOfCeiling = shareUsed * 100;
      if (passedOn !== null) {
        cautions.push(raise(ceilingPassed, { planting, nutrient, date: passedOn, percentOfCeiling }));
      } else if (mayPassOn !== null) {
        cautions.push(raise(ceilingMayBePassed, { planting, nutrient, date: mayPassOn, percentOfCeiling }));
      }
    }
  }
  const known = new Set(input.shelf.map(({ id }) => id));
  const strangers = plan.totals.products.map(({ product }) => product).filter((id) => !known.has(id));
  if (strangers.length > 0) cautions.push(raise(productNotOnShelf, { products: strangers }));
  const nitrogenGrams = (plan.totals.nutrientGrams.N ?? 0) * input.leachingShare;
  if (nitrogenGrams > 0) {
    cautions.push(raise(drainsAway, { leachedPercent: input.leachingShare * 100, nitrogenGrams }));
  }
  return cautions;
}

/** Lines of the record that lie ahead: most often a mistyped year. */
export function aheadOfToday(
  entries: readonly { readonly id: string; readonly date: CivilDate }[],
  today: CivilDate | null,
): Caution[] {
  if (today === null) return [];
  const lines = entries.filter(({ date }) => date > today).map(({ id, date }) => `${id} (${date})`);
  return lines.length === 0 ? [] : [raise(recordedAhead, { lines, today })];
}
