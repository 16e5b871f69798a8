import { type CountedOffer, costOf } from "./offer.ts";

/** A whole order of one ingredient. */
export interface Found {
  /** How many of each offer, in the offers' order. */
  readonly counts: readonly number[];
  readonly microlitres: number;
  /** Hundredths of money. */
  readonly cost: number;
  readonly packs: number;
}

/** The best order and others that are as good by the aim. */
export interface Best {
  readonly best: Found;
  /** Other orders of the same cost, the least left over first; a few of them. */
  readonly choices: readonly Found[];
}

export function foundOf(counts: readonly number[], offers: readonly CountedOffer[]): Found {
  let [microlitres, cost, packs] = [0, 0, 0];
  counts.forEach((count, index) => {
    if (count === 0) return;
    microlitres += count * offers[index]!.microlitres;
    cost += costOf(offers[index]!, count);
    packs += count;
  });
  return { counts, microlitres, cost, packs };
}

/** Less left over first, then fewer packs; the rest by the offers' order, so that the answer is always the same one. */
export function byLeftover(a: Found, b: Found): number {
  if (a.microlitres !== b.microlitres) return a.microlitres - b.microlitres;
  if (a.packs !== b.packs) return a.packs - b.packs;
  const at = a.counts.findIndex((count, index) => count !== b.counts[index]);
  return at < 0 ? 0 : b.counts[at]! - a.counts[at]!;
}
