import { type Best, byLeftover, type Found, foundOf } from "./found.ts";
import { type CountedOffer, costOf, countToCover, greatestCommonDivisor, MICROLITRES } from "./offer.ts";

/**
 * The search for the order of one ingredient that leaves least over, and of those the cheapest (the one of fewest
 * packs where no price is known).
 *
 * For one offer after the other a table holds the least cost of each volume that the offers so far add up to. Volumes
 * are counted in the sizes' largest common measure, and then the result is the optimum. Sizes without one (litres
 * beside cubic feet) are counted in hundredths of a litre, or coarser for very large needs: what is left over is then
 * least to within half of that for each pack. That it covers the need is always checked with the true sizes.
 */
export function leastLeftOver(need: number, offers: readonly CountedOffer[]): Best {
  const common = greatestCommonDivisor(offers.map(({ microlitres }) => microlitres));
  const most = Math.max(...offers.map((offer) => countToCover(offer, need) * offer.microlitres));
  const cell = Math.max(common, COARSE, Math.ceil(most / MOST_CELLS));
  const unit = common >= most / MOST_CELLS ? common : cell;
  const sizes = offers.map(({ microlitres }) => Math.max(1, Math.round(microlitres / unit)));
  const cells = Math.ceil(most / unit) + offers.length;
  const tables = costTables(offers, sizes, cells);
  const last = tables.at(-1)!;
  // Rounded sizes can be off by half a unit each, so the search begins a little below the need.
  const exact = unit === common;
  const slack = exact ? 0 : Math.ceil(need / unit / Math.min(...sizes));
  let best: Found | undefined;
  for (let at = Math.max(0, Math.ceil(need / unit) - slack); at <= cells; at += 1) {
    if (!Number.isFinite(last[at]!)) continue;
    const found = foundOf(countsAt(at, offers, sizes, tables), offers);
    if (found.microlitres < need) continue;
    if (!best || byLeftover(found, best) < 0) best = found;
    if (exact || at >= Math.ceil(need / unit) + slack) break;
  }
  return { best: best ?? foundOf(singleOffer(need, offers), offers), choices: [] };
}

const COARSE = MICROLITRES / 100;
const MOST_CELLS = 500_000;

/** `tables[k][v]`: the least cost of exactly `v` units of volume from the first `k` offers; infinite where none make it. */
function costTables(offers: readonly CountedOffer[], sizes: readonly number[], cells: number): Float64Array[] {
  const tables = [new Float64Array(cells + 1).fill(Number.POSITIVE_INFINITY)];
  tables[0]![0] = 0;
  offers.forEach(({ tiers, charge }, index) => {
    const size = sizes[index]!;
    const before = tables.at(-1)!;
    const after = before.slice();
    for (const { from, each } of tiers) {
      const bought = new Float64Array(cells + 1).fill(Number.POSITIVE_INFINITY);
      for (let at = from * size; at <= cells; at += 1) {
        bought[at] = Math.min(before[at - from * size]! + from * each + charge, bought[at - size]! + each);
        if (bought[at]! < after[at]!) after[at] = bought[at]!;
      }
    }
    tables.push(after);
  });
  return tables;
}

function countsAt(
  at: number,
  offers: readonly CountedOffer[],
  sizes: readonly number[],
  tables: readonly Float64Array[],
): number[] {
  const counts = new Array<number>(offers.length).fill(0);
  let volume = at;
  for (let level = offers.length; level > 0; level -= 1) {
    const [offer, size, before, after] = [offers[level - 1]!, sizes[level - 1]!, tables[level - 1]!, tables[level]!];
    const target = after[volume]!;
    let count = 0;
    while (before[volume - count * size]! + (count === 0 ? 0 : costOf(offer, count)) !== target) {
      count += 1;
      if (count * size > volume) throw new Error("the table of costs does not lead back to its beginning");
    }
    counts[level - 1] = count;
    volume -= count * size;
  }
  return counts;
}

function singleOffer(need: number, offers: readonly CountedOffer[]): number[] {
  const alone = offers.map((offer) => countToCover(offer, need));
  const waste = alone.map((count, index) => count * offers[index]!.microlitres - need);
  const best = waste.indexOf(Math.min(...waste));
  return alone.map((count, index) => (index === best ? count : 0));
}
