import { answersTo, type Dials } from "./dials.ts";
import { takeFloats } from "./memory.ts";
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
  const { size, held } = dials;
  const slopes = takeFloats(size);
  const points = takeFloats(aim.length);
  const answer = takeFloats(columns);
  const rest = takeFloats(columns);
  rest.set(weights);
  for (let pass = 0; pass < PASSES; pass++) {
    answer.fill(0);
    for (let k = 0; k < columns; k++) {
      if (held[k] || rest[k] === 0) continue;
      const answers = answersTo(dials, k);
      // A held row's price answers to the free amount as that amount's value does to the row, the other way round.
      for (let i = 0; i < columns; i++) if (!held[i]) answer[i]! += answers[i]! * rest[k]!;
      for (let r = columns; r < size; r++) if (held[r]) slopes[r]! -= answers[r]! * rest[k]!;
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
