import { PINNED_PRICE } from "./face.ts";
import { faceMultipliers } from "./face-multipliers.ts";
import type { ScaledProblem } from "./scaling.ts";
import type { AimProof } from "./solution.ts";
import type { FitStage, LargestStage, Side, Stage } from "./stages.ts";

/** A scaled multiplier smaller than this is rounding, and its sign means nothing. */
const NO_MULTIPLIER = 1e-10;

/** Turns the prices of a least-squares board into a proof in raw units; `nutrients` names the rows after the hard ones. */
export function fitProof(
  scaled: ScaledProblem,
  { dials, firstRow }: Stage,
  aim: "squares" | "nearest",
  value: number,
  nutrients: readonly number[],
): AimProof {
  // The board makes half the sum of squares small, and weights relative to the heaviest.
  const unit = 2 * scaled.heaviest;
  return rawProof(scaled, aim, value, unit, dials.price, firstRow, (targets, price) => {
    nutrients.forEach((i, k) => {
      targets[i]! += clean(price[firstRow + scaled.hardUnit.length + k]!) * unit * scaled.rowUnit[i]!;
    });
  });
}

/** The same for the largest miss, whose rows are sides of bands. */
export function largestProof(scaled: ScaledProblem, stage: LargestStage, value: number): AimProof {
  return rawProof(scaled, "largest", value, 1, stage.dials.price, stage.firstRow, (targets, price) =>
    addSides(scaled, stage.sides, targets, price, stage.firstRow, 1),
  );
}

/** Money on the face of the first aim's optima, and the proof of that aim, which the proof of the money leans on. */
export interface Spending {
  /** Money per scaled unit of each product, divided by `unit`. */
  readonly weights: Float64Array;
  readonly unit: number;
  readonly first: AimProof;
  /** The slope of the first aim's value at each nutrient row. */
  readonly pulls: readonly number[];
}

/**
 * The proof of the least cost on the face of the first aim's optima. The multipliers take the face as given; to be
 * checked without the board, they are carried over to the ranges that define the face: where the slope at a pinned dial
 * has the wrong sign, enough of the first aim's own multipliers is added to right it (along the face those add up to
 * nothing, so the sum proves the same value).
 */
export function costProof(scaled: ScaledProblem, stage: FitStage | LargestStage, spending: Spending): AimProof {
  const { program, dials, firstRow } = stage;
  const { weights, unit, first, pulls } = spending;
  const { slopes, points } = faceMultipliers(program, dials, weights);
  let more = 0;
  for (let i = 0; i < dials.size; i++) {
    const price = dials.price[i]!;
    if (!dials.held[i] || Math.abs(price) <= PINNED_PRICE || program.low[i] === program.high[i]) continue;
    if (slopes[i]! * price < 0) more = Math.max(more, -slopes[i]! / price);
  }
  const proof = rawProof(scaled, "cost", 0, unit, slopes, firstRow, (targets) => {
    if ("sides" in stage) addSides(scaled, stage.sides, targets, slopes, firstRow, unit);
    else addFitted(scaled, stage, targets, slopes, points, unit);
  });
  if (more === 0) return proof;
  const share = (more * unit) / ("sides" in stage ? 1 : 2 * scaled.heaviest);
  return {
    ...proof,
    targets: proof.targets.map((m, i) => add(m, share * (first.targets[i]! - pulls[i]!))),
    ceilings: proof.ceilings.map((m, r) => add(m, share * first.ceilings[r]!)),
    total: add(proof.total, share * first.total),
    leans: share,
  };
}

/** Multipliers of the hard rows in raw units, for the proof that they contradict each other. */
export function rawHardRows(scaled: ScaledProblem, prices: Float64Array, firstRow: number, unit: number): number[] {
  return Array.from(scaled.hardUnit, (hardUnit, r) => clean(prices[firstRow + r]!) * unit * hardUnit);
}

function rawProof(
  scaled: ScaledProblem,
  aim: AimProof["aim"],
  value: number,
  unit: number,
  prices: Float64Array,
  firstRow: number,
  addTargets: (targets: number[], prices: Float64Array) => void,
): AimProof {
  const targets = new Array<number>(scaled.nutrients).fill(0);
  addTargets(targets, prices);
  const ceilings = rawHardRows(scaled, prices, firstRow, unit);
  const total = scaled.hasTotal ? ceilings.pop()! : 0;
  return { aim, value, targets, ceilings, total, leans: 0 };
}

function addSides(
  scaled: ScaledProblem,
  sides: readonly Side[],
  targets: number[],
  prices: Float64Array,
  firstRow: number,
  unit: number,
): void {
  sides.forEach(({ nutrient }, s) => {
    const multiplier = clean(prices[firstRow + scaled.hardUnit.length + s]!) * unit * scaled.rowUnit[nutrient]!;
    targets[nutrient] = add(targets[nutrient]!, multiplier);
  });
}

/** A row that aims at a range has its multiplier at that range's dial, a row that aims at a point at that point. */
function addFitted(
  scaled: ScaledProblem,
  { rangeOf }: FitStage,
  targets: number[],
  slopes: Float64Array,
  points: Float64Array,
  unit: number,
): void {
  let point = 0;
  rangeOf.forEach((range, i) => {
    const multiplier = range >= 0 ? slopes[range]! : points[point++]!;
    targets[i]! += clean(multiplier) * unit * scaled.rowUnit[i]!;
  });
}

function clean(multiplier: number): number {
  return Math.abs(multiplier) > NO_MULTIPLIER ? multiplier : 0;
}

/** A sum, 0 where the two cancel. */
function add(a: number, b: number): number {
  const sum = a + b;
  return Math.abs(sum) > NO_MULTIPLIER * (Math.abs(a) + Math.abs(b)) ? sum : 0;
}
