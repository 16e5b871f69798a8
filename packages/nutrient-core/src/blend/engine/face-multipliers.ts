import type { Dials } from "./dials.ts";
import type { Program } from "./program.ts";

/** What `weights`'z would change by per unit of each held dial's value, and of each point that the fit aims at. */
export interface FaceMultipliers {
  /** Per dial, 0 where free. */
  readonly slopes: Float64Array;
  /** Per row of the fit. */
  readonly points: Float64Array;
}

const PASSES = 3;

/**
 * The multipliers of a weighted sum that is least on a face:  weights = F' points + G' slopes of rows + slopes of
 * amounts, with no slope at a free amount. The board gives them, because it is the inverse of just these equations;
 * each further pass asks it for what the equations still lack, so that its rounding drops out.
 */
export function faceMultipliers(program: Program, dials: Dials, weights: Float64Array): FaceMultipliers {
  const { columns, fit, aim, rows } = program;
  const { size, cells, held } = dials;
  const slopes = new Float64Array(size);
  const points = new Float64Array(aim.length);
  const answer = new Float64Array(columns);
  const rest = new Float64Array(columns);
  rest.set(weights);
  for (let pass = 0; pass < PASSES; pass++) {
    answer.fill(0);
    for (let k = 0; k < columns; k++) {
      if (held[k] || rest[k] === 0) continue;
      for (let i = 0; i < columns; i++) if (!held[i]) answer[i]! += cells[i * size + k]! * rest[k]!;
      for (let r = columns; r < size; r++) if (held[r]) slopes[r]! += rest[k]! * cells[k * size + r]!;
    }
    for (let i = 0; i < aim.length; i++) {
      for (let j = 0; j < columns; j++) points[i]! += fit[i * columns + j]! * answer[j]!;
    }
    rest.fill(0);
    rest.set(weights);
    for (let i = 0; i < aim.length; i++) {
      for (let j = 0; j < columns; j++) rest[j]! -= points[i]! * fit[i * columns + j]!;
    }
    for (let r = columns; r < size; r++) {
      for (let j = 0; j < columns; j++) rest[j]! -= slopes[r]! * rows[(r - columns) * columns + j]!;
    }
  }
  for (let j = 0; j < columns; j++) if (held[j]) slopes[j] = rest[j]!;
  return { slopes, points };
}
