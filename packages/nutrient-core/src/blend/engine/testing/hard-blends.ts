import type { BlendProblem } from "../problem.ts";
import { DEGENERATE_KINDS, degenerateBlend, nearAlikeBlend, randomBlend, seeded, tiedBlend } from "./random-blends.ts";

/** Blends of every kind, by seed. */
export function everydayBlend(seed: number): BlendProblem {
  const random = seeded(seed);
  if (seed % 4 === 2) return degenerateBlend(random, DEGENERATE_KINDS[(seed >> 2) % DEGENERATE_KINDS.length]!);
  const most = [30, 8, 0, 14][seed % 4]!;
  return randomBlend(random, { products: most, nutrients: Math.min(most, 20) });
}

/** Blends that are harder than any shelf, by seed. */
export const hardBlend = (seed: number): BlendProblem =>
  seed % 2 ? nearAlikeBlend(seeded(seed)) : tiedBlend(seeded(seed));

/*
 * Of 16,000 blends of each kind these are the ones that an engine loses first when one of its safeguards is taken away:
 * repair, refreshing, the least index, doubt. (Found by taking them away.)
 */
export const EVERYDAY_SEEDS = [
  64, 112, 308, 1306, 1472, 1744, 2552, 2990, 3546, 3550, 3588, 4488, 6176, 6759, 7404, 8826, 9184, 9328, 13668, 13746,
];
export const HARD_SEEDS = [
  41, 161, 215, 401, 545, 1587, 2039, 2067, 2529, 2723, 5521, 5725, 7537, 8460, 8471, 8521, 14621, 14633, 15905,
];

/** Hard blends in which the first way brings rows back into their ranges, some many times, and in 1259 in vain. */
export const REPAIRED_SEEDS = [1259, 3223, 4617, 6933, 10967, 14963, 15149];
