import { PINNED_PRICE } from "./face.ts";
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

/**
 * The proof of the least cost on the face of the first aim's optima. The slopes of the board take the face as given;
 * to be checked without the board, they are carried over to the ranges that define the face: where a pinned dial's
 * slope has the wrong sign, enough of the first aim's own multipliers is added to right it (they are 0 along the face,
 * so the sum proves the same value).
 */
export function costProof(
  scaled: ScaledProblem,
  stage: FitStage | LargestStage,
  first: AimProof | undefined,
  pulls: readonly number[] | undefined,
  slopes: Float64Array,
  weights: Float64Array,
  costUnit: number,
  value: number,
): AimProof {
  const { program, dials, firstRow } = stage;
  let more = 0;
  for (let i = 0; i < dials.size; i++) {
    const price = dials.price[i]!;
    if (!dials.held[i] || Math.abs(price) <= PINNED_PRICE || program.low[i] === program.high[i]) continue;
    if (slopes[i]! * price < 0) {
      more = Math.max(more, -slopes[i]! / price);
    }
  }
  const proof = rawProof(scaled, "cost", value, costUnit, slopes, firstRow, (targets) => {
    if ("sides" in stage) addSides(scaled, stage.sides, targets, slopes, firstRow, costUnit);
    else addFitted(scaled, stage, targets, slopes, weights, costUnit);
  });
  if (more === 0 || !first) return proof;
  const share = (more * costUnit) / ("sides" in stage ? 1 : 2 * scaled.heaviest);
  return {
    ...proof,
    targets: proof.targets.map((m, i) => add(m, share * (first.targets[i]! - (pulls?.[i] ?? 0)))),
    ceilings: proof.ceilings.map((m, r) => add(m, share * first.ceilings[r]!)),
    total: add(proof.total, share * first.total),
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
  return { aim, value, targets, ceilings, total };
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

/**
 * A fitted row keeps its value on the face; its multiplier is what the money would change by if it did not. A row with
 * a range of its own has it as the slope of that range's dial; for the others it is F u, with u the answer of the free
 * amounts to the weights of the free amounts.
 */
function addFitted(
  scaled: ScaledProblem,
  { program, dials, rangeOf }: FitStage,
  targets: number[],
  slopes: Float64Array,
  weights: Float64Array,
  unit: number,
): void {
  const { columns, fit } = program;
  const { size, cells, held } = dials;
  let point = 0;
  const answer = new Float64Array(columns);
  for (let i = 0; i < columns; i++) {
    if (held[i]) continue;
    for (let k = 0; k < weights.length; k++) if (!held[k]) answer[i]! += cells[i * size + k]! * weights[k]!;
  }
  for (let i = 0; i < targets.length; i++) {
    const range = rangeOf[i]!;
    let multiplier = range >= 0 ? slopes[range]! : 0;
    if (range < 0) {
      for (let j = 0; j < columns; j++) multiplier += fit[point * columns + j]! * answer[j]!;
      point++;
    }
    targets[i]! += clean(multiplier) * unit * scaled.rowUnit[i]!;
  }
}

function clean(multiplier: number): number {
  return Math.abs(multiplier) > NO_MULTIPLIER ? multiplier : 0;
}

/** A sum, 0 where the two cancel. */
function add(a: number, b: number): number {
  const sum = a + b;
  return Math.abs(sum) > NO_MULTIPLIER * (Math.abs(a) + Math.abs(b)) ? sum : 0;
}
