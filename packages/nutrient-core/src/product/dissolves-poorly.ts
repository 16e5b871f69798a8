import type { Product } from "./product.ts";

/** Below this a stock that is worth making does not hold it: gypsum (2.4 g/L), limes, elemental sulfur. */
const POORLY_GRAMS_PER_LITRE = 10;

/**
 * Whether a solid does not dissolve well enough for a stock: by its solubility where that is known, otherwise when it
 * leaves a residue (meals, superphosphates, manures).
 *
 * @example
 * dissolvesPoorly(materialById("gypsum")!)  // => true
 */
export function dissolvesPoorly({ state, solubilityGramsPerLitre, leavesResidue }: Product): boolean {
  if (state === "liquid") return false;
  return solubilityGramsPerLitre === undefined
    ? leavesResidue === true
    : solubilityGramsPerLitre < POORLY_GRAMS_PER_LITRE;
}
