import { elementPerForm } from "../element/nutrient.ts";
import type { Delivered } from "./supply.ts";

/** Nitrogen, phosphate (P2O5) and potash (K2O), in that order, as labels print them. */
export type Triple = readonly [n: number, p2o5: number, k2o: number];

/** Amounts or shares as the label's triple: N, P2O5, K2O. */
export function asTriple(amounts: Delivered): Triple {
  return [amounts.N ?? 0, (amounts.P ?? 0) / elementPerForm("P2O5"), (amounts.K ?? 0) / elementPerForm("K2O")];
}

/**
 * A triple as a ratio: divided by its smallest part that is not nothing.
 *
 * @example
 * asRatio([15, 5, 10])  // => [3, 1, 2]
 */
export function asRatio(triple: Triple): Triple {
  const parts = triple.filter((part) => part > 1e-12);
  if (parts.length === 0) return [0, 0, 0];
  const least = Math.min(...parts);
  return [triple[0] / least, triple[1] / least, triple[2] / least];
}
