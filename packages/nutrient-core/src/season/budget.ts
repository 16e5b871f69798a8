import type { CivilDate } from "./civil-date.ts";
import type { Recipe } from "./recipe.ts";
import type { Ceiling, Planting } from "./season.ts";
import type { BudgetPoint, CeilingOutlook, NutrientBudget, SeasonEvent, Spread } from "./season-plan.ts";

const BUDGETED = ["N", "P", "K"] as const;
type Budgeted = (typeof BUDGETED)[number];

/** A recorded feed was measured by someone, somehow: a tenth either way (common practice, no source). */
const RECORDED_SPREAD = 0.1;

/** The feeds of a season, gathered once for all budgets. */
export interface BudgetBasis {
  readonly plantings: readonly Planting[];
  /** In order of date. */
  readonly events: readonly SeasonEvent[];
  /** By the number that events carry. */
  readonly recipes: readonly Recipe[];
  readonly ceilings: readonly Ceiling[];
  readonly leachingShare: number;
}

/** One event's amount of one nutrient: as labelled, and the least and most that it can have been. */
interface Portion {
  readonly date: CivilDate;
  readonly planned: boolean;
  readonly grams: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Nitrogen, phosphorus and potassium of each planting over the season, against need and ceilings.
 *
 * The range adds up the worst case of every feed: errors of a label or a scale repeat, they do not cancel.
 */
export function budgetsOf(basis: BudgetBasis): NutrientBudget[] {
  const allPlants = basis.plantings.reduce((sum, { plants }) => sum + plants, 0);
  const ofPlanting = new Map<string, SeasonEvent[]>(basis.plantings.map(({ name }) => [name, []]));
  for (const event of basis.events) ofPlanting.get(event.planting)?.push(event);
  return BUDGETED.flatMap((nutrient) => {
    const onTotal = basis.ceilings.filter((one) => one.nutrient === nutrient && one.basis === "total");
    const together = onTotal.length === 0 ? [] : portions(basis.events, nutrient, basis.recipes);
    return basis.plantings.map((planting): NutrientBudget => {
      const own = portions(ofPlanting.get(planting.name)!, nutrient, basis.recipes);
      const season = spread(own, planting);
      const { fromMix } = planting;
      const outlooks = basis.ceilings
        .filter((ceiling) => ceiling.nutrient === nutrient)
        .flatMap((ceiling): CeilingOutlook[] => {
          if (ceiling.basis === "total") return [outlook(ceiling, ceiling.grams / allPlants, together, allPlants)];
          const gramsPerPlant = perPlant(ceiling, planting);
          return gramsPerPlant === undefined ? [] : [outlook(ceiling, gramsPerPlant, own, planting.plants)];
        });
      return {
        planting: planting.name,
        nutrient,
        given: spread(
          own.filter(({ planned }) => !planned),
          planting,
        ),
        season,
        fromMixGramsPerPlant: fromMix?.gramsPerPlant[nutrient] ?? 0,
        leachedGramsPerPlant: season.gramsPerPlant * basis.leachingShare,
        need: needOf(planting, nutrient),
        ceilings: outlooks,
        curve: curveOf(own, planting.plants),
      };
    });
  });
}

function portions(events: readonly SeasonEvent[], nutrient: Budgeted, recipes: readonly Recipe[]): Portion[] {
  return events.map((event) => {
    const grams = event.nutrientGrams[nutrient] ?? 0;
    const [low, high] =
      event.recipe === null
        ? [grams * (1 - RECORDED_SPREAD), grams * (1 + RECORDED_SPREAD)]
        : (recipes[event.recipe]!.gramsPerCanRange[nutrient] ?? [0, 0]).map((perCan) => perCan * event.cans);
    return { date: event.date, planned: event.status === "planned", grams, low: low!, high: high! };
  });
}

function spread(own: readonly Portion[], { plants, areaSquareMetres }: Planting): Spread {
  const sum = (of: (portion: Portion) => number): number => own.reduce((total, portion) => total + of(portion), 0);
  const totalGrams = sum(({ grams }) => grams);
  const [low, high] = [sum((one) => one.low), sum((one) => one.high)];
  return {
    gramsPerPlant: totalGrams / plants,
    ...(areaSquareMetres === undefined ? {} : { gramsPerSquareMetre: totalGrams / areaSquareMetres }),
    totalGrams,
    rangeAsShare: totalGrams > 0 ? [low / totalGrams, high / totalGrams] : [1, 1],
  };
}

function curveOf(own: readonly Portion[], plants: number): BudgetPoint[] {
  let [grams, low, high] = [0, 0, 0];
  return own.map((portion) => {
    grams += portion.grams;
    low += portion.low;
    high += portion.high;
    return {
      date: portion.date,
      gramsPerPlant: grams / plants,
      lowGramsPerPlant: low / plants,
      highGramsPerPlant: high / plants,
    };
  });
}

function perPlant(ceiling: Ceiling, { plants, areaSquareMetres }: Planting): number | undefined {
  if (ceiling.basis === "plant") return ceiling.grams;
  return areaSquareMetres === undefined ? undefined : (ceiling.grams * areaSquareMetres) / plants;
}

/** Rounding in sums of many feeds is no passing of a ceiling. */
const ROUNDING = 1e-12;

function outlook(ceiling: Ceiling, gramsPerPlant: number, own: readonly Portion[], plants: number): CeilingOutlook {
  const limit = gramsPerPlant * plants * (1 + ROUNDING);
  let [grams, high] = [0, 0];
  let [passedOn, mayPassOn]: [CivilDate | null, CivilDate | null] = [null, null];
  for (const portion of own) {
    grams += portion.grams;
    high += portion.high;
    if (passedOn === null && grams > limit) passedOn = portion.date;
    if (mayPassOn === null && high > limit) mayPassOn = portion.date;
  }
  return { ceiling, gramsPerPlant, shareUsed: grams / (gramsPerPlant * plants), passedOn, mayPassOn };
}

/** From the fruit hoped for where that is known, else from the area. */
function needOf(planting: Planting, nutrient: Budgeted): NutrientBudget["need"] {
  const { facts, harvestKilogramsPerPlant, areaSquareMetres, plants } = planting;
  const { uptake } = facts;
  if (!uptake) return null;
  if (harvestKilogramsPerPlant !== undefined) {
    const [least, most] = uptake.gramsPerKilogramOfFruit[nutrient];
    const range = [least * harvestKilogramsPerPlant, most * harvestKilogramsPerPlant] as const;
    return { gramsPerPlant: range, source: uptake.fruitSource };
  }
  if (areaSquareMetres === undefined) return null;
  const [least, most] = uptake.gramsPerSquareMetre[nutrient];
  const area = areaSquareMetres / plants;
  return { gramsPerPlant: [least * area, most * area], source: uptake.areaSource };
}
