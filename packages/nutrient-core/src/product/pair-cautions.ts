import { type Caution, raise } from "../outcome/caution.ts";
import {
  AMMONIA_ESCAPES,
  FIRE,
  type Pair,
  type PairKind,
  SETS_HARD,
  TURNS_LIQUID,
  TURNS_STICKY,
} from "./pair-caution-kinds.ts";
import { fractionOf, type Product } from "./product.ts";

/** Two kinds of product that must not lie mixed. */
interface Rule {
  readonly kind: PairKind;
  readonly isOne: (product: Product) => boolean;
  readonly isOther: (product: Product) => boolean;
}

const solid = ({ state }: Product): boolean => state === "solid";
const has =
  (hazard: Product["hazards"][number]) =>
  ({ hazards }: Product) =>
    hazards.includes(hazard);

/**
 * What burns beside an oxidiser: sulfur, and dry meals and pellets. Compost and fresh manure are too wet to.
 * Nitrogen printed as organic tells a meal; a release in the first season and dust tell dried manure.
 */
const burns = (product: Product): boolean =>
  solid(product) &&
  (has("flammable-dust")(product) ||
    fractionOf(product, "organic-N") > 0 ||
    (product.firstSeasonNitrogenShare !== undefined && has("dust")(product)));

/** Also by its grade: no other solid of the trade comes near 46 % nitrogen. */
const isUrea = (product: Product): boolean =>
  solid(product) && (fractionOf(product, "urea-N") > 0 || fractionOf(product, "N") > 0.4);
/** Nitrogen that leaves as ammonia in a strong alkali; manure's own ammonium is not in its analysis. */
const givesAmmonia = (product: Product): boolean =>
  fractionOf(product, "NH4-N") > 0 || isUrea(product) || (has("pathogens")(product) && fractionOf(product, "N") > 0);
/** Both halves of the nitrogen in earnest: the double salt of calcium nitrate has a trace of ammonium only. */
const isAmmoniumNitrate = (product: Product): boolean =>
  solid(product) && fractionOf(product, "NH4-N") > 0.03 && fractionOf(product, "NO3-N") > 0.03;
/** Richer than rock phosphate, and no bone meal. */
const isPhosphate = (product: Product): boolean =>
  solid(product) && fractionOf(product, "P") > 0.065 && !burns(product);
/** Phosphate that is sold without nitrogen and potassium: superphosphate, also by its grade. */
const isSuperphosphate = (product: Product): boolean =>
  isPhosphate(product) && fractionOf(product, "N") === 0 && fractionOf(product, "K") === 0 && !has("acid")(product);
const isCalciumNitrate = (product: Product): boolean =>
  solid(product) && fractionOf(product, "Ca") > 0.05 && fractionOf(product, "NO3-N") > 0.05;
/** Gypsum is excepted: it shares the calcium, and is what would form. */
const isSulfate = (product: Product): boolean =>
  solid(product) && fractionOf(product, "S") > 0 && fractionOf(product, "Ca") === 0 && !burns(product);

const RULES: readonly Rule[] = [
  { kind: FIRE, isOne: has("oxidiser"), isOther: burns },
  { kind: AMMONIA_ESCAPES, isOne: givesAmmonia, isOther: has("caustic") },
  { kind: TURNS_LIQUID, isOne: isUrea, isOther: isAmmoniumNitrate },
  { kind: TURNS_STICKY, isOne: isUrea, isOther: isSuperphosphate },
  {
    kind: SETS_HARD,
    isOne: isCalciumNitrate,
    isOther: (product) => [isSulfate, isPhosphate, isUrea, isAmmoniumNitrate].some((is) => is(product)),
  },
];

/**
 * Which of these products must not be mixed or stored together dry, and what to do instead?
 *
 * For a batch that is mixed dry, and for products that are spread on the same bed or into the same mix. In a can of
 * water other rules hold: see the cautions of stocks. A product whose label does not say the form of its nitrogen is
 * taken for harmless here.
 *
 * @param products What is used together; order and repeats do not matter.
 * @returns `pair-fire`, `pair-ammonia`, `pair-turns-liquid`, `pair-turns-sticky`, `pair-sets-hard`: one for each rule
 *   that is broken, naming the products on both sides.
 * @example
 * pairCautions([materialById("potassium-nitrate")!, materialById("elemental-sulfur")!]).map(({ code }) => code)  // => ["pair-fire"]
 */
export function pairCautions(products: readonly Product[]): Caution[] {
  return RULES.flatMap(({ kind, isOne, isOther }) => {
    const ones = products.filter(isOne);
    const others = products.filter((product) => isOther(product) && !isOne(product));
    if (ones.length === 0 || others.length === 0) return [];
    return [raise(kind, { ones: namesOf(ones), others: namesOf(others) } satisfies Pair)];
  });
}

const namesOf = (products: readonly Product[]): string[] => [...new Set(products.map(({ name }) => name))].sort();
