import {
  type BlendAim,
  type BlendProblem,
  bandHigh,
  bandLow,
  idealHigh,
  idealLow,
  MET_TOLERANCE,
  missOf,
  missScales,
} from "./problem.ts";
import type { AimMultipliers } from "./proofs.ts";
import type { AimProof, BindingLimit, ReachedBlend } from "./solution.ts";

/** Everything that follows from the masses and the proofs. */
export function reportBlend(
  problem: BlendProblem,
  aim: BlendAim,
  masses: readonly number[],
  reached: readonly AimMultipliers[],
): ReachedBlend {
  const { targets, supply, offsets, prices } = problem;
  const scales = missScales(targets);
  const delivered: number[] = [];
  const residuals: number[] = [];
  const misses: number[] = [];
  const relativeMisses: number[] = [];
  const pulls: number[] = [];
  const gains = new Array<number>(masses.length).fill(0);
  let squares = 0;
  let largest = 0;
  let nearest = 0;
  let isMet = true;
  for (let i = 0; i < targets.length; i++) {
    const target = targets[i]!;
    const weight = target.weight ?? 1;
    const scale = scales[i]!;
    const row = supply[i]!;
    let sum = offsets?.[i] ?? 0;
    for (let j = 0; j < masses.length; j++) sum += row[j]! * masses[j]!;
    const outside = missOf(sum, bandLow(target), bandHigh(target));
    const isMissed = Math.abs(outside) / scale > MET_TOLERANCE;
    const miss = isMissed ? outside : 0;
    const relative = Math.abs(miss) / scale;
    if (isMissed) isMet = false;
    squares += weight * relative ** 2;
    largest = Math.max(largest, weight * relative);
    const pull = pullOf(aim, reached, i, (2 * weight * miss) / scale ** 2);
    if (pull !== 0) for (let j = 0; j < masses.length; j++) gains[j]! += pull * row[j]!;
    // A row that must be missed has nothing left to choose.
    if (!isMissed) nearest += weight * (missOf(sum, idealLow(target), idealHigh(target)) / scale) ** 2;
    delivered.push(sum);
    residuals.push(sum - target.wanted);
    misses.push(miss);
    relativeMisses.push(relative);
    pulls.push(pull);
  }
  const cost = prices?.reduce((sum, price, j) => sum + price * masses[j]!, 0);
  return {
    status: isMet ? "met" : "closest",
    masses,
    delivered,
    residuals,
    misses,
    relativeMisses,
    objective: aim.miss === "squares" ? squares : largest,
    ...(cost === undefined ? {} : { cost }),
    pulls,
    gains,
    binding: bindingLimits(problem, masses, gains, isMet ? undefined : reached[0]),
    aim,
    certificate: { proofs: withValues(reached, isMet, { squares, largest, nearest, cost: cost ?? 0 }) },
  };
}

/** The proofs that are needed, with the answer's own values: the board's differ from them by rounding. */
function withValues(
  reached: readonly AimMultipliers[],
  isMet: boolean,
  values: Readonly<Record<AimProof["aim"], number>>,
): AimProof[] {
  const proofs: AimProof[] = [];
  for (const proof of reached) {
    // What is met needs no proof.
    if (isMet && (proof.aim === "largest" || proof.aim === "squares")) continue;
    const { aim, targets, ceilings, total } = proof;
    proofs.push({ aim, targets, ceilings, total, value: values[aim] });
  }
  return proofs;
}

/** With least squares every missed row pulls by its own miss; with the largest miss only the rows that share it do. */
function pullOf(aim: BlendAim, proofs: readonly AimMultipliers[], i: number, bySquares: number): number {
  if (aim.miss === "squares") return bySquares;
  return proofs[0]?.aim === "largest" ? -proofs[0].targets[i]! : 0;
}

/** An effect smaller than this, relative to the product's terms, is rounding. */
const BINDING_TOLERANCE = 1e-9;

function bindingLimits(
  problem: BlendProblem,
  masses: readonly number[],
  gains: readonly number[],
  proof: AimMultipliers | undefined,
): BindingLimit[] {
  const binding: BindingLimit[] = [];
  if (!proof) return binding;
  proof.ceilings.forEach((effect, index) => {
    if (effect !== 0) binding.push({ kind: "ceiling", index, effect });
  });
  if (proof.total !== 0) binding.push({ kind: "total", index: 0, effect: proof.total });
  masses.forEach((mass, index) => {
    // A product's own limit holds back what the rows do not account for.
    let effect = gains[index]! - proof.total;
    let size = Math.abs(gains[index]!) + Math.abs(proof.total);
    proof.ceilings.forEach((multiplier, r) => {
      const share = multiplier * problem.ceilings![r]!.coefficients[index]!;
      effect -= share;
      size += Math.abs(share);
    });
    if (Math.abs(effect) <= BINDING_TOLERANCE * size) return;
    if (effect < 0 && mass === (problem.upper?.[index] ?? Number.POSITIVE_INFINITY)) {
      binding.push({ kind: "upper", index, effect });
    }
    if (effect > 0 && mass > 0 && mass === problem.lower?.[index]) binding.push({ kind: "lower", index, effect });
  });
  return binding;
}
