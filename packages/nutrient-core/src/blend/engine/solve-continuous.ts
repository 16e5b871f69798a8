import { checkCertificate } from "./certificate.ts";
import { reachAims } from "./lexicographic.ts";
import { startMemory } from "./memory.ts";
import type { BlendAim, BlendProblem } from "./problem.ts";
import { rawHardRows } from "./proofs.ts";
import { reportBlend } from "./report.ts";
import { type ScaledProblem, scaleProblem } from "./scaling.ts";
import type { BlendSolution } from "./solution.ts";
import { findFeasible } from "./stages.ts";

/**
 * The blend without choices between products: every product may be anything between its lower and upper amount.
 *
 * The answer is checked against its certificate. About once in 20,000 blends of near-alike materials the pivots fall so
 * badly that rounding spoils it; then the board is set up with the products in reverse order, which takes other pivots
 * to the same answer. An answer that fails both ways throws.
 */
export function solveContinuous(problem: BlendProblem, aim: BlendAim): BlendSolution {
  let failure: unknown;
  for (const isReversed of [false, true]) {
    try {
      const solution = solveInOrder(problem, aim, isReversed);
      const report = checkCertificate(problem, solution);
      if (report.valid) return solution;
      failure = report.failures.join("; ");
    } catch (error) {
      failure = error;
    }
  }
  throw new Error(`blend engine: the certificate fails: ${failure}`);
}

function solveInOrder(problem: BlendProblem, aim: BlendAim, isReversed: boolean): BlendSolution {
  startMemory();
  const posed = isReversed ? reverseProducts(problem) : problem;
  const scaled = scaleProblem(posed, isReversed);
  const feasible = findFeasible(scaled);
  if ("contradiction" in feasible) {
    const ceilings = rawHardRows(scaled, feasible.contradiction, 0, 1);
    const total = scaled.hasTotal ? ceilings.pop()! : 0;
    return { status: "infeasible", contradiction: { ceilings, total } };
  }
  const { z, proofs } = reachAims(scaled, aim, feasible.point, posed.prices ?? []);
  const masses: number[] = [];
  for (let j = 0; j < z.length; j++) masses.push(inGrams(posed, scaled, j, z[j]!));
  return reportBlend(problem, aim, isReversed ? masses.reverse() : masses, proofs);
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
