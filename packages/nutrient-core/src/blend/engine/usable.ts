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
  for (const row of supply) need(row.length === products && row.every(Number.isFinite), "finite supply in every place");
  for (const { wanted, bandBelow, bandAbove, weight, scale } of targets) {
    need(Number.isFinite(wanted), "finite wanted amounts");
    for (const width of [bandBelow ?? 0, bandAbove ?? 0]) need(width >= 0 && Number.isFinite(width), "bands from 0 up");
    for (const positive of [weight ?? 1, scale ?? 1]) {
      need(positive > 0 && Number.isFinite(positive), "weights and scales above 0");
    }
  }
  need(
    !offsets || (offsets.length === targets.length && offsets.every(Number.isFinite)),
    "finite offsets, one per row",
  );
  for (const { coefficients, limit } of ceilings ?? []) {
    need(coefficients.length === products && coefficients.every(Number.isFinite), "one finite coefficient per product");
    need(Number.isFinite(limit), "finite limits");
  }
  for (const list of [lower, upper, smallestIfUsed, prices]) {
    need(!list || list.length === products, "one bound or price per product");
  }
  for (let j = 0; j < products; j++) {
    const least = lower?.[j] ?? 0;
    const most = upper?.[j] ?? Number.POSITIVE_INFINITY;
    need(least >= 0 && Number.isFinite(least) && most >= least, "0 <= lower <= upper, lower finite");
    for (const amount of [smallestIfUsed?.[j] ?? 0, prices?.[j] ?? 0]) {
      need(amount >= 0 && Number.isFinite(amount), "finite prices and smallest amounts from 0 up");
    }
  }
  need(total === undefined || (total >= 0 && Number.isFinite(total)), "a finite total from 0 up");
  need(aim?.next !== "cost" || prices !== undefined, "prices for the aim of least cost");
}

function need(holds: boolean, what: string): void {
  if (!holds) throw new RangeError(`blend engine: needs ${what}`);
}
