import type { Dials } from "../dials.ts";

interface Parts {
  /** The table from the diagonal on: row i begins at column i. */
  readonly rows: readonly (readonly number[])[];
  readonly held: readonly number[];
  readonly value?: readonly number[];
  readonly price?: readonly number[];
  readonly low?: readonly number[];
  readonly high?: readonly number[];
  readonly doubt?: number;
  readonly sure?: number;
}

/** A board written down by hand, with numbers that are exact in binary: what happens at the very edge of a rule. */
export function handBoard({ rows, held, value, price, low, high, doubt = 0, sure = 1 }: Parts): Dials {
  const size = rows.length;
  const floats = (of?: readonly number[]): Float64Array => (of ? Float64Array.from(of) : new Float64Array(size));
  const cells = new Float64Array(size * size).fill(Number.NaN);
  rows.forEach((row, i) => {
    cells.set(row, i * size + i);
  });
  return {
    size,
    cells,
    value: floats(value),
    price: floats(price),
    low: floats(low),
    high: high ? floats(high) : floats().fill(Number.POSITIVE_INFINITY),
    held: floats(held),
    doubt: floats().fill(doubt),
    answers: floats(),
    answersToOther: floats(),
    error: floats(),
    slopes: floats(),
    gradient: floats(),
    sure,
    worstPivot: 0,
    pivots: 0,
  };
}
