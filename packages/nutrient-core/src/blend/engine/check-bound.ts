import { type Bounds, boundsOf, CERTIFICATE_TOLERANCE, type Checks, dot, dotSizes, expect } from "./checks.ts";
import { type BlendProblem, missOf } from "./problem.ts";
import type { ContradictionProof } from "./solution.ts";

/*
 * Why multipliers are enough. Let c be the slope of an aim's value at the answer x (for a convex aim no other blend x'
 * lies below the tangent: value(x') >= value(x) + c (x' - x)). For any multipliers m of the rows a x in [low, high]:
 *
 *     c x' = sum m (a x') + sum p x'   with  p = c - sum m a   (one price per product)
 *         >= sum (m > 0 ? m low : m high) + sum (p > 0 ? p lower : p upper)  =  bound.
 *
 * If c x does not exceed that bound, no allowed blend is better. (Weak duality; the multipliers that close the gap are
 * those of Karush, Kuhn and Tucker.) With c = 0 a bound above 0 shows that no blend is allowed at all (Farkas).
 */

/** A bound that is being added up. */
export interface Sum {
  bound: number;
  /** Size of its terms. */
  size: number;
  /** Per product: what is left of c, and the size of its terms. */
  readonly prices: number[];
  readonly priceSizes: number[];
}

/** Adds one row, `edgeSize` being the size of the numbers that its edges were made from. */
export function addRow(
  sum: Sum,
  multiplier: number,
  coefficients: readonly number[],
  low: number,
  high: number,
  edgeSize: number,
): void {
  if (multiplier === 0) return;
  const { prices, priceSizes } = sum;
  sum.bound += multiplier * (multiplier > 0 ? low : high);
  sum.size += Math.abs(multiplier) * edgeSize;
  for (let j = 0; j < prices.length; j++) {
    const term = multiplier * coefficients[j]!;
    prices[j]! -= term;
    priceSizes[j]! += Math.abs(term);
  }
}

/** Adds the ceilings and the batch total. */
export function addHardRows(sum: Sum, problem: BlendProblem, proof: ContradictionProof): void {
  const { ceilings, total, supply } = problem;
  for (let r = 0; r < (ceilings?.length ?? 0); r++) {
    const { coefficients, limit } = ceilings![r]!;
    addRow(sum, proof.ceilings[r] ?? 0, coefficients, Number.NEGATIVE_INFINITY, limit, Math.abs(limit));
  }
  if (total !== undefined) addRow(sum, proof.total, ones(supply[0]!.length), total, total, total);
}

/**
 * Adds what the products' own limits say of the prices that are left. Returns the worst price that has no limit to lean
 * on, relative to its terms. A price that is only rounding leans on none either: the product is indifferent where it is.
 */
export function addProducts(sum: Sum, { lower, upper }: Bounds, masses?: readonly number[]): number {
  let wrong = 0;
  for (let j = 0; j < lower.length; j++) {
    const price = sum.prices[j]!;
    // Written so that a NaN is not passed over.
    if (price === 0) continue;
    const relative = Math.abs(price) / sum.priceSizes[j]!;
    let limit = price > 0 ? lower[j]! : upper[j]!;
    if (limit === Number.POSITIVE_INFINITY || (masses && relative <= CERTIFICATE_TOLERANCE)) {
      wrong = Math.max(wrong, relative);
      limit = masses?.[j] ?? 0;
    }
    sum.bound += price * limit;
    sum.size += Math.abs(price * limit);
  }
  return wrong;
}

/** Hard rows alone must add up to something impossible. */
export function checkContradiction(problem: BlendProblem, proof: ContradictionProof, checks: Checks): void {
  const bounds = boundsOf(problem, undefined);
  const zeros = bounds.lower.map(() => 0);
  const sum: Sum = { bound: 0, size: 0, prices: zeros, priceSizes: zeros.slice() };
  addHardRows(sum, problem, proof);
  expect(checks, "contradiction: price of a product without limit", addProducts(sum, bounds));
  if (!(sum.bound > CERTIFICATE_TOLERANCE * sum.size)) {
    checks.failures.push(`contradiction: ${sum.bound} is not above 0`);
  }
}

/** The answer keeps the ceilings and the batch total. */
export function checkHardRows(problem: BlendProblem, masses: readonly number[], checks: Checks): void {
  const { ceilings, total } = problem;
  for (let r = 0; r < (ceilings?.length ?? 0); r++) {
    const { coefficients, limit } = ceilings![r]!;
    checkHardRow(coefficients, Number.NEGATIVE_INFINITY, limit, masses, checks);
  }
  if (total !== undefined) checkHardRow(ones(masses.length), total, total, masses, checks);
}

function checkHardRow(
  coefficients: readonly number[],
  low: number,
  high: number,
  masses: readonly number[],
  checks: Checks,
): void {
  const miss = Math.abs(missOf(dot(coefficients, masses), low, high));
  if (miss !== 0) expect(checks, "hard row", miss / Math.max(dotSizes(coefficients, masses), Math.abs(high)));
}

function ones(count: number): number[] {
  return new Array<number>(count).fill(1);
}
