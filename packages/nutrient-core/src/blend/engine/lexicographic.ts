import { isOpen, openFace, settleTies } from "./face.ts";
import { copyFloats, takeFloats } from "./memory.ts";
import { polish, repair } from "./minimise.ts";
import { type BlendAim, MET_TOLERANCE, missOf } from "./problem.ts";
import { type AimMultipliers, rowsProof } from "./proofs.ts";
import type { HardRows, ScaledProblem } from "./scaling.ts";
import { fitRanges, leastLargestMiss, leastSum, type Stage, type TargetRanges, withTargets } from "./stages.ts";

/** The outcome of the aims, in scaled amounts. Where nothing is missed, the proofs of the misses are not needed. */
export interface Reached {
  readonly z: Float64Array;
  readonly proofs: readonly AimMultipliers[];
}

/**
 * Works through the aims in order, from a point that keeps the hard rows: each aim may only choose within what the aims
 * before it have left, and what is still undecided at the end goes to the products named first.
 */
export function reachAims(
  scaled: ScaledProblem,
  aim: BlendAim,
  feasible: Float64Array,
  prices: readonly number[] | undefined,
): Reached {
  const proofs: AimMultipliers[] = [];
  // The board makes half the sum of squares small, with weights relative to the heaviest.
  const squaresUnit = 2 * scaled.heaviest;
  const bands: TargetRanges = { low: scaled.bandLow, high: scaled.bandHigh };
  const ideals: TargetRanges = { low: scaled.idealLow, high: scaled.idealHigh };

  let start = feasible;
  let allowed = bands;
  let hard: HardRows = scaled.hard;
  let nutrients: readonly number[] = [];
  if (aim.miss === "largest") {
    const stage = leastLargestMiss(scaled, start);
    const largest = largestMiss(scaled, stage.dials.value);
    proofs.push(rowsProof(scaled, stage, "largest", 1, stage.nutrients));
    start = stage.dials.value.subarray(0, scaled.products);
    allowed = widenRanges(scaled, bands, largest);
    if (aim.next === "cost") {
      const least = spendLeast(scaled, allowed, start, prices!, proofs);
      // What rounding has added to the largest miss may be worth money: it is used in full.
      const used = largestMiss(scaled, least.z);
      if (used <= largest) return least;
      return spendLeast(scaled, widenRanges(scaled, bands, used), least.z, prices!, proofs);
    }
    const within = withTargets(scaled, allowed);
    hard = within;
    nutrients = within.nutrients;
  }

  const isBanded = !sameRanges(bands, ideals);
  if (isBanded && aim.next !== "cost") {
    // The nearest blend to the wanted amounts often meets every band; then there is nothing more to do.
    const stage = fitRanges(scaled, ideals, hard, start);
    if (!isMissed(scaled, stage.dials.value)) {
      proofs.push(rowsProof(scaled, stage, "nearest", squaresUnit, nutrients));
      return { z: settle(scaled, stage), proofs };
    }
  }

  const stage = fitRanges(scaled, bands, hard, start);
  proofs.push(rowsProof(scaled, stage, "squares", squaresUnit, nutrients));
  if (!isBanded && aim.next !== "cost") return { z: settle(scaled, stage), proofs };

  const z = stage.dials.value.subarray(0, scaled.products);
  const { kept, missed } = keepMisses(scaled, allowed, bands, z);
  if (aim.next === "cost") return spendLeast(scaled, kept, z, prices!, proofs);
  const within = withTargets(scaled, kept);
  const last = fitRanges(scaled, ideals, within, z, missed);
  proofs.push(rowsProof(scaled, last, "nearest", squaresUnit, within.nutrients));
  return { z: settle(scaled, last), proofs };
}

/** Least cost within the ranges that the fairest miss has left. */
function spendLeast(
  scaled: ScaledProblem,
  ranges: TargetRanges,
  start: Float64Array,
  prices: readonly number[],
  proofs: readonly AimMultipliers[],
): Reached {
  const weights = takeFloats(scaled.products);
  let dearest = 0;
  for (let j = 0; j < weights.length; j++) {
    weights[j] = scaled.grams[j]! * prices[j]!;
    dearest = Math.max(dearest, weights[j]!);
  }
  const unit = dearest || 1;
  for (let j = 0; j < weights.length; j++) weights[j]! /= unit;
  const within = withTargets(scaled, ranges);
  const stage = leastSum(scaled, weights, within, start);
  const proof = rowsProof(scaled, stage, "cost", unit, within.nutrients);
  return { z: settle(scaled, stage), proofs: [...proofs, proof] };
}

/** Settles what is still undecided and reads the amounts off the board. */
function settle(scaled: ScaledProblem, { program, dials }: Stage): Float64Array {
  openFace(dials);
  if (isOpen(dials)) {
    settleTies(program, dials, scaled.products, scaled.attempt.isReversed);
    polish(program, dials);
    if (repair(dials)) polish(program, dials);
  }
  const z = dials.value.subarray(0, scaled.products);
  for (let j = 0; j < z.length; j++) z[j] = inRange(scaled, j, z[j]!);
  return z;
}

/** Scaled amounts this close to an end of their range are that end: nobody weighs the difference. */
const DUST = 1e-13;

/** An amount without the rounding that took it off, or out of, its range. */
function inRange(scaled: ScaledProblem, j: number, z: number): number {
  if (z <= scaled.low[j]! + DUST) return scaled.low[j]!;
  return z >= scaled.high[j]! - DUST ? scaled.high[j]! : z;
}

function activity(scaled: ScaledProblem, i: number, z: Float64Array): number {
  let sum = 0;
  for (let j = 0; j < scaled.products; j++) sum += scaled.supply[i * scaled.products + j]! * z[j]!;
  return sum;
}

/** True if some row lies further outside its band than rounding explains. */
function isMissed(scaled: ScaledProblem, z: Float64Array): boolean {
  for (let i = 0; i < scaled.nutrients; i++) if (isRowMissed(scaled, i, activity(scaled, i, z))) return true;
  return false;
}

function isRowMissed({ bandLow, bandHigh, relativeUnit }: ScaledProblem, i: number, delivered: number): boolean {
  return Math.abs(missOf(delivered, bandLow[i]!, bandHigh[i]!)) > MET_TOLERANCE * relativeUnit[i]!;
}

/** The largest weighted relative miss at a point itself: the board's own number leaves out what rounding has added. */
function largestMiss(scaled: ScaledProblem, z: Float64Array): number {
  let largest = 0;
  for (let i = 0; i < scaled.nutrients; i++) {
    const miss = missOf(activity(scaled, i, z), scaled.bandLow[i]!, scaled.bandHigh[i]!);
    largest = Math.max(largest, Math.abs(miss) / scaled.missUnit[i]!);
  }
  return largest;
}

/** Bands widened by the largest miss that is allowed to every row alike. */
function widenRanges(scaled: ScaledProblem, { low, high }: TargetRanges, miss: number): TargetRanges {
  const slack = scaled.attempt.slack ?? 0;
  const wide = { low: copyFloats(low), high: copyFloats(high) };
  for (let i = 0; i < scaled.nutrients; i++) {
    wide.low[i]! -= miss * scaled.missUnit[i]! + slack * scaled.relativeUnit[i]!;
    wide.high[i]! += miss * scaled.missUnit[i]! + slack * scaled.relativeUnit[i]!;
  }
  return wide;
}

/** The ranges that keep the fairest miss: a missed row stays where it is, a met one within its band. */
function keepMisses(
  scaled: ScaledProblem,
  allowed: TargetRanges,
  bands: TargetRanges,
  z: Float64Array,
): { kept: TargetRanges; missed: Float64Array } {
  const slack = scaled.attempt.slack ?? 0;
  const missed = takeFloats(scaled.nutrients);
  const kept = { low: copyFloats(allowed.low), high: copyFloats(allowed.high) };
  for (let i = 0; i < scaled.nutrients; i++) {
    const delivered = activity(scaled, i, z);
    const room = slack * scaled.relativeUnit[i]!;
    const isOut = isRowMissed(scaled, i, delivered);
    // A band missed by rounding only is widened by it: no blend may keep all of them to the last digit, and the next
    // aim would heap what is too much on one row.
    kept.low[i] = (isOut ? delivered : Math.min(bands.low[i]!, delivered)) - room;
    kept.high[i] = (isOut ? delivered : Math.max(bands.high[i]!, delivered)) + room;
    if (isOut) missed[i] = 1;
  }
  return { kept, missed };
}

function sameRanges(a: TargetRanges, b: TargetRanges): boolean {
  for (let i = 0; i < a.low.length; i++) if (a.low[i] !== b.low[i] || a.high[i] !== b.high[i]) return false;
  return true;
}
