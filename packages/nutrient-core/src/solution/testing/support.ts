import { readProduct } from "../../product/read-product.ts";
import type { Amount } from "../../supply/supply.ts";

/** Amounts by what a grower calls the products: `amountsOf(["KNO3", 5], ["calcium-nitrate", 9])`. */
export function amountsOf(...pairs: readonly (readonly [text: string, massGrams: number])[]): Amount[] {
  return pairs.map(([text, massGrams]) => {
    const product = readProduct(text);
    if (!product.ok) throw new Error(product.problems[0]!.message);
    return { product: product.value, massGrams };
  });
}

/** Relative difference of a value from the one it is judged by. */
export function relativeError(value: number, judge: number): number {
  return value / judge - 1;
}

/** Solution 1 of Circular 347 in one litre: 5 KNO3, 5 Ca(NO3)2, 1 KH2PO4, 2 MgSO4, mmol/L (circular-347-solution-1). */
export const SOLUTION_1: readonly Amount[] = amountsOf(
  ["KNO3", 0.50551],
  ["Ca(NO3)2·4H2O", 1.18073],
  ["KH2PO4", 0.13608],
  ["MgSO4·7H2O", 0.49293],
);
