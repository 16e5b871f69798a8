import type { Dials } from "./dials.ts";
import { copyFloats, takeFloats } from "./memory.ts";
import { minimise } from "./minimise.ts";
import type { Program } from "./program.ts";
import type { HardRows, ScaledProblem } from "./scaling.ts";

/** Ranges of the scaled nutrient rows that earlier aims have left. */
export interface TargetRanges {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** An optimum of one stage, its board kept for the aims that follow on the face of its optima. */
export interface Stage {
  readonly program: Program;
  readonly dials: Dials;
  /** Board index of the first hard row. */
  readonly firstRow: number;
}

/** `nutrients`: the rows that the sides of bands belong to, in the order of the board's rows after the hard ones. */
export interface LargestStage extends Stage {
  readonly nutrients: readonly number[];
}

/**
 * Least squares onto ranges: makes the sum of squared distances from the scaled rows to [low, high] small. A row that
 * aims at a point is fitted; a row that aims at a range is a soft row, after the hard ones. Rows named in `skip` are
 * left out.
 */
export function fitRanges(
  scaled: ScaledProblem,
  { low, high }: TargetRanges,
  hard: HardRows,
  start: Float64Array,
  skip?: Float64Array,
): Stage {
  const { products, nutrients, supply } = scaled;
  const hardCount = hard.low.length;
  let points = 0;
  let ranges = 0;
  for (let i = 0; i < nutrients; i++) {
    if (skip?.[i]) continue;
    if (low[i]! < high[i]!) ranges++;
    else points++;
  }
  const program = emptyProgram(scaled, products, points, hard, hardCount + ranges, start);
  const { fit, aim, rows, give } = program;
  let point = 0;
  let range = hardCount;
  for (let i = 0; i < nutrients; i++) {
    if (skip?.[i]) continue;
    const row = supply.subarray(i * products, (i + 1) * products);
    if (low[i]! < high[i]!) {
      rows.set(row, range * products);
      give[range] = 1;
      program.low[products + range] = low[i]!;
      program.high[products + range] = high[i]!;
      range++;
    } else {
      fit.set(row, point * products);
      aim[point++] = low[i]!;
    }
  }
  return { program, dials: minimise(program), firstRow: products };
}

/** Least of a weighted sum of the products, within the ranges of the hard rows. */
export function leastSum(scaled: ScaledProblem, weights: Float64Array, hard: HardRows, start: Float64Array): Stage {
  const { products } = scaled;
  const program = emptyProgram(scaled, products, 0, hard, hard.low.length, start);
  program.linear.set(weights);
  return { program, dials: minimise(program), firstRow: products };
}

/**
 * The smallest largest miss: one more column t, with  row + t * missUnit >= bandLow  and  row - t * missUnit <= bandHigh
 * for every row, and t made small.
 */
export function leastLargestMiss(scaled: ScaledProblem, start: Float64Array): LargestStage {
  const { products, nutrients, supply, missUnit, bandLow, bandHigh, hard } = scaled;
  const columns = products + 1;
  const sides: Side[] = [];
  for (let i = 0; i < nutrients; i++) {
    if (bandLow[i]! > Number.NEGATIVE_INFINITY) sides.push({ nutrient: i, sign: 1, edge: bandLow[i]! });
    if (bandHigh[i]! < Number.POSITIVE_INFINITY) sides.push({ nutrient: i, sign: -1, edge: bandHigh[i]! });
  }
  const count = hard.low.length + sides.length;
  const program = emptyProgram(scaled, columns, 0, hard, count, start);
  let worst = 0;
  for (let s = 0; s < sides.length; s++) {
    const { nutrient, sign, edge } = sides[s]!;
    const row = (hard.low.length + s) * columns;
    let activity = 0;
    for (let j = 0; j < products; j++) {
      program.rows[row + j] = supply[nutrient * products + j]!;
      activity += supply[nutrient * products + j]! * start[j]!;
    }
    program.rows[row + products] = sign * missUnit[nutrient]!;
    program.low[columns + hard.low.length + s] = sign === 1 ? edge : Number.NEGATIVE_INFINITY;
    program.high[columns + hard.low.length + s] = sign === 1 ? Number.POSITIVE_INFINITY : edge;
    worst = Math.max(worst, (sign * (edge - activity)) / missUnit[nutrient]!);
  }
  program.linear[products] = 1;
  program.high[products] = Number.POSITIVE_INFINITY;
  program.start[products] = worst;
  return { program, dials: minimise(program), firstRow: columns, nutrients: sides.map(({ nutrient }) => nutrient) };
}

/** One side of one nutrient's band: sign 1 for the lower edge, -1 for the upper. */
interface Side {
  readonly nutrient: number;
  readonly sign: 1 | -1;
  readonly edge: number;
}

/**
 * A point that keeps the hard rows, or the proof that there is none. One more column t carries every broken row to its
 * nearest edge at t = 1; making t small either reaches 0 or ends with multipliers that add up to a contradiction.
 */
export function findFeasible(scaled: ScaledProblem): { point: Float64Array } | { contradiction: Float64Array } {
  const { products, hard } = scaled;
  const start = copyFloats(scaled.low);
  const count = hard.low.length;
  const broken = takeFloats(count);
  let isBroken = false;
  for (let r = 0; r < count; r++) {
    let activity = 0;
    for (let j = 0; j < products; j++) activity += hard.rows[r * products + j]! * start[j]!;
    broken[r] = Math.min(Math.max(activity, hard.low[r]!), hard.high[r]!) - activity;
    if (broken[r] !== 0) isBroken = true;
  }
  if (!isBroken) return { point: start };

  const columns = products + 1;
  const program = emptyProgram(scaled, columns, 0, hard, count, start);
  for (let r = 0; r < count; r++) program.rows[r * columns + products] = broken[r]!;
  program.linear[products] = 1;
  program.high[products] = 1;
  program.start[products] = 1;
  const dials = minimise(program);
  if (dials.value[products]! <= FEASIBLE_TOLERANCE) return { point: dials.value.subarray(0, products) };
  return { contradiction: dials.price.subarray(columns) };
}

/** Hard rows may be broken by this much of their largest coefficient's unit: rounding. */
const FEASIBLE_TOLERANCE = 1e-10;

/** The hard rows and the ranges that earlier aims have left the nutrients, as one set of rows. */
export function withTargets(scaled: ScaledProblem, { low, high }: TargetRanges): HardRows & { nutrients: number[] } {
  const { products, supply, hard } = scaled;
  const nutrients: number[] = [];
  for (let i = 0; i < low.length; i++) if (low[i]! > -Infinity || high[i]! < Infinity) nutrients.push(i);
  const count = hard.low.length;
  const rows = takeFloats((count + nutrients.length) * products);
  const rowLow = takeFloats(count + nutrients.length);
  const rowHigh = takeFloats(count + nutrients.length);
  rows.set(hard.rows);
  rowLow.set(hard.low);
  rowHigh.set(hard.high);
  nutrients.forEach((i, k) => {
    rows.set(supply.subarray(i * products, (i + 1) * products), (count + k) * products);
    rowLow[count + k] = low[i]!;
    rowHigh[count + k] = high[i]!;
  });
  return { rows, low: rowLow, high: rowHigh, nutrients };
}

/**
 * A program over the products, and one more column where `columns` has room for it, with nothing to make small and the hard
 * rows first among `count` rows. The caller fills in the rest.
 */
function emptyProgram(
  scaled: ScaledProblem,
  columns: number,
  points: number,
  hard: HardRows,
  count: number,
  start: Float64Array,
): Program {
  const { products } = scaled;
  const program: Program = {
    columns,
    fit: takeFloats(points * columns),
    aim: takeFloats(points),
    linear: takeFloats(columns),
    rows: takeFloats(count * columns),
    give: takeFloats(count),
    low: takeFloats(columns + count),
    high: takeFloats(columns + count),
    sure: scaled.attempt.sure,
    start: takeFloats(columns),
  };
  for (let r = 0; r < hard.low.length; r++) {
    program.rows.set(hard.rows.subarray(r * products, (r + 1) * products), r * columns);
  }
  program.low.set(scaled.low);
  program.high.set(scaled.high);
  program.start.set(start);
  program.low.set(hard.low, columns);
  program.high.set(hard.high, columns);
  return program;
}
