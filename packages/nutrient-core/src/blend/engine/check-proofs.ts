import { addHardRows, addProducts, addRow, type Sum } from "./check-bound.ts";
import { type Bounds, type Checks, dot, expect, same } from "./checks.ts";
import { type BlendProblem, bandHigh, bandLow, idealHigh, idealLow, missOf } from "./problem.ts";
import type { AimProof, ReachedBlend } from "./solution.ts";

/** The square of a relative miss below this is compared as if it were this: squares lose half the digits. */
const ROUNDED_AWAY = 1e-9;

/** The aims are proved one after the other, each within what the aims before it have left. */
export function checkProofs(
  problem: BlendProblem,
  solution: ReachedBlend,
  scales: readonly number[],
  bounds: Bounds,
  checks: Checks,
): void {
  const { proofs } = solution.certificate;
  const isMissed = solution.status === "closest";
  const expected = aimsToProve(problem, solution);
  if (proofs.length !== expected.length || proofs.some((proof, k) => proof.aim !== expected[k])) {
    checks.failures.push(`proofs ${proofs.map((proof) => proof.aim)} instead of ${expected}`);
    return;
  }
  if (isMissed) same(checks, "objective", solution.objective, proofs[0]!.value, 0);
  else expect(checks, "objective", solution.objective);

  const ranges = startRanges(problem, solution);
  for (const proof of proofs) {
    if (proof.aim === "largest") keepBands(problem, ranges);
    checkProof(problem, solution, proof, scales, ranges, bounds, checks);
    if (proof.aim === "largest") widenRanges(problem, proof.value, scales, ranges);
    if (proof.aim === "squares") keepMisses(problem, solution, ranges);
  }
}

/** The aims that need a proof: what was reached in full needs none. */
function aimsToProve({ targets }: BlendProblem, { aim, status }: ReachedBlend): AimProof["aim"][] {
  const expected: AimProof["aim"][] = [];
  if (status === "closest") {
    if (aim.miss === "largest") expected.push("largest");
    if (!(aim.miss === "largest" && aim.next === "cost")) expected.push("squares");
  }
  if (aim.next === "cost") expected.push("cost");
  // Otherwise it matters only where a row may end somewhere else than at its ideal and still be met.
  else if (targets.some((t) => bandLow(t) !== idealLow(t) || bandHigh(t) !== idealHigh(t))) expected.push("nearest");
  return expected;
}

/** What each row may still deliver. */
interface Ranges {
  readonly low: number[];
  readonly high: number[];
}

/** Nothing is asked of a row before the first aim; where all bands are met, they are kept. */
function startRanges(problem: BlendProblem, solution: ReachedBlend): Ranges {
  const count = problem.targets.length;
  const low = new Array<number>(count).fill(Number.NEGATIVE_INFINITY);
  const high = new Array<number>(count).fill(Number.POSITIVE_INFINITY);
  if (solution.status === "met") keepMisses(problem, solution, { low, high });
  return { low, high };
}

function keepBands({ targets }: BlendProblem, { low, high }: Ranges): void {
  for (let i = 0; i < targets.length; i++) {
    low[i] = bandLow(targets[i]!);
    high[i] = bandHigh(targets[i]!);
  }
}

/** Every row may use the largest miss. */
function widenRanges({ targets }: BlendProblem, value: number, scales: readonly number[], { low, high }: Ranges): void {
  for (let i = 0; i < targets.length; i++) {
    const allowed = (value * scales[i]!) / (targets[i]!.weight ?? 1);
    low[i]! -= allowed;
    high[i]! += allowed;
  }
}

/** A missed row stays where it is, a met one within its band, which is as wide as rounding has left it. */
function keepMisses({ targets }: BlendProblem, { misses, delivered }: ReachedBlend, { low, high }: Ranges): void {
  for (let i = 0; i < targets.length; i++) {
    const value = delivered[i]!;
    low[i] = misses[i] === 0 ? Math.min(bandLow(targets[i]!), value) : value;
    high[i] = misses[i] === 0 ? Math.max(bandHigh(targets[i]!), value) : value;
  }
}

/** The bound that the multipliers prove must reach the level that the answer has. */
function checkProof(
  problem: BlendProblem,
  solution: ReachedBlend,
  proof: AimProof,
  scales: readonly number[],
  { low, high }: Ranges,
  bounds: Bounds,
  checks: Checks,
): void {
  const { targets, supply, offsets } = problem;
  const { masses } = solution;
  const slope = slopeOf(problem, solution, proof.aim, scales);
  const { c, sizes } = slope;
  same(checks, `${proof.aim} value`, proof.value, slope.value, slope.size);
  const level = proof.aim === "largest" ? proof.value : dot(c, masses);
  const scale = dot(sizes, masses) + Math.abs(level);

  const sum: Sum = { bound: 0, size: 0, prices: c, priceSizes: sizes };
  let shared = 0;
  for (let i = 0; i < targets.length; i++) {
    const multiplier = proof.targets[i]!;
    if (multiplier === 0) continue;
    const { wanted, weight } = targets[i]!;
    const offset = offsets?.[i] ?? 0;
    const edgeSize = Math.abs(wanted) + Math.abs(offset) + scales[i]!;
    addRow(sum, multiplier, supply[i]!, low[i]! - offset, high[i]! - offset, edgeSize);
    shared += (Math.abs(multiplier) * scales[i]!) / (weight ?? 1);
  }
  if (proof.aim === "largest") {
    expect(checks, "largest: multipliers share out one unit of miss", Math.abs(shared - 1));
  }
  addHardRows(sum, problem, proof);
  const wrong = addProducts(sum, bounds, masses);
  expect(checks, `${proof.aim}: price of a product without limit`, wrong);
  const gap = level <= sum.bound ? 0 : (level - sum.bound) / (sum.size + scale);
  expect(checks, `${proof.aim}: gap`, gap);
}

/** Value and slope of an aim at the answer, with the size of the terms each is added up from. */
interface Slope {
  readonly value: number;
  readonly size: number;
  readonly c: number[];
  readonly sizes: number[];
}

function slopeOf(
  problem: BlendProblem,
  solution: ReachedBlend,
  aim: AimProof["aim"],
  scales: readonly number[],
): Slope {
  if (aim === "cost") {
    const c = solution.masses.map((_, j) => problem.prices?.[j] ?? 0);
    return { value: dot(c, solution.masses), size: 0, c, sizes: c.slice() };
  }
  return aim === "largest" ? slopeOfLargest(problem, solution, scales) : slopeOfSquares(problem, solution, aim, scales);
}

/** The miss is a number of its own here, shared out by the multipliers, so no product has a slope. */
function slopeOfLargest({ targets, supply }: BlendProblem, solution: ReachedBlend, scales: readonly number[]): Slope {
  const c = zeros(solution.masses.length);
  // The price of a product if all of the shared miss were one row's.
  const sizes = zeros(c.length);
  let value = 0;
  for (let i = 0; i < targets.length; i++) {
    const weight = targets[i]!.weight ?? 1;
    const row = supply[i]!;
    const unit = weight / scales[i]!;
    value = Math.max(value, weight * solution.relativeMisses[i]!);
    for (let j = 0; j < sizes.length; j++) sizes[j] = Math.max(sizes[j]!, unit * Math.abs(row[j]!));
  }
  return { value, size: 0, c, sizes };
}

function slopeOfSquares(
  { targets, supply }: BlendProblem,
  { masses, delivered, misses }: ReachedBlend,
  aim: "squares" | "nearest",
  scales: readonly number[],
): Slope {
  const c = zeros(masses.length);
  const sizes = zeros(masses.length);
  let heaviest = 0;
  let value = 0;
  for (let i = 0; i < targets.length; i++) {
    const target = targets[i]!;
    const weight = target.weight ?? 1;
    heaviest = Math.max(heaviest, weight);
    // A row that must be missed has nothing left to choose.
    if (aim === "nearest" && misses[i] !== 0) continue;
    // Also a miss that is rounding has its pull, or the pulls would not balance.
    const away =
      aim === "nearest"
        ? missOf(delivered[i]!, idealLow(target), idealHigh(target))
        : missOf(delivered[i]!, bandLow(target), bandHigh(target));
    const scale = scales[i]!;
    const pull = weight / scale ** 2;
    const row = supply[i]!;
    value += pull * away * away;
    const slope = 2 * pull * away;
    const size = 2 * pull * Math.max(Math.abs(away), scale);
    for (let j = 0; j < c.length; j++) {
      c[j]! += slope * row[j]!;
      sizes[j]! += size * Math.abs(row[j]!);
    }
  }
  return { value, size: ROUNDED_AWAY * heaviest, c, sizes };
}

function zeros(count: number): number[] {
  return new Array<number>(count).fill(0);
}
