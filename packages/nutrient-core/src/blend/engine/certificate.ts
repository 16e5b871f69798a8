import { type BlendProblem, band, ideal, missOf, missScales, type NutrientTarget } from "./problem.ts";
import type { AimProof, BlendSolution, Choice, ContradictionProof, ReachedBlend } from "./solution.ts";

/*
 * The checker shares no code with the solver: it reads the problem, the answer and the multipliers, and adds up.
 *
 * Why that is enough. Let c be the slope of an aim's value at the answer x (for a convex aim no other blend x' lies
 * below the tangent: value(x') >= value(x) + c (x' - x)). For any multipliers m of the rows a x in [low, high]:
 *
 *     c x' = sum m (a x') + sum p x'   with  p = c - sum m a   (one price per product)
 *         >= sum (m > 0 ? m low : m high) + sum (p > 0 ? p lower : p upper)  =  bound.
 *
 * If c x does not exceed that bound, no allowed blend is better. (Weak duality; the multipliers that close the gap are
 * those of Karush, Kuhn and Tucker.) With c = 0 a bound above 0 shows that no blend is allowed at all (Farkas).
 */

/** Relative to the size of the terms that are added up. */
export const CERTIFICATE_TOLERANCE = 1e-9;

/** The square of a relative miss below this is compared as if it were this: squares lose half the digits. */
const ROUNDED_AWAY = 1e-9;

export interface CertificateReport {
  readonly valid: boolean;
  /** The largest error found, relative to the size of the terms added up; valid answers stay below 1e-9. */
  readonly worst: number;
  /** What does not hold, in short technical sentences; empty where the certificate is valid. */
  readonly failures: readonly string[];
}

/** One row of the region an aim may choose from, with its multiplier. */
interface Row {
  readonly coefficients: readonly number[];
  readonly low: number;
  readonly high: number;
  /** Size of the numbers that the edges were made from. */
  readonly size: number;
  readonly multiplier: number;
}

/** A running list of checks: each is a name and an error that should be at most the tolerance. */
interface Checks {
  worst: number;
  readonly failures: string[];
}

/**
 * Does the certificate prove the solution of this problem?
 *
 * @param problem the problem as it was given to `solveBlend`
 * @param solution its answer, also one that was stored or sent and read back
 * @returns whether every promise holds, and which does not
 */
export function checkCertificate(problem: BlendProblem, solution: BlendSolution): CertificateReport {
  const checks: Checks = { worst: 0, failures: [] };
  if (solution.status === "infeasible") {
    if (solution.contradiction) checkContradiction(problem, solution.contradiction, checks);
    else if (!solution.search?.complete) checks.failures.push("neither a contradiction nor a complete search");
  } else {
    checkArithmetic(problem, solution, checks);
    checkLimits(problem, solution, checks);
    checkProofs(problem, solution, checks);
  }
  return { valid: checks.failures.length === 0, worst: checks.worst, failures: checks.failures };
}

function expect(checks: Checks, name: string, error: number, index?: number): void {
  if (error > checks.worst) checks.worst = error;
  // Written so that a NaN fails.
  if (error <= CERTIFICATE_TOLERANCE) return;
  checks.failures.push(`${name}${index === undefined ? "" : ` ${index}`}: off by ${error}`);
}

function same(checks: Checks, name: string, a: number, b: number, size: number, index?: number): void {
  if (a !== b) expect(checks, name, Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), size), index);
}

/** Delivered amounts, residuals, misses, status and cost follow from the masses. */
function checkArithmetic(problem: BlendProblem, solution: ReachedBlend, checks: Checks): void {
  const { targets, supply, offsets, prices } = problem;
  const { masses, delivered, residuals, misses } = solution;
  const scales = missScales(targets);
  let isMet = true;
  targets.forEach((target, i) => {
    const offset = offsets?.[i] ?? 0;
    const sum = offset + dot(supply[i]!, masses);
    const size = Math.abs(offset) + dotSizes(supply[i]!, masses) + Math.abs(target.wanted);
    same(checks, "delivered", delivered[i]!, sum, size, i);
    same(checks, "residual", residuals[i]!, sum - target.wanted, size, i);
    same(checks, "miss", misses[i]!, missOf(sum, band(target)), Math.max(size, scales[i]!), i);
    if (misses[i] !== 0) isMet = false;
  });
  if (isMet !== (solution.status === "met")) checks.failures.push("status does not follow from the misses");
  if (prices && solution.cost !== undefined) same(checks, "cost", solution.cost, dot(prices, masses), 0);
}

/** The answer keeps every hard limit, and every choice of the search. */
function checkLimits(problem: BlendProblem, solution: ReachedBlend, checks: Checks): void {
  const { masses, certificate } = solution;
  const { lower, upper } = bounds(problem, certificate.search?.choices);
  masses.forEach((mass, j) => {
    const size = Math.max(Math.abs(mass), lower[j]!);
    expect(checks, "lower", mass < lower[j]! ? (lower[j]! - mass) / size : 0, j);
    expect(checks, "upper", mass > upper[j]! ? (mass - upper[j]!) / size : 0, j);
    const smallest = problem.smallestIfUsed?.[j] ?? 0;
    expect(checks, "smallest", mass > 0 && mass < smallest ? (smallest - mass) / smallest : 0, j);
  });
  for (const row of hardRows(problem, [], 0)) {
    const activity = dot(row.coefficients, masses);
    const miss = Math.abs(missOf(activity, [row.low, row.high]));
    const size = Math.max(dotSizes(row.coefficients, masses), Math.abs(row.high));
    expect(checks, "hard row", miss === 0 ? 0 : miss / size);
  }
}

/** The aims are proved one after the other, each within what the aims before it have left. */
function checkProofs(problem: BlendProblem, solution: ReachedBlend, checks: Checks): void {
  const { aim, misses, masses, certificate } = solution;
  const { targets } = problem;
  const scales = missScales(targets);
  const isMissed = solution.status === "closest";
  const isBanded = targets.some((target) => isBandWider(target));
  const expected: AimProof["aim"][] = [];
  if (isMissed && aim.miss === "largest") expected.push("largest");
  if (isMissed && !(aim.miss === "largest" && aim.next === "cost")) expected.push("squares");
  if (aim.next === "cost") expected.push("cost");
  else if (isBanded) expected.push("nearest");

  const names = certificate.proofs.map((proof) => proof.aim);
  if (names.length !== expected.length || names.some((name, k) => name !== expected[k])) {
    checks.failures.push(`proofs ${names} instead of ${expected}`);
    return;
  }
  const first = certificate.proofs[0];
  if (isMissed) same(checks, "objective", solution.objective, first!.value, 0);
  else expect(checks, "objective", solution.objective);

  // What each row may still deliver; nothing is asked of it before the first aim.
  let ranges: (readonly [number, number])[] = targets.map(() => [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
  if (!isMissed) ranges = targets.map(band);
  for (const proof of certificate.proofs) {
    const slope = slopeOf(problem, solution, proof.aim);
    if (proof.leans !== 0) {
      const first = slopeOf(problem, solution, aim.miss);
      slope.sizes = slope.sizes.map((size, j) => size + proof.leans * first.sizes[j]!);
    }
    same(checks, `${proof.aim} value`, proof.value, slope.value, slope.size);
    if (proof.aim === "largest") {
      const share = targets.reduce((s, t, i) => s + (Math.abs(proof.targets[i]!) * scales[i]!) / (t.weight ?? 1), 0);
      expect(checks, "largest: multipliers share out one unit of miss", Math.abs(share - 1));
      ranges = targets.map(band);
    }
    const rows = targets.map((target, i) => ({
      coefficients: problem.supply[i]!,
      low: ranges[i]![0] - (problem.offsets?.[i] ?? 0),
      high: ranges[i]![1] - (problem.offsets?.[i] ?? 0),
      size: Math.abs(target.wanted) + Math.abs(problem.offsets?.[i] ?? 0) + scales[i]!,
      multiplier: proof.targets[i]!,
    }));
    rows.push(...hardRows(problem, proof.ceilings, proof.total));
    const level = proof.aim === "largest" ? proof.value : dot(slope.c, masses);
    checkBound(problem, solution, proof.aim, slope.c, slope.sizes, level, rows, checks);

    if (proof.aim === "largest") {
      ranges = targets.map((target, i) => {
        const [low, high] = band(target);
        const allowed = (proof.value * scales[i]!) / (target.weight ?? 1);
        return [low - allowed, high + allowed];
      });
    }
    if (proof.aim === "squares") {
      const delivered = solution.delivered;
      ranges = targets.map((target, i) => (misses[i] === 0 ? band(target) : [delivered[i]!, delivered[i]!]));
    }
  }
}

/** True if a row may end somewhere else than at its ideal and still be met. */
function isBandWider(target: NutrientTarget): boolean {
  const [low, high] = band(target);
  const [idealLow, idealHigh] = ideal(target);
  return low !== idealLow || high !== idealHigh;
}

/** Value and slope of an aim at the answer, with the size of the terms each slope is added up from. */
function slopeOf(
  { targets, supply, prices }: BlendProblem,
  { masses, delivered, misses, relativeMisses }: ReachedBlend,
  aim: AimProof["aim"],
): { value: number; size: number; c: number[]; sizes: number[] } {
  const zeros = masses.map(() => 0);
  if (aim === "cost") {
    const c = masses.map((_, j) => prices?.[j] ?? 0);
    return { value: dot(c, masses), size: 0, c, sizes: c };
  }
  const scales = missScales(targets);
  const weights = targets.map((target) => target.weight ?? 1);
  if (aim === "largest") {
    const value = weights.reduce((most, weight, i) => Math.max(most, weight * relativeMisses[i]!), 0);
    // The price of a product if all of the shared miss were one row's.
    const sizes = zeros.map((_, j) =>
      weights.reduce((most, weight, i) => Math.max(most, (weight / scales[i]!) * Math.abs(supply[i]![j]!)), 0),
    );
    return { value, size: 0, c: zeros, sizes };
  }
  const c = zeros.slice();
  const sizes = zeros.slice();
  const size = ROUNDED_AWAY * Math.max(...weights);
  let value = 0;
  targets.forEach((target, i) => {
    // A row that must be missed has nothing left to choose.
    if (aim === "nearest" && misses[i] !== 0) return;
    const away = aim === "nearest" ? missOf(delivered[i]!, ideal(target)) : misses[i]!;
    const pull = weights[i]! / scales[i]! ** 2;
    value += pull * away * away;
    for (let j = 0; j < c.length; j++) {
      c[j]! += 2 * pull * away * supply[i]![j]!;
      sizes[j]! += 2 * pull * Math.max(Math.abs(away), scales[i]!) * Math.abs(supply[i]![j]!);
    }
  });
  return { value, size, c, sizes };
}

/** The bound that the multipliers prove must reach the level that the answer has. */
function checkBound(
  problem: BlendProblem,
  { masses, certificate }: ReachedBlend,
  name: string,
  c: readonly number[],
  sizes: readonly number[],
  level: number,
  rows: readonly Row[],
  checks: Checks,
): void {
  const { lower, upper } = bounds(problem, certificate.search?.choices);
  const { bound, size, wrong } = boundOf(c, sizes, rows, lower, upper, masses);
  expect(checks, `${name}: price of a product without limit`, wrong);
  let scale = size;
  for (let j = 0; j < c.length; j++) scale += sizes[j]! * masses[j]!;
  expect(checks, `${name}: gap`, level <= bound ? 0 : (level - bound) / (scale + Math.abs(level)));
}

/** The lower bound of c x over the region, the size of its terms, and the worst price that has no limit to lean on. */
function boundOf(
  c: readonly number[],
  sizes: readonly number[],
  rows: readonly Row[],
  lower: readonly number[],
  upper: readonly number[],
  masses?: readonly number[],
): { bound: number; size: number; wrong: number } {
  let bound = 0;
  let size = 0;
  let wrong = 0;
  const price = c.slice();
  const priceSize = sizes.slice();
  for (const { coefficients, low, high, size: rowSize, multiplier } of rows) {
    if (multiplier === 0) continue;
    const edge = multiplier * (multiplier > 0 ? low : high);
    bound += edge;
    size += Math.abs(multiplier) * rowSize;
    for (let j = 0; j < price.length; j++) {
      price[j]! -= multiplier * coefficients[j]!;
      priceSize[j]! += Math.abs(multiplier * coefficients[j]!);
    }
  }
  for (let j = 0; j < price.length; j++) {
    const relative = priceSize[j]! > 0 ? Math.abs(price[j]!) / priceSize[j]! : 0;
    let limit = price[j]! > 0 ? lower[j]! : upper[j]!;
    // A price that is only rounding leans on no limit: the product is indifferent where it is.
    if (limit === Number.POSITIVE_INFINITY || (masses && relative <= CERTIFICATE_TOLERANCE)) {
      wrong = Math.max(wrong, relative);
      limit = masses?.[j] ?? 0;
    }
    const edge = price[j]! * limit;
    bound += edge;
    size += Math.abs(edge);
  }
  return { bound, size, wrong };
}

/** Hard rows alone must add up to something impossible. */
function checkContradiction(problem: BlendProblem, proof: ContradictionProof, checks: Checks): void {
  const { lower, upper } = bounds(problem, undefined);
  const zeros = lower.map(() => 0);
  const { bound, size, wrong } = boundOf(zeros, zeros, hardRows(problem, proof.ceilings, proof.total), lower, upper);
  expect(checks, "contradiction: price of a product without limit", wrong);
  if (!(bound > CERTIFICATE_TOLERANCE * size)) checks.failures.push(`contradiction: ${bound} is not above 0`);
}

function hardRows(problem: BlendProblem, multipliers: readonly number[], total: number): Row[] {
  const rows: Row[] = (problem.ceilings ?? []).map(({ coefficients, limit }, r) => ({
    coefficients,
    low: Number.NEGATIVE_INFINITY,
    high: limit,
    size: Math.abs(limit),
    multiplier: multipliers[r] ?? 0,
  }));
  if (problem.total !== undefined) {
    const coefficients = (problem.supply[0] ?? []).map(() => 1);
    rows.push({ coefficients, low: problem.total, high: problem.total, size: problem.total, multiplier: total });
  }
  return rows;
}

function bounds(problem: BlendProblem, choices: readonly Choice[] | undefined): { lower: number[]; upper: number[] } {
  const products = problem.supply[0]?.length ?? 0;
  const lower: number[] = [];
  const upper: number[] = [];
  for (let j = 0; j < products; j++) {
    const least = problem.lower?.[j] ?? 0;
    const smallest = choices?.[j] === "in" ? (problem.smallestIfUsed?.[j] ?? 0) : 0;
    lower.push(Math.max(least, smallest));
    upper.push(choices?.[j] === "out" ? 0 : (problem.upper?.[j] ?? Number.POSITIVE_INFINITY));
  }
  return { lower, upper };
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let j = 0; j < b.length; j++) sum += a[j]! * b[j]!;
  return sum;
}

function dotSizes(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let j = 0; j < b.length; j++) sum += Math.abs(a[j]! * b[j]!);
  return sum;
}
