import { checkCertificate } from "./certificate.ts";
import { hasChoices, solveWithChoices } from "./choices.ts";
import { type BlendProblem, DEFAULT_AIM } from "./problem.ts";
import type { BlendSolution } from "./solution.ts";
import { solveContinuous } from "./solve-continuous.ts";
import { assertUsable } from "./usable.ts";

/**
 * How much of each product comes nearest to the targets, and the proof that nothing comes nearer?
 *
 * @param problem supply per gram, targets, limits and the order of the aims; see `BlendProblem` for each quantity,
 *   its basis and range. Up to about 30 products and 20 nutrients; memory and time grow with the square and the cube.
 * @returns `met` or `closest` with masses in grams, what they deliver and what is missed, or `infeasible` where the hard
 *   limits contradict each other; always with multipliers that `checkCertificate` verifies
 * @throws RangeError where the problem is not one (sizes that differ, a number that is not finite, a negative weight);
 *   Error where the answer fails its own check, which is a bug
 * @example
 * const blend = solveBlend({ supply: [[130, 155], [370, 0]], targets: [{ wanted: 127 }, { wanted: 185 }] });
 * blend.status // => "met"
 */
export function solveBlend(problem: BlendProblem): BlendSolution {
  assertUsable(problem);
  const aim = problem.aim ?? DEFAULT_AIM;
  if (!hasChoices(problem, aim)) return solveContinuous(problem, aim);
  const solution = solveWithChoices(problem, aim);
  const report = checkCertificate(problem, solution);
  if (!report.valid) throw new Error(`blend engine: the certificate fails: ${report.failures.join("; ")}`);
  return solution;
}
