import { type Caution, type CautionKind, raise } from "../outcome/caution.ts";
import { dissolvesPoorly } from "../product/dissolves-poorly.ts";
import type { Product } from "../product/product.ts";

/** A dose finer than the scales of a shed: a weak stock of one's own makes it measurable. */
const tooSmallToWeigh: CautionKind<{
  readonly product: string;
  readonly milligrams: number;
  readonly stockGramsPerLitre: number;
  readonly stockMillilitres: number;
}> = {
  code: "too-small-to-weigh",
  severity: "note",
  source: "common-practice",
  sentence: ({ product, milligrams, stockGramsPerLitre, stockMillilitres }) =>
    `${round(milligrams)} mg is finer than a kitchen scale shows: dissolve ${stockGramsPerLitre} g of ${product} in 1 L of water, and put ${round(stockMillilitres)} mL of that in the water.`,
};

/** The same for what no stock holds. */
const tooSmallForScale: CautionKind<{ readonly product: string; readonly milligrams: number }> = {
  ...tooSmallToWeigh,
  sentence: ({ product, milligrams }) =>
    `${round(milligrams)} mg is finer than a kitchen scale shows, and ${product} does not dissolve well enough for a stock that could be measured out: weigh it on a fine scale, or choose a product that dissolves.`,
};

const round = (value: number): number => Number(value.toPrecision(3));

/** Below this, a scale that shows whole grams, or tenths, is more than a few percent off. */
const LEAST_WEIGHABLE_GRAMS = 0.5;

/** What to heed of a dose's amount: an amount too small to weigh, with the stock that makes it measurable. */
export function amountCautions(product: Product, massGrams: number): Caution[] {
  if (product.state === "liquid" || !(massGrams > 0) || massGrams >= LEAST_WEIGHABLE_GRAMS) return [];
  const milligrams = massGrams * 1000;
  if (dissolvesPoorly(product)) return [raise(tooSmallForScale, { product: product.name, milligrams })];
  // Ten grams are weighed well, and a litre holds them of all that dissolves well.
  const stockGramsPerLitre = 10;
  return [
    raise(tooSmallToWeigh, {
      product: product.name,
      milligrams,
      stockGramsPerLitre,
      stockMillilitres: (massGrams / stockGramsPerLitre) * 1000,
    }),
  ];
}
