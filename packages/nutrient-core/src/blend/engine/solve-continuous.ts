import { checkCertificate } from "./certificate.ts";
import { reachAims } from "./lexicographic.ts";
import { startMemory } from "./memory.ts";
import type { BlendAim, BlendProblem } from "./problem.ts";
import { rawHardRows } from "./proofs.ts";
import { reportBlend } from "./report.ts";
import { type Attempt, type ScaledProblem, scaleProblem } from "./scaling.ts";
import type { BlendSolution } from "./solution.ts";
import { findFeasible } from "./stages.ts";

/**
 * The blend without choices between products: every product may be anything between its lower and upper amount.
 *
 * The answer is checked against its certificate. In about one of 50,000 blends rounding spoils it;
 * then the board is set up in another way, which takes other pivots to the same answer. An answer that fails in every
 * way throws (`docs/decisions/blend-engine.md` counts them).
 */
export function solveContinuous(problem: BlendProblem, aim: BlendAim): BlendSolution {
  let failure: unknown;
  for (const attempt of ATTEMPTS) {
    try {
      const solution = solveOnce(problem, aim, attempt);
      const report = checkCertificate(problem, solution);
      if (report.valid) return solution;
      failure = report.failures.join("; ");
    } catch (error) {
      failure = error;
    }
  }
  throw new Error(`blend engine: the certificate fails: ${failure}`);
}

/** In the order in which they help: measured on blends that fail the first. */
export const ATTEMPTS: readonly Attempt[] = [
  { isReversed: false, sure: 10 },
  { isReversed: true, sure: 10 },
  { isReversed: false, sure: 50 },
  { isReversed: true, sure: 2 },
  { isReversed: false, sure: 10, units: "minded" },
  { isReversed: false, sure: 5, slack: 1e-10 },
  { isReversed: true, sure: 5, slack: 3e-10 },
  { isReversed: true, sure: 5, slack: 1e-10, units: "minded" },
  { isReversed: false, sure: 10, units: "least" },
  { isReversed: true, sure: 5, slack: 1e-10, units: "least" },
];

/** One way to the answer, not yet checked. */
export function solveOnce(problem: BlendProblem, aim: BlendAim, attempt: Attempt): BlendSolution {
  startMemory();
  const posed = attempt.isReversed ? reverseProducts(problem) : problem;
  const scaled = scaleProblem(posed, attempt);
  const feasible = findFeasible(scaled);
  if ("contradiction" in feasible) {
    const ceilings = rawHardRows(scaled, feasible.contradiction, 0, 1);
    const total = scaled.hasTotal ? ceilings.pop()! : 0;
    return { status: "infeasible", contradiction: { ceilings, total } };
  }
  const { z, proofs } = reachAims(scaled, aim, feasible.point, posed.prices);
  const masses: number[] = [];
  for (let j = 0; j < z.length; j++) masses.push(inGrams(posed, scaled, j, z[j]!));
  return reportBlend(problem, aim, attempt.isReversed ? masses.reverse() : masses, proofs);
}

/** An amount at the end of its range is that end, without the rounding of the scaled units. */
function inGrams(problem: BlendProblem, scaled: ScaledProblem, j: number, units: number): number {
  if (units === scaled.low[j]) return problem.lower?.[j] ?? 0;
  if (units === scaled.high[j]) return problem.upper![j]!;
  return units * scaled.grams[j]!;
}

/** The same problem with its products the other way round. Multipliers belong to rows, so they stay as they are. */
function reverseProducts(problem: BlendProblem): BlendProblem {
  const { lower, upper, prices, ceilings } = problem;
  return {
    ...problem,
    supply: problem.supply.map(reversed),
    ...(lower ? { lower: reversed(lower) } : {}),
    ...(upper ? { upper: reversed(upper) } : {}),
    ...(prices ? { prices: reversed(prices) } : {}),
    ...(ceilings
      ? { ceilings: ceilings.map(({ coefficients, limit }) => ({ coefficients: reversed(coefficients), limit })) }
      : {}),
  };
}

function reversed(list: readonly number[]): number[] {
  return [...list].reverse();
}
