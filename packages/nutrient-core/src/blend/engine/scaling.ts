import { takeFloats } from "./memory.ts";
import { type BlendProblem, bandHigh, bandLow, idealHigh, idealLow, missScales } from "./problem.ts";

/**
 * The problem in scaled units, so that the tolerances of the engine are relative ones and the answer does not depend
 * on whether the caller counts in grams or tonnes, ppm or percent.
 *
 *   nutrient row i:  scaled = delivered * rowUnit[i],  rowUnit = sqrt(weight / heaviest weight) / scale
 *   product j:       grams  = z * grams[j],            chosen so that z = 1 alone moves the scaled rows by 1
 *   hard row r:      scaled = activity * hardUnit[r],  chosen so that the largest coefficient is 1
 */
export interface ScaledProblem {
  readonly products: number;
  readonly nutrients: number;
  /** Row-major, nutrients * products. */
  readonly supply: Float64Array;
  readonly rowUnit: Float64Array;
  readonly grams: Float64Array;
  /** Heaviest weight; the sum of weighted squared relative misses is this times the sum of squared scaled misses. */
  readonly heaviest: number;
  /** Ranges of the scaled rows, offsets taken off. */
  readonly bandLow: Float64Array;
  readonly bandHigh: Float64Array;
  readonly idealLow: Float64Array;
  readonly idealHigh: Float64Array;
  /** The scaled miss of row i that makes a relative miss of 1, and a weighted relative miss of 1. */
  readonly relativeUnit: Float64Array;
  readonly missUnit: Float64Array;
  /** Ranges of z. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** Ceilings, then the total if there is one. */
  readonly hard: HardRows;
  readonly hardUnit: Float64Array;
  readonly hasTotal: boolean;
  readonly attempt: Attempt;
}

/** A way to set up and read the board; each takes other pivots to the same answer. */
export interface Attempt {
  /** True if the products stand in the reverse of the caller's order. */
  readonly isReversed: boolean;
  /** How many times its doubt a cell must be to count. */
  readonly sure: number;
  /**
   * The rows that give a product its unit: all together; or, as a row far off what is wanted may dwarf the others, those
   * that are minded on both sides, or the row that it moves least.
   */
  readonly units?: "minded" | "least";
  /** By how much of its scale a later aim may move what the misses have left each row; below what is checked. */
  readonly slack?: number;
}

/** Rows that must be kept whatever the misses: low <= rows * z <= high. */
export interface HardRows {
  readonly rows: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

export function scaleProblem(problem: BlendProblem, attempt: Attempt): ScaledProblem {
  const { targets, supply: raw, offsets } = problem;
  const nutrients = targets.length;
  const products = raw[0]!.length;
  const scales = missScales(targets);
  const hardRows = (problem.ceilings?.length ?? 0) + (problem.total === undefined ? 0 : 1);
  let heaviest = 0;
  for (const target of targets) heaviest = Math.max(heaviest, target.weight ?? 1);

  const scaled: ScaledProblem = {
    products,
    nutrients,
    heaviest,
    supply: takeFloats(nutrients * products),
    rowUnit: takeFloats(nutrients),
    grams: takeFloats(products),
    bandLow: takeFloats(nutrients),
    bandHigh: takeFloats(nutrients),
    idealLow: takeFloats(nutrients),
    idealHigh: takeFloats(nutrients),
    relativeUnit: takeFloats(nutrients),
    missUnit: takeFloats(nutrients),
    low: takeFloats(products),
    high: takeFloats(products),
    hard: {
      rows: takeFloats(hardRows * products),
      low: takeFloats(hardRows).fill(Number.NEGATIVE_INFINITY),
      high: takeFloats(hardRows),
    },
    hardUnit: takeFloats(hardRows),
    hasTotal: problem.total !== undefined,
    attempt,
  };
  const { supply, grams } = scaled;
  for (let i = 0; i < nutrients; i++) {
    const target = targets[i]!;
    const weight = target.weight ?? 1;
    const unit = Math.sqrt(weight / heaviest) / scales[i]!;
    const offset = offsets?.[i] ?? 0;
    scaled.rowUnit[i] = unit;
    scaled.relativeUnit[i] = unit * scales[i]!;
    scaled.missUnit[i] = (unit * scales[i]!) / weight;
    scaled.bandLow[i] = (bandLow(target) - offset) * unit;
    scaled.bandHigh[i] = (bandHigh(target) - offset) * unit;
    scaled.idealLow[i] = (idealLow(target) - offset) * unit;
    scaled.idealHigh[i] = (idealHigh(target) - offset) * unit;
    const row = raw[i]!;
    const counts = attempt.units !== "minded" || (target.direction ?? "about") === "about";
    for (let j = 0; j < products; j++) {
      const moved = row[j]! * unit;
      supply[i * products + j] = moved;
      if (attempt.units === "least") grams[j] = leastMoved(grams[j]!, moved * moved);
      else if (counts) grams[j]! += moved * moved;
    }
  }
  for (let j = 0; j < products; j++) {
    grams[j] = grams[j]! > 0 ? 1 / Math.sqrt(grams[j]!) : gramsOfFiller(problem, j);
    for (let i = 0; i < nutrients; i++) supply[i * products + j]! *= grams[j]!;
    scaled.low[j] = (problem.lower?.[j] ?? 0) / grams[j]!;
    scaled.high[j] = (problem.upper?.[j] ?? Number.POSITIVE_INFINITY) / grams[j]!;
  }
  fillHardRows(problem, scaled);
  return scaled;
}

/** The lesser of the two that is not 0. */
function leastMoved(a: number, b: number): number {
  return Math.min(a || b, b || a);
}

/** A product that moves no target (sand in a batch, say) has no natural unit; the batch or its own limits give one. */
function gramsOfFiller(problem: BlendProblem, j: number): number {
  for (const guess of [problem.total, problem.upper?.[j], problem.lower?.[j]]) {
    if (guess && guess < Number.POSITIVE_INFINITY) return guess;
  }
  return 1;
}

function fillHardRows(problem: BlendProblem, scaled: ScaledProblem): void {
  const { products, grams, hard, hardUnit } = scaled;
  for (let r = 0; r < hardUnit.length; r++) {
    const ceiling = problem.ceilings?.[r];
    let largest = 0;
    for (let j = 0; j < products; j++) {
      const coefficient = (ceiling ? ceiling.coefficients[j]! : 1) * grams[j]!;
      hard.rows[r * products + j] = coefficient;
      largest = Math.max(largest, Math.abs(coefficient));
    }
    const unit = 1 / (largest || 1);
    for (let j = 0; j < products; j++) hard.rows[r * products + j]! *= unit;
    hardUnit[r] = unit;
    hard.high[r] = (ceiling ? ceiling.limit : problem.total!) * unit;
    if (!ceiling) hard.low[r] = hard.high[r]!;
  }
}
