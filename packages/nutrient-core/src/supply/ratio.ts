import type { Triple } from "../product/triple.ts";

export { asTriple, type Triple } from "../product/triple.ts";

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
