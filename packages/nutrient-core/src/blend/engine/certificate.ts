import { checkContradiction, checkHardRows } from "./check-bound.ts";
import { checkProofs } from "./check-proofs.ts";
import { type Bounds, boundsOf, type Checks, dot, dotSizes, expect, same } from "./checks.ts";
import { type BlendProblem, bandHigh, bandLow, missOf, missScales } from "./problem.ts";
import type { BlendSolution, ReachedBlend } from "./solution.ts";

/*
 * The checker shares no code with the solver: it reads the problem, the answer and the multipliers, and adds up.
 * This file checks what follows from the masses alone; `check-proofs.ts` the aims in their order, and
 * `check-bound.ts` holds the few lines that prove an aim.
 */

export interface CertificateReport {
  readonly valid: boolean;
  /** The largest error found, relative to the size of the terms added up; valid answers stay below 1e-9. */
  readonly worst: number;
  /** What does not hold, in short technical sentences; empty where the certificate is valid. */
  readonly failures: readonly string[];
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
    const scales = missScales(problem.targets);
    const bounds = boundsOf(problem, solution.certificate.search?.choices);
    checkArithmetic(problem, solution, scales, checks);
    checkLimits(problem, solution, bounds, checks);
    checkProofs(problem, solution, scales, bounds, checks);
  }
  return { valid: checks.failures.length === 0, worst: checks.worst, failures: checks.failures };
}

/** Delivered amounts, residuals, misses, status and cost follow from the masses. */
function checkArithmetic(problem: BlendProblem, solution: ReachedBlend, scales: number[], checks: Checks): void {
  const { targets, supply, offsets, prices } = problem;
  const { masses, delivered, residuals, misses } = solution;
  let isMet = true;
  for (let i = 0; i < targets.length; i++) {
    const target = targets[i]!;
    const row = supply[i]!;
    const offset = offsets?.[i] ?? 0;
    const sum = offset + dot(row, masses);
    const size = Math.abs(offset) + dotSizes(row, masses) + Math.abs(target.wanted);
    same(checks, "delivered", delivered[i]!, sum, size, i);
    same(checks, "residual", residuals[i]!, sum - target.wanted, size, i);
    const miss = missOf(sum, bandLow(target), bandHigh(target));
    same(checks, "miss", misses[i]!, miss, Math.max(size, scales[i]!), i);
    if (misses[i] !== 0) isMet = false;
  }
  if (isMet !== (solution.status === "met")) checks.failures.push("status does not follow from the misses");
  if (prices) same(checks, "cost", solution.cost ?? Number.NaN, dot(prices, masses), 0);
}

/** The answer keeps every hard limit, and every choice of the search. */
function checkLimits(problem: BlendProblem, solution: ReachedBlend, { lower, upper }: Bounds, checks: Checks): void {
  const { masses } = solution;
  for (let j = 0; j < lower.length; j++) {
    const mass = masses[j]!;
    const least = lower[j]!;
    const most = upper[j]!;
    // Written so that a NaN fails.
    if (!(mass >= least)) expect(checks, "lower", (least - mass) / Math.max(Math.abs(mass), least), j);
    if (!(mass <= most)) expect(checks, "upper", (mass - most) / Math.max(Math.abs(mass), least), j);
    const smallest = problem.smallestIfUsed?.[j] ?? 0;
    if (mass > 0 && mass < smallest) expect(checks, "smallest", (smallest - mass) / smallest, j);
  }
  checkHardRows(problem, masses, checks);
}
