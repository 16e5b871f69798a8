import { type Caution, type CautionKind, raise } from "../outcome/caution.ts";
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

const round = (value: number): number => Number(value.toPrecision(3));

/** Below this, a scale that shows whole grams, or tenths, is more than a few percent off. */
const LEAST_WEIGHABLE_GRAMS = 0.5;

/** What to heed of a dose's amount: an amount too small to weigh, with the stock that makes it measurable. */
export function amountCautions(product: Product, massGrams: number): Caution[] {
  if (product.state === "liquid" || !(massGrams > 0) || massGrams >= LEAST_WEIGHABLE_GRAMS) return [];
  // Ten grams are weighed well, and most salts dissolve so far.
  const stockGramsPerLitre = Math.min(10, product.solubilityGramsPerLitre ?? 10);
  return [
    raise(tooSmallToWeigh, {
      product: product.name,
      milligrams: massGrams * 1000,
      stockGramsPerLitre,
      stockMillilitres: (massGrams / stockGramsPerLitre) * 1000,
    }),
  ];
}
