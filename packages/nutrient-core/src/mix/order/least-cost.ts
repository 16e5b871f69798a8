import { type Best, byLeftover, type Found, foundOf } from "./found.ts";
import { type CountedOffer, costOf, countToCover, greatestCommonDivisor } from "./offer.ts";

/**
 * The exact search for the order of one ingredient that costs least.
 *
 * Turned round: what is the most that so much money buys? For one offer after the other a table holds, for each sum
 * of money from nothing to a known sufficient one, the most microlitres that it buys with the offers so far. The
 * first sum that buys enough is the least cost. Nothing is guessed and nothing is cut off, so the result is the
 * optimum; the effort grows with the sum and the number of offers only, however alike the prices are.
 */
export function leastCost(need: number, offers: readonly CountedOffer[]): Best | "too-fine" {
  const step = greatestCommonDivisor(offers.flatMap(({ tiers, charge }) => [charge, ...tiers.map(({ each }) => each)]));
  const sufficient = knownSufficient(need, offers) / step;
  if (sufficient > MOST_SUMS) return "too-fine";
  const tables = buyingTables(offers, sufficient, step);
  const last = tables.at(-1)!;
  let least = 0;
  while (last[least]! < need) least += 1;
  const found = allAt(least, need, offers, tables, step);
  found.sort(byLeftover);
  return { best: found[0]!, choices: found.slice(1, 1 + MOST_CHOICES) };
}

/** A million sums: ten thousand in hundredths of money. Beyond it prices have to be written more coarsely. */
const MOST_SUMS = 1_000_000;
const MOST_CHOICES = 3;
/** So many steps are spent on looking for orders of the same cost; the least cost itself needs none of them. */
const MOST_STEPS = 20_000;

/** A sum that certainly suffices: the cheapest single offer, alone or filled up by another one. */
function knownSufficient(need: number, offers: readonly CountedOffer[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const first of offers) {
    const alone = countToCover(first, need);
    const reached = first.tiers.map(({ from }) => from).filter((from) => from > alone);
    for (const count of [alone, ...reached]) least = Math.min(least, costOf(first, count));
    const fewer = alone - 1;
    if (fewer < first.tiers[0]!.from) continue;
    for (const second of offers) {
      if (second === first) continue;
      const rest = countToCover(second, need - fewer * first.microlitres);
      least = Math.min(least, costOf(first, fewer) + costOf(second, rest));
    }
  }
  return least;
}

/** `tables[k][m]`: the most that `m` steps of money buy of the first `k` offers. */
function buyingTables(offers: readonly CountedOffer[], sums: number, step: number): Float64Array[] {
  const tables = [new Float64Array(sums + 1)];
  for (const { microlitres, tiers, charge } of offers) {
    const before = tables.at(-1)!;
    const after = before.slice();
    for (const { from, each } of tiers) {
      // What is bought at this tier's price: its least count with the charge, and then one more at a time.
      const bought = new Float64Array(sums + 1).fill(-1);
      const [first, more] = [(from * each + charge) / step, each / step];
      for (let sum = first; sum <= sums; sum += 1) {
        const started = before[sum - first]! + from * microlitres;
        const added = sum >= more && bought[sum - more]! >= 0 ? bought[sum - more]! + microlitres : -1;
        const most = Math.max(started, added);
        bought[sum] = most;
        if (most > after[sum]!) after[sum] = most;
      }
    }
    tables.push(after);
  }
  return tables;
}

/** Orders that cost this much and cover the need, found from the last offer back; the tables rule out every dead end. */
function allAt(
  sum: number,
  need: number,
  offers: readonly CountedOffer[],
  tables: readonly Float64Array[],
  step: number,
): Found[] {
  const found: Found[] = [];
  const counts = new Array<number>(offers.length).fill(0);
  let steps = 0;
  const descend = (level: number, money: number, missing: number): void => {
    if (level === 0) {
      found.push(foundOf([...counts], offers));
      return;
    }
    const offer = offers[level - 1]!;
    const affordable = Math.floor((money * step - offer.charge) / Math.min(...offer.tiers.map(({ each }) => each)));
    // More than covers is of use only where it reaches a lower price.
    const useful = Math.max(countToCover(offer, missing), ...offer.tiers.map(({ from }) => from));
    for (let count = Math.max(0, Math.min(affordable, useful)); count >= 0; count -= 1) {
      const cost = count === 0 ? 0 : costOf(offer, count) / step;
      if (!(cost <= money) || tables[level - 1]![money - cost]! < missing - count * offer.microlitres) continue;
      steps += 1;
      if (steps > MOST_STEPS && found.length > 0) return;
      counts[level - 1] = count;
      descend(level - 1, money - cost, missing - count * offer.microlitres);
    }
    counts[level - 1] = 0;
  };
  descend(offers.length, sum, need);
  return found;
}
