import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { electricalConductivity } from "../solution/conductivity.ts";
import type { BlendInput } from "./blend-input.ts";
import { asksForMoreThanThereIs, contradiction } from "./contradiction.ts";
import type { BlendProblem } from "./engine/problem.ts";
import type { ReachedBlend } from "./engine/solution.ts";
import { solveBlend } from "./engine/solve.ts";
import { notYetPassed } from "./limits.ts";
import { type Adjusted, type PosedBlend, poseBlend, type Row } from "./pose.ts";
import { reachRatio } from "./reach-ratio.ts";

/** A solved blend: the amounts, and what every row came to. */
export interface Reached {
  /** As it was given to the engine; the certificate is of this problem. */
  readonly problem: BlendProblem;
  readonly solution: ReachedBlend;
  readonly rows: readonly Row[];
  readonly extent: PosedBlend["extent"];
  /** Grams of each product in the whole blend. */
  readonly massGrams: readonly number[];
  /** Per row, in the row's own unit and scale, what was there already included. */
  readonly delivered: readonly number[];
  /** What the straight line of a limit on the conductivity was scaled by; 1 where there is none. */
  readonly conductivityCorrection: number;
  /** The whole blend is so many times the rows' scale: a ratio's rows are those of one hundred grams. */
  readonly stretch: number;
}

/** Two corrections of the conductivity closer than this, relatively, are the same. */
const SETTLED = 1e-6;
const ROUNDS = 8;

/**
 * Solves a blend, whatever its purpose and limits.
 *
 * A limit on the conductivity is a straight line to the engine; the line is set again to what the full model says of
 * the answer until the two agree, so that the ceiling is neither passed nor left unused.
 */
export function reachBlend(input: BlendInput, adjusted: Adjusted = {}): Outcome<Reached> {
  const passed = notYetPassed(input);
  if (!passed.ok) return passed;
  if (asksForMoreThanThereIs(input)) return unusable(contradiction(input));
  const limit = input.limits?.findIndex(({ kind }) => kind === "conductivity") ?? -1;
  let conductivityCorrection = adjusted.conductivityCorrection ?? 1;
  for (let round = 0; ; round++) {
    const reached = reachOnce(input, { ...adjusted, conductivityCorrection });
    if (!reached.ok || limit < 0 || round === ROUNDS) return reached;
    const { coefficients, limit: most } = reached.value.problem.ceilings![limit]!;
    const { massGrams, extent } = reached.value;
    const straight = coefficients.reduce((sum, one, j) => sum + one * massGrams[j]!, 0);
    const amounts = input.products.map((product, j) => ({ product, massGrams: massGrams[j]! }));
    const full = electricalConductivity(amounts, extent.amount).milliSiemensPerCm;
    // A blend that the first line does not hold back, and that keeps the ceiling, needs no other line.
    if (round === 0 && straight < most * (1 - SETTLED) && full <= most) return reached;
    const next = straight > 0 ? (conductivityCorrection * full) / straight : conductivityCorrection;
    if (Math.abs(next - conductivityCorrection) <= SETTLED * next) return reached;
    conductivityCorrection = next;
  }
}

function reachOnce(input: BlendInput, adjusted: Adjusted): Outcome<Reached> {
  const posed = poseBlend(input, adjusted);
  if (!posed.ok) return posed;
  if (input.purpose.kind === "ratio") return reachRatio(input, input.purpose.batchGrams, posed.value);
  const { problem, rows, extent } = posed.value;
  const { conductivityCorrection = 1 } = adjusted;
  const solution = solveBlend(problem);
  if (solution.status === "infeasible") return unusable(contradiction(input));
  const { masses, delivered } = solution;
  return answer({ problem, solution, rows, extent, massGrams: masses, delivered, conductivityCorrection, stretch: 1 });
}
