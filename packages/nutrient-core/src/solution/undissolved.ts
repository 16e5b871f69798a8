import { type Caution, type CautionKind, type Facts, raise } from "../outcome/caution.ts";
import { capital, listed, shown } from "../outcome/sentence.ts";
import { dissolvesPoorly } from "../product/dissolves-poorly.ts";
import type { Amount } from "../supply/supply.ts";
import { dissolves } from "./solubility.ts";

const CODE = { code: "does-not-dissolve", severity: "caution" } as const;

const NOT_AT_ALL: CautionKind<{ readonly products: readonly string[] }> = {
  ...CODE,
  source: "common-practice",
  sentence: ({ products }) =>
    `${capital(listed(products))}: will not dissolve, or only in part, so what is reckoned here is not all in the water. Spread it on the bed or mix it into the soil, and choose something soluble for the can.`,
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
 * @returns `does-not-dissolve`: one for all that hardly dissolves, one for each that is more than the water holds.
 * @example
 * undissolvedCautions([{ product: materialById("rock-phosphate")!, massGrams: 50 }], 10).map(({ code }) => code)  // => ["does-not-dissolve"]
 */
export function undissolvedCautions(amounts: readonly Amount[], litres: number): Caution[] {
  const used = amounts.filter(({ massGrams }) => massGrams > 0);
  // What has a figure is judged by it: a pinch of gypsum dissolves.
  const unknown = used.filter(({ product }) => dissolvesPoorly(product) && !(product.solubilityGramsPerLitre ?? 0));
  const names = [...new Set(unknown.map(({ product }) => product.name))];
  const over = dissolves(used, litres).filter((one) => !one.dissolves);
  return [
    ...(names.length > 0 ? [raise(NOT_AT_ALL, { products: names })] : []),
    ...over.map(({ product, gramsPerLitre, mostGramsPerLitre }) =>
      raise(NOT_ALL, { product, gramsPerLitre, mostGramsPerLitre }),
    ),
  ];
}
