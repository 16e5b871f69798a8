import { elementPerForm } from "../element/nutrient.ts";
import type { Composition } from "./product.ts";

/** Nitrogen, phosphate (P2O5) and potash (K2O), in that order, as labels print them. */
export type Triple = readonly [n: number, p2o5: number, k2o: number];

/** Amounts or shares of the elements as the label's triple: N, P2O5, K2O. */
export function asTriple(amounts: Composition): Triple {
  return [amounts.N ?? 0, (amounts.P ?? 0) / elementPerForm("P2O5"), (amounts.K ?? 0) / elementPerForm("K2O")];
}
