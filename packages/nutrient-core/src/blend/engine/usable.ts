import type { BlendProblem } from "./problem.ts";

/**
 * Stops at a problem that is not one: the rooms check what people write, so anything that arrives here in the wrong
 * shape is an error of the program.
 */
export function assertUsable(problem: BlendProblem): void {
  const { supply, targets, offsets, ceilings, lower, upper, smallestIfUsed, total, prices, aim } = problem;
  const products = supply[0]?.length ?? 0;
  need(products > 0, "at least one nutrient and one product");
  need(targets.length === supply.length, "one target per row of supply");
  for (const row of supply) need(row.length === products && areFinite(row), "finite supply in every place");
  for (const { wanted, bandBelow = 0, bandAbove = 0, weight = 1, scale = 1 } of targets) {
    need(Number.isFinite(wanted), "finite wanted amounts");
    need(bandBelow >= 0 && bandBelow < Infinity && bandAbove >= 0 && bandAbove < Infinity, "bands from 0 up");
    need(weight > 0 && weight < Infinity && scale > 0 && scale < Infinity, "weights and scales above 0");
  }
  need(!offsets || (offsets.length === targets.length && areFinite(offsets)), "finite offsets, one per row");
  for (const { coefficients, limit } of ceilings ?? []) {
    need(coefficients.length === products && areFinite(coefficients), "one finite coefficient per product");
    need(Number.isFinite(limit), "finite limits");
  }
  for (const list of [lower, upper, smallestIfUsed, prices]) {
    need(!list || list.length === products, "one bound or price per product");
  }
  for (let j = 0; j < products; j++) {
    const least = lower?.[j] ?? 0;
    const most = upper?.[j] ?? Number.POSITIVE_INFINITY;
    const smallest = smallestIfUsed?.[j] ?? 0;
    const price = prices?.[j] ?? 0;
    need(least >= 0 && least < Infinity && most >= least, "0 <= lower <= upper, lower finite");
    need(
      smallest >= 0 && smallest < Infinity && price >= 0 && price < Infinity,
      "finite prices and smallest amounts from 0 up",
    );
  }
  need(total === undefined || (total >= 0 && Number.isFinite(total)), "a finite total from 0 up");
  need(aim?.next !== "cost" || prices !== undefined, "prices for the aim of least cost");
}

function areFinite(list: readonly number[]): boolean {
  for (let j = 0; j < list.length; j++) if (!Number.isFinite(list[j])) return false;
  return true;
}

function need(holds: boolean, what: string): void {
  if (!holds) throw new RangeError(`blend engine: needs ${what}`);
}
