import { type Caution, raise } from "../outcome/caution.ts";
import { hazardCautions } from "../product/hazard-cautions.ts";
import {
  ceilingMayBePassed,
  ceilingPassed,
  drainsAway,
  productNotOnShelf,
  recordedAhead,
  recordedBeforePlanting,
  targetNotReached,
  tooLittleToMeasure,
} from "./cautions.ts";
import { addDays, type CivilDate, dateInWords } from "./civil-date.ts";
import type { LogEntry, UndoneEntry } from "./log.ts";
import type { Recipe } from "./recipe.ts";
import type { Planting, SeasonInput } from "./season.ts";
import type { SeasonPlan } from "./season-plan.ts";

/** So many misses are explained in full, with what would help; each takes the trying of all materials. */
const MOST_EXPLAINED = 6;
const MIX_PART = "The mix's part is what it gives until the next feed, as if it stood in the cans.";
const COMES_OUT = / comes out [\d.]+ % (?:short of|over) what was asked/;

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
      cautions.push(
        raise(targetNotReached, {
          planting,
          stage: stageName,
          misses: explanation,
          // How far off it is stands in the misses, of what is really weighed out.
          reasons: [
            ...(explanation.some((miss) => miss.includes("mix")) ? [MIX_PART] : []),
            ...reasons.filter((reason) => !COMES_OUT.test(reason)),
          ],
        }),
      );
    }
    const { amounts, exactGrams } = recipes[recipe]!;
    const lost = amounts.filter(({ massGrams }, index) => massGrams === 0 && exactGrams[index]! > 0);
    if (lost.length > 0) {
      const products = lost.map(({ product }) => product.name);
      cautions.push(raise(tooLittleToMeasure, { planting, stage: stageName, products }));
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
  const lines = entries.filter(({ date }) => date > today).map(({ id, date }) => `${id} (${dateInWords(date)})`);
  return lines.length === 0 ? [] : [raise(recordedAhead, { lines, today })];
}

/** Bought plants are this old at most when they are set out (common practice, no source). */
const OLDEST_DAYS = 120;

/** Lines of a day on which a planting was not even sown: a mistyped year, which would move everything after it. */
export function beforePlanting(
  lines: ReadonlyMap<string, readonly Exclude<LogEntry, UndoneEntry>[]>,
  plantings: readonly Planting[],
): Caution[] {
  const early = plantings.flatMap(({ name, sown, setOut }) => {
    const own = lines.get(name)!;
    // What was really done goes before what the file says.
    const begun = own.filter((entry) => entry.kind === "observed" && ["sown", "set-out"].includes(entry.milestone));
    const [first = ""] = [...begun.map(({ date }) => date), sown ?? addDays(setOut, -OLDEST_DAYS)].sort();
    return own.filter(({ date }) => date < first);
  });
  const named = [...new Set(early.map(({ id, date }) => `${id} (${dateInWords(date)})`))];
  return named.length === 0 ? [] : [raise(recordedBeforePlanting, { lines: named })];
}
