import { isOpen, minimiseOnFace, openFace, settleTies } from "./face.ts";
import { copyFloats, takeFloats } from "./memory.ts";
import type { BlendAim } from "./problem.ts";
import { missOf } from "./problem.ts";
import { polish, repair } from "./program.ts";
import { costProof, fitProof, largestProof } from "./proofs.ts";
import type { HardRows, ScaledProblem } from "./scaling.ts";
import type { AimProof } from "./solution.ts";
import {
  type FitStage,
  fitRanges,
  type LargestStage,
  leastLargestMiss,
  type Stage,
  type TargetRanges,
  withTargets,
} from "./stages.ts";

/** A scaled miss smaller than this is rounding: the row is met. */
const MET_TOLERANCE = 1e-9;

/** The outcome of the aims, in scaled amounts. */
export interface Reached {
  readonly z: Float64Array;
  readonly proofs: readonly AimProof[];
}

/**
 * Works through the aims in order, from a point that keeps the hard rows: each aim may only choose among the optima of
 * the aims before it, and what is still undecided at the end goes to the products named first.
 */
export function reachAims(
  scaled: ScaledProblem,
  aim: BlendAim,
  feasible: Float64Array,
  prices: readonly number[],
): Reached {
  const proofs: AimProof[] = [];
  const bands: TargetRanges = { low: scaled.bandLow, high: scaled.bandHigh };
  const ideals: TargetRanges = { low: scaled.idealLow, high: scaled.idealHigh };

  let start = feasible;
  let hard: HardRows = scaled.hard;
  let ranges: TargetRanges | undefined;
  let nutrients: number[] = [];
  if (aim.miss === "largest") {
    const stage = leastLargestMiss(scaled, start);
    const largest = stage.dials.value[scaled.products]!;
    const proof = largestProof(scaled, stage, largest);
    if (largest > MET_TOLERANCE) proofs.push(proof);
    if (aim.next === "cost") {
      proofs.push(
        spendLeast(
          scaled,
          stage,
          proof,
          proof.targets.map(() => 0),
          prices,
        ),
      );
      return { z: settle(scaled, stage), proofs };
    }
    ranges = widenRanges(scaled, bands, Math.max(largest, 0));
    ({ nutrients, ...hard } = withTargets(scaled, ranges));
    start = stage.dials.value.subarray(0, scaled.products);
  }

  const isBanded = !sameRanges(bands, ideals);
  if (isBanded && aim.next !== "cost") {
    // The nearest blend to the wanted amounts often meets every band; then there is nothing more to do.
    const stage = fitRanges(scaled, ideals, hard, start);
    if (largestMiss(scaled, stage.dials.value) === 0) {
      proofs.push(fitProof(scaled, stage, "nearest", fitValue(scaled, stage), nutrients));
      return { z: settle(scaled, stage), proofs };
    }
  }

  const stage = fitRanges(scaled, bands, hard, start);
  const isMissed = largestMiss(scaled, stage.dials.value) > 0;
  const proof = fitProof(scaled, stage, "squares", fitValue(scaled, stage), nutrients);
  if (isMissed) proofs.push(proof);
  if (aim.next === "cost") {
    proofs.push(spendLeast(scaled, stage, proof, pullsOf(scaled, stage), prices));
    return { z: settle(scaled, stage), proofs };
  }
  if (!isBanded) return { z: settle(scaled, stage), proofs };

  const z = stage.dials.value.subarray(0, scaled.products);
  const { kept, missed } = keepMisses(scaled, ranges ?? bands, bands, z);
  const { nutrients: keptNutrients, ...keptHard } = withTargets(scaled, kept);
  const last = fitRanges(scaled, ideals, keptHard, z, missed);
  proofs.push(fitProof(scaled, last, "nearest", fitValue(scaled, last), keptNutrients));
  return { z: settle(scaled, last), proofs };
}

/** Least cost among the optima of the stage; narrows its board to them. */
function spendLeast(
  scaled: ScaledProblem,
  stage: FitStage | LargestStage,
  first: AimProof,
  pulls: readonly number[],
  prices: readonly number[],
): AimProof {
  const weights = takeFloats(scaled.products);
  let dearest = 0;
  for (let j = 0; j < weights.length; j++) {
    weights[j] = scaled.grams[j]! * prices[j]!;
    dearest = Math.max(dearest, weights[j]!);
  }
  const unit = dearest || 1;
  for (let j = 0; j < weights.length; j++) weights[j]! /= unit;
  openFace(stage.dials);
  minimiseOnFace(stage.program, stage.dials, weights, true);
  polish(stage.program, stage.dials);
  return costProof(scaled, stage, { weights, unit, first, pulls });
}

/** Settles what is still undecided and reads the amounts off the board. */
function settle(scaled: ScaledProblem, { program, dials }: Stage): Float64Array {
  openFace(dials);
  if (isOpen(dials)) {
    settleTies(program, dials, scaled.products, scaled.isReversed);
    polish(program, dials);
    if (repair(dials)) polish(program, dials);
  }
  const z = dials.value.subarray(0, scaled.products);
  for (let j = 0; j < z.length; j++) z[j] = within(scaled, j, z[j]!);
  return z;
}

/** Scaled amounts this close to an end of their range are that end: nobody weighs the difference. */
const DUST = 1e-13;

/** An amount without the rounding that took it off, or out of, its range. */
function within(scaled: ScaledProblem, j: number, z: number): number {
  if (z <= scaled.low[j]! + DUST) return scaled.low[j]!;
  return z >= scaled.high[j]! - DUST ? scaled.high[j]! : z;
}

/** The sum of squared residuals of a fit, with the caller's weights. */
function fitValue(scaled: ScaledProblem, { program: { columns, fit, aim, give }, dials }: Stage): number {
  let sum = 0;
  for (let r = 0; r < give.length; r++) if (give[r]) sum += dials.price[columns + r]! ** 2;
  for (let i = 0; i < aim.length; i++) {
    let residual = -aim[i]!;
    for (let j = 0; j < columns; j++) residual += fit[i * columns + j]! * dials.value[j]!;
    sum += residual * residual;
  }
  return sum * scaled.heaviest;
}

/** What one more raw unit of each row would change the sum of squares by. */
function pullsOf(scaled: ScaledProblem, { dials }: Stage): number[] {
  return Array.from(scaled.rowUnit, (unit, i) => {
    const miss = missOf(activity(scaled, i, dials.value), scaled.bandLow[i]!, scaled.bandHigh[i]!);
    return Math.abs(miss) > MET_TOLERANCE ? 2 * scaled.heaviest * unit * miss : 0;
  });
}

function activity(scaled: ScaledProblem, i: number, z: Float64Array): number {
  let sum = 0;
  for (let j = 0; j < scaled.products; j++) sum += scaled.supply[i * scaled.products + j]! * z[j]!;
  return sum;
}

/** The largest scaled distance from a band, 0 where it is only rounding. */
function largestMiss(scaled: ScaledProblem, z: Float64Array): number {
  let largest = 0;
  for (let i = 0; i < scaled.nutrients; i++) {
    largest = Math.max(largest, Math.abs(missOf(activity(scaled, i, z), scaled.bandLow[i]!, scaled.bandHigh[i]!)));
  }
  return largest > MET_TOLERANCE ? largest : 0;
}

/** Bands widened by the largest miss that is allowed to every row alike. */
function widenRanges(scaled: ScaledProblem, { low, high }: TargetRanges, miss: number): TargetRanges {
  const wide = { low: copyFloats(low), high: copyFloats(high) };
  for (let i = 0; i < scaled.nutrients; i++) {
    wide.low[i]! -= miss * scaled.missUnit[i]!;
    wide.high[i]! += miss * scaled.missUnit[i]!;
  }
  return wide;
}

/** The ranges that keep the fairest miss: a missed row stays where it is, a met one within its band. */
function keepMisses(
  scaled: ScaledProblem,
  allowed: TargetRanges,
  bands: TargetRanges,
  z: Float64Array,
): { kept: TargetRanges; missed: Uint8Array } {
  const missed = new Uint8Array(scaled.nutrients);
  const kept = { low: copyFloats(allowed.low), high: copyFloats(allowed.high) };
  for (let i = 0; i < scaled.nutrients; i++) {
    const delivered = activity(scaled, i, z);
    const isMissed = Math.abs(missOf(delivered, bands.low[i]!, bands.high[i]!)) > MET_TOLERANCE;
    // A band missed by rounding only is widened by it: no blend may keep all of them to the last digit, and the next
    // aim would heap what is too much on one row.
    kept.low[i] = isMissed ? delivered : Math.min(bands.low[i]!, delivered);
    kept.high[i] = isMissed ? delivered : Math.max(bands.high[i]!, delivered);
    if (isMissed) missed[i] = 1;
  }
  return { kept, missed };
}

function sameRanges(a: TargetRanges, b: TargetRanges): boolean {
  for (let i = 0; i < a.low.length; i++) if (a.low[i] !== b.low[i] || a.high[i] !== b.high[i]) return false;
  return true;
}
