import { type Caution, raise } from "../outcome/caution.ts";
import { asCalciumCarbonate, isLimeByFormula } from "../product/calcium-carbonate-equivalent.ts";
import { fractionOf, type Product } from "../product/product.ts";
import type { Extent } from "../supply/basis.ts";
import { usableInFirstSeason } from "../supply/first-season.ts";
import { type Amount, type Delivered, deliver } from "../supply/supply.ts";
import {
  BURNING_DRESSING,
  MUCH_LIME,
  MUCH_SULFUR,
  RUNOFF_DRESSING,
  STRONG_DRESSING,
  TOO_MUCH_LIME,
} from "./dressing-caution-kinds.ts";
import { excesses, gathered } from "./excess.ts";
import { BORON, TRACE } from "./feed-caution-kinds.ts";
import {
  BORON_DRESSING_GRAMS_PER_SQUARE_METRE,
  LIME_IN_ONE_GO,
  LIME_IN_TWO_GOES,
  SULFUR_AT_MOST,
  TRACE_DRESSING,
  WHOLE_SEASON,
} from "./feed-limits.ts";

/**
 * What to heed when this much is spread on a bed: more than a season's nutrients or more lime or sulfur than goes on at
 * a time, trace elements with little room, and where it must not run off to.
 *
 * Nitrogen counts as far as a crop can use it in the first season; phosphorus and potassium count whole.
 *
 * @param delivered g/m2 of each element, what was there already included.
 * @param amounts The products behind it and their grams.
 * @returns `feed-strength`, `boron-narrow`, `micronutrient-narrow`, `lime-heavy`, `sulfur-heavy`, `runoff`.
 * @example
 * dressingCautions({ K: 40 }, { basis: "squareMetre", amount: 3 }, []).map(({ code }) => code)  // => ["feed-strength"]
 */
export function dressingCautions(delivered: Delivered, extent: Extent, amounts: readonly Amount[]): Caution[] {
  const usable = usableInFirstSeason(delivered, amounts, extent);
  const cautions: Caution[] = [];
  const nitrogen = usable.N === delivered.N ? "N" : "N usable in the first season";
  const strong = excesses(usable, WHOLE_SEASON, 1, "g/m2", "a whole season", { N: nitrogen });
  const burns = (usable.N ?? 0) > 2 * WHOLE_SEASON.N!.amount;
  if (strong.length > 0) cautions.push(raise(burns ? BURNING_DRESSING : STRONG_DRESSING, gathered(strong)));
  const boron = delivered.B ?? 0;
  if (boron > BORON_DRESSING_GRAMS_PER_SQUARE_METRE)
    cautions.push(raise(BORON, { amount: boron, unit: "g/m2", limit: BORON_DRESSING_GRAMS_PER_SQUARE_METRE }));
  const trace = excesses(delivered, TRACE_DRESSING, 1, "g/m2", "usual at most");
  if (trace.length > 0) cautions.push(raise(TRACE, gathered(trace)));
  cautions.push(...limeCautions(amounts, extent), ...sulfurCautions(amounts, extent));
  if ((delivered.N ?? 0) > 0 || (delivered.P ?? 0) > 0) cautions.push(raise(RUNOFF_DRESSING, {}));
  return cautions;
}

/** Whether a product raises the pH: a carbonate, oxide or hydroxide of calcium or magnesium, or wood ash. */
const isLime = (product: Product): boolean =>
  isLimeByFormula(product) || (product.hazards.includes("caustic") && fractionOf(product, "Ca") > 0);

/** Each calcium and magnesium of a lime neutralises as much as a calcium carbonate does; of ash this is the most. */
function limeCautions(amounts: readonly Amount[], extent: Extent): Caution[] {
  const limes = amounts.filter(({ product, massGrams }) => massGrams > 0 && isLime(product));
  const carbonate = asCalciumCarbonate(deliver(limes, extent));
  if (carbonate < LIME_IN_ONE_GO) return [];
  const tooMuch = carbonate >= LIME_IN_TWO_GOES;
  return [
    raise(tooMuch ? TOO_MUCH_LIME : MUCH_LIME, {
      products: limes.map(({ product }) => product.name),
      carbonateGramsPerSquareMetre: carbonate,
      limitGramsPerSquareMetre: tooMuch ? LIME_IN_TWO_GOES : LIME_IN_ONE_GO,
    }),
  ];
}

function sulfurCautions(amounts: readonly Amount[], extent: Extent): Caution[] {
  const sulfurs = amounts.filter(({ product }) => product.formula === "S");
  const sulfurGramsPerSquareMetre = deliver(sulfurs, extent).S ?? 0;
  return sulfurGramsPerSquareMetre > SULFUR_AT_MOST
    ? [raise(MUCH_SULFUR, { sulfurGramsPerSquareMetre, limitGramsPerSquareMetre: SULFUR_AT_MOST })]
    : [];
}
