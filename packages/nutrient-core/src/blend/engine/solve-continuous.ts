import { reachAims } from "./lexicographic.ts";
import type { BlendAim, BlendProblem } from "./problem.ts";
import { rawHardRows } from "./proofs.ts";
import { reportBlend } from "./report.ts";
import { type ScaledProblem, scaleProblem } from "./scaling.ts";
import type { BlendSolution } from "./solution.ts";
import { findFeasible } from "./stages.ts";

/** The blend without choices between products: every product may be anything between its lower and upper amount. */
export function solveContinuous(problem: BlendProblem, aim: BlendAim): BlendSolution {
  const scaled = scaleProblem(problem);
  const feasible = findFeasible(scaled);
  if ("contradiction" in feasible) {
    const ceilings = rawHardRows(scaled, feasible.contradiction, 0, 1);
    const total = scaled.hasTotal ? ceilings.pop()! : 0;
    return { status: "infeasible", contradiction: { ceilings, total } };
  }
  const { z, proofs } = reachAims(scaled, aim, feasible.point, problem.prices ?? []);
  const masses = Array.from(z, (units, j) => inGrams(problem, scaled, j, units));
  return reportBlend(problem, aim, masses, proofs);
}

/** An amount at the end of its range is that end, without the rounding of the scaled units. */
function inGrams(problem: BlendProblem, scaled: ScaledProblem, j: number, units: number): number {
  if (units === scaled.low[j]) return problem.lower?.[j] ?? 0;
  if (units === scaled.high[j]) return problem.upper![j]!;
  return units * scaled.grams[j]!;
}
