import { type Caution, type CautionKind, type Facts, raise } from "../outcome/caution.ts";
import { capital, listed, shown } from "../outcome/sentence.ts";
import { dissolvesPoorly } from "../product/dissolves-poorly.ts";
import type { Amount } from "../supply/supply.ts";
import { dissolves } from "./solubility.ts";

const CODE = { code: "does-not-dissolve", severity: "caution" } as const;

const REMEDY = "Spread it on the bed or mix it into the soil, and choose something soluble for the can.";

const NOT_AT_ALL: CautionKind<{ readonly products: readonly string[] }> = {
  ...CODE,
  source: "common-practice",
  sentence: ({ products }) =>
    `${capital(listed(products))}: will not dissolve, so what is reckoned here is not in the water. ${REMEDY}`,
};

const IN_PART: CautionKind<{ readonly products: readonly string[] }> = {
  ...NOT_AT_ALL,
  sentence: ({ products }) =>
    `${capital(listed(products))}: will dissolve in part at best, so what is reckoned here is not all in the water. ${REMEDY}`,
};

interface Overfull extends Facts {
  readonly product: string;
  readonly gramsPerLitre: number;
  readonly mostGramsPerLitre: number;
}

const NOT_ALL: CautionKind<Overfull> = {
  ...CODE,
  source: "solubility-tables",
  sentence: ({ product, gramsPerLitre, mostGramsPerLitre }) =>
    `${capital(product)}: of ${shown(gramsPerLitre)} g in each litre about ${shown(mostGramsPerLitre)} g dissolve at 20 °C; the rest sinks, and what is reckoned here is not all in the water. Use less of it or more water, or spread it on the bed.`,
};

/**
 * What does not dissolve in a can, so that its nutrients are not in the water.
 *
 * @param amounts Products and grams in the water.
 * @param litres Of water, more than zero.
 * @returns `does-not-dissolve`: one for all that does not, one for all that leaves a residue, one for each that is more than the water holds.
 * @example
 * undissolvedCautions([{ product: materialById("rock-phosphate")!, massGrams: 50 }], 10).map(({ code }) => code)  // => ["does-not-dissolve"]
 */
export function undissolvedCautions(amounts: readonly Amount[], litres: number): Caution[] {
  const used = amounts.filter(({ massGrams }) => massGrams > 0);
  // What has a figure is judged by it: a pinch of gypsum dissolves.
  const named = (kind: typeof IN_PART, gramsPerLitre: 0 | undefined): Caution[] => {
    const products = used.map(({ product }) => product).filter((one) => one.solubilityGramsPerLitre === gramsPerLitre);
    const names = [...new Set(products.filter(dissolvesPoorly).map(({ name }) => name))];
    return names.length > 0 ? [raise(kind, { products: names })] : [];
  };
  const over = dissolves(used, litres).filter((one) => !one.dissolves);
  return [
    ...named(NOT_AT_ALL, 0),
    ...named(IN_PART, undefined),
    ...over.map(({ product, gramsPerLitre, mostGramsPerLitre }) =>
      raise(NOT_ALL, { product, gramsPerLitre, mostGramsPerLitre }),
    ),
  ];
}
