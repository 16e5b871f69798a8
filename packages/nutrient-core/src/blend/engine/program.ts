import { cellNoise, descend } from "./descend.ts";
import { type Dials, exchange, follow, swap } from "./dials.ts";

/**
 * A convex program in scaled units: make  1/2 |F z - aim|^2 + linear'z  small, with every z and every row activity
 * G z in its range. Either part of the objective may be empty.
 */
export interface Program {
  /** Number of amounts z. */
  readonly columns: number;
  /** F, row-major, one row per entry of `aim`. */
  readonly fit: Float64Array;
  readonly aim: Float64Array;
  /** Empty where there is no linear part. */
  readonly linear: Float64Array;
  /** G, row-major. */
  readonly rows: Float64Array;
  /** Ranges: of the amounts first, then of the row activities. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** A feasible point to start from. */
  readonly start: Float64Array;
}

/** Beyond this the table has lost so many digits that it is made anew. */
const GROWTH_LIMIT = 1e3;
const MOST_ROUNDS = 5;
/** Rounding above this is worth another look at the prices. */
const NOTICEABLE = 1e-13;

/** Sets up the board for a program, every amount held at the start and every row free, and runs it to its optimum. */
export function minimise(program: Program): Dials {
  const dials = open(program);
  // What the moves add up to is computed anew from the program, and the search resumed where rounding had hidden
  // a gain; after a round or two there is nothing left but rounding of the program's own numbers.
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const isSettled = descend(dials);
    if (!isSettled || dials.growth > GROWTH_LIMIT) refresh(program, dials);
    const isNoticeable = polish(program, dials);
    if (isSettled && !isNoticeable) break;
  }
  return dials;
}

function open(program: Program): Dials {
  const { columns, low, high, start } = program;
  const size = low.length;
  const value = new Float64Array(size);
  value.set(start);
  const dials: Dials = {
    size,
    cells: new Float64Array(size * size),
    value,
    price: new Float64Array(size),
    low: low.slice(),
    high: high.slice(),
    held: new Uint8Array(size).fill(1, 0, columns),
    growth: 1,
  };
  fillCells(program, dials.cells);
  restate(program, dials);
  return dials;
}

/** The table with all amounts held and all rows free: | F'F  -G' |  over  | G  0 |. */
function fillCells({ columns, fit, aim, rows, low }: Program, cells: Float64Array): void {
  const size = low.length;
  const filled: number[] = [];
  for (let i = 0; i < aim.length; i++) {
    // Most products hold few nutrients, so F'F is gathered from the filled places of each row.
    const row = i * columns;
    filled.length = 0;
    for (let j = 0; j < columns; j++) if (fit[row + j] !== 0) filled.push(j);
    for (const j of filled) {
      const left = fit[row + j]!;
      for (const k of filled) cells[j * size + k]! += left * fit[row + k]!;
    }
  }
  for (let r = columns; r < size; r++) {
    for (let j = 0; j < columns; j++) {
      const coefficient = rows[(r - columns) * columns + j]!;
      cells[r * size + j] = coefficient;
      cells[j * size + r] = -coefficient;
    }
  }
}

/**
 * Makes the table anew for the dials that are held now, safest pivots first. A dial that turns out to depend on the
 * others (rounding had hidden it) stays as the new table has it: an amount held where it is, a row free.
 */
function refresh(program: Program, dials: Dials): void {
  const { columns } = program;
  const { size, cells, held, price } = dials;
  const wanted = held.slice();
  held.fill(1, 0, columns).fill(0, columns);
  cells.fill(0);
  fillCells(program, cells);
  dials.growth = 1;
  for (;;) {
    let best = -1;
    let other = -1;
    let strongest = cellNoise(dials);
    for (let i = 0; i < size; i++) {
      if (held[i] === wanted[i]) continue;
      if (cells[i * size + i]! > strongest) {
        strongest = cells[i * size + i]!;
        best = i;
        other = -1;
      }
      if (!held[i]) continue;
      for (let k = columns; k < size; k++) {
        if (held[k] === wanted[k] || held[k]) continue;
        if (Math.abs(cells[i * size + k]!) > strongest) {
          strongest = Math.abs(cells[i * size + k]!);
          best = i;
          other = k;
        }
      }
    }
    if (best < 0) break;
    if (other < 0) swap(dials, best);
    else exchange(dials, best, other);
  }
  for (let i = 0; i < size; i++) if (held[i] !== wanted[i]) price[i] = 0;
}

/**
 * Takes the values of the amounts and the prices of the held rows as they are and computes the rest from the program.
 * What should be exact but is not (the price of a free amount, the activity of a held row) is returned, per dial.
 */
function restate(program: Program, dials: Dials): Float64Array {
  const { columns, fit, aim, linear, rows } = program;
  const { size, value, price, held } = dials;
  const error = new Float64Array(size);
  const gradient = new Float64Array(columns);
  if (linear.length > 0) gradient.set(linear);
  for (let i = 0, row = 0; i < aim.length; i++, row += columns) {
    let residual = -aim[i]!;
    for (let j = 0; j < columns; j++) residual += fit[row + j]! * value[j]!;
    for (let j = 0; j < columns; j++) gradient[j]! += fit[row + j]! * residual;
  }
  for (let r = columns, row = 0; r < size; r++, row += columns) {
    let activity = 0;
    for (let j = 0; j < columns; j++) activity += rows[row + j]! * value[j]!;
    if (held[r]) {
      error[r] = activity - value[r]!;
      for (let j = 0; j < columns; j++) gradient[j]! -= price[r]! * rows[row + j]!;
    } else value[r] = activity;
  }
  for (let j = 0; j < columns; j++) {
    if (held[j]) price[j] = gradient[j]!;
    else error[j] = gradient[j]!;
  }
  return error;
}

/** Takes the rounding of many pivots out of the answer (one step of iterative refinement). True if it was noticeable. */
export function polish(program: Program, dials: Dials): boolean {
  const error = restate(program, dials);
  let worst = 0;
  for (let i = 0; i < dials.size; i++) {
    const off = error[i]!;
    if (off === 0) continue;
    worst = Math.max(worst, Math.abs(off));
    follow(dials, i, -off);
  }
  return worst > NOTICEABLE;
}
