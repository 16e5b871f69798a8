import type { BlendProblem } from "./problem.ts";
import type { Choice } from "./solution.ts";

/** Relative to the size of the terms that are added up. */
export const CERTIFICATE_TOLERANCE = 1e-9;

/** A running list of checks: each is a name and an error that should be at most the tolerance. */
export interface Checks {
  worst: number;
  readonly failures: string[];
}

/** Notes an error, and a failure where it is too large. */
export function expect(checks: Checks, name: string, error: number, index?: number): void {
  if (error > checks.worst) checks.worst = error;
  // Written so that a NaN fails.
  if (error <= CERTIFICATE_TOLERANCE) return;
  checks.failures.push(`${name}${index === undefined ? "" : ` ${index}`}: off by ${error}`);
}

/** Two numbers should be the same, up to rounding in terms of this size. */
export function same(checks: Checks, name: string, a: number, b: number, size: number, index?: number): void {
  if (a !== b) expect(checks, name, Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), size), index);
}

/** What each product may weigh, once the search has chosen. */
export interface Bounds {
  readonly lower: readonly number[];
  readonly upper: readonly number[];
}

export function boundsOf(problem: BlendProblem, choices: readonly Choice[] | undefined): Bounds {
  const products = problem.supply[0]!.length;
  const lower: number[] = [];
  const upper: number[] = [];
  for (let j = 0; j < products; j++) {
    const least = problem.lower?.[j] ?? 0;
    // What must be there is used, with or without a choice.
    const smallest = least > 0 || choices?.[j] === "in" ? (problem.smallestIfUsed?.[j] ?? 0) : 0;
    lower.push(Math.max(least, smallest));
    upper.push(choices?.[j] === "out" ? 0 : (problem.upper?.[j] ?? Number.POSITIVE_INFINITY));
  }
  return { lower, upper };
}

/** A sum of products. */
export function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let j = 0; j < b.length; j++) sum += a[j]! * b[j]!;
  return sum;
}

/** The size of its terms. */
export function dotSizes(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let j = 0; j < b.length; j++) sum += Math.abs(a[j]! * b[j]!);
  return sum;
}
