import { type Caution, raise } from "../outcome/caution.ts";
import { hazardCautions } from "../product/hazard-cautions.ts";
import { impossibleLabelCautions } from "../product/sanity/sanity.ts";
import { targetNotReached, tooLittleToMeasure } from "./caution-kinds/feed.ts";
import { ofPlanting } from "./caution-kinds/planting.ts";
import type { Recipe } from "./recipe.ts";
import type { SeasonInput } from "./season.ts";
import type { SeasonPlan } from "./season-plan.ts";

/** So many misses are explained in full, with what would help; each takes the trying of all materials. */
const MOST_EXPLAINED = 6;
const MIX_PART = "The mix's part is what it gives until the next feed, as if it stood in the cans.";
const COMES_OUT = / comes out [\d.]+ % (?:short of|over) what was asked/;

/** What to heed in what goes into the cans: its products and labels, the feeds themselves, and how near they come. */
export function recipeCautions(plan: SeasonPlan, input: SeasonInput, recipes: readonly Recipe[]): Caution[] {
  const used = recipes.flatMap(({ amounts }) => amounts.filter(({ massGrams }) => massGrams > 0));
  // What is only on record was reckoned from its label too.
  const counted = new Set(plan.totals.products.map(({ product }) => product));
  return [
    ...impossibleLabelCautions(input.shelf.filter(({ id }) => counted.has(id))),
    ...hazardCautions(used.map(({ product }) => product)),
    ...strongestOfEach(recipes),
    ...missCautions(plan, input, recipes),
  ];
}

/**
 * Of each kind of caution the one of the strongest feed, which covers the weaker ones; a weaker one that names another
 * product, or another nutrient, says something else and stays.
 */
function strongestOfEach(recipes: readonly Recipe[]): Caution[] {
  const byStrength = [...recipes].sort((a, b) => (b.delivered.N ?? 0) - (a.delivered.N ?? 0));
  // Of what does not all dissolve, the feed that holds most of it.
  const cautions = byStrength.flatMap((recipe) => recipe.cautions).sort((a, b) => heaviness(b) - heaviness(a));
  const told = new Set<string>();
  return cautions.filter((caution) => {
    const subjects = subjectsOf(caution).map((subject) => `${caution.code} ${caution.severity} ${subject}`);
    const isNew = subjects.some((subject) => !told.has(subject));
    for (const subject of subjects) told.add(subject);
    return isNew;
  });
}

const heaviness = ({ facts: { gramsPerLitre } }: Caution): number =>
  typeof gramsPerLitre === "number" ? gramsPerLitre : 0;

/** What a feed's caution is about: products, or the nutrients before their numbers ("Ca 981 mg/L ..."); else the feed. */
function subjectsOf({ facts: { product, products, excesses } }: Caution): readonly string[] {
  if (Array.isArray(products)) return products as readonly string[];
  if (typeof product === "string") return [product];
  return Array.isArray(excesses) ? (excesses as readonly string[]).map((said) => said.replace(/ \d.*$/s, "")) : [""];
}

/** Feeds that miss their target, and products of which a can takes too little to be measured. */
function missCautions(plan: SeasonPlan, input: SeasonInput, recipes: readonly Recipe[]): Caution[] {
  const plantings = new Map(input.plantings.map((planting) => [planting.name, ofPlanting(planting)]));
  const cautions: Caution[] = [];
  const told = new Set<number>();
  const missed = new Set<string>();
  for (const { planting, stage, stageName, recipe, reached, explanation } of plan.events) {
    if (recipe === null || told.has(recipe)) continue;
    told.add(recipe);
    const where = { ...plantings.get(planting)!, stage: stageName };
    const place = `${planting}\n${stage}`;
    // The first feed of a stage that misses speaks for those like it.
    if (reached === "closest" && !missed.has(place)) {
      missed.add(place);
      const reasons = missed.size <= MOST_EXPLAINED ? recipes[recipe]!.reasons() : [];
      cautions.push(
        raise(targetNotReached, {
          ...where,
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
      cautions.push(raise(tooLittleToMeasure, { ...where, products: lost.map(({ product }) => product.name) }));
    }
  }
  return cautions;
}
