import { term } from "../outcome/working.ts";

/** A value read from a table, and how it was read, as an expression. */
export interface Reading {
  readonly value: number;
  readonly expression: string;
}

/** A table with a number at the head of each row and column; both run upwards. */
export interface Grid {
  readonly rows: readonly number[];
  readonly columns: readonly number[];
  /** A list for each row, a value for each column. */
  readonly cells: readonly (readonly number[])[];
}

/**
 * Reads a table at a place on its scale: the printed value, or on the straight line between two of them.
 * Beyond the scale is a bug: what may be asked is settled when the request is read.
 *
 * @param scale The heads, upwards.
 * @param at A place within them.
 * @example
 * along([5, 6], [8, 3], 5.5)  // => { value: 5.5 }
 */
export function along(scale: readonly number[], values: readonly number[], at: number): Reading {
  return between(
    scale,
    values.map((value) => ({ value, expression: term(value) })),
    at,
  );
}

/** Reads a table of two scales, between its rows the readings between its columns. */
export function inGrid({ rows, columns, cells }: Grid, row: number, column: number): Reading {
  return between(
    rows,
    cells.map((values) => along(columns, values, column)),
    row,
  );
}

function between(scale: readonly number[], readings: readonly Reading[], at: number): Reading {
  const printed = scale.indexOf(at);
  if (printed >= 0) return readings[printed]!;
  const upper = scale.findIndex((head) => head > at);
  if (upper <= 0) throw new Error(`${at} lies outside a table from ${scale[0]} to ${scale.at(-1)}`);
  const [from, to] = [scale[upper - 1]!, scale[upper]!];
  const [low, high] = [readings[upper - 1]!, readings[upper]!];
  return {
    value: low.value + ((high.value - low.value) * (at - from)) / (to - from),
    expression: `(${low.expression} + (${high.expression} - ${low.expression}) * (${term(at)} - ${term(from)}) / (${term(to)} - ${term(from)}))`,
  };
}
