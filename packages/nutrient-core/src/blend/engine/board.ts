import { answerNoise, answerOf, type Dials, exchange, isSure, ROUNDING, swap } from "./dials.ts";
import { copyFloats, takeFloats } from "./memory.ts";
import type { Program } from "./program.ts";

/** The board of a program at its start: every amount held, every row free but for soft rows that start outside. */
export function openBoard(program: Program): Dials {
  const { columns, low, high, start } = program;
  const size = low.length;
  const value = takeFloats(size);
  value.set(start);
  const dials: Dials = {
    size,
    cells: takeFloats(size * size),
    value,
    price: takeFloats(size),
    low: copyFloats(low),
    high: copyFloats(high),
    held: takeFloats(size).fill(1, 0, columns),
    doubt: takeFloats(size),
    answers: takeFloats(size),
    answersToOther: takeFloats(size),
    error: takeFloats(size),
    slopes: takeFloats(size),
    gradient: takeFloats(columns),
    sure: program.sure,
    worstPivot: 0,
    pivots: 0,
  };
  fillCells(program, dials);
  restate(program, dials);
  let wasSwapped = false;
  for (let r = columns; r < size; r++) {
    // A soft row that starts outside its range aims at the nearest end.
    const end = Math.min(Math.max(value[r]!, low[r]!), high[r]!);
    if (!program.give[r - columns] || end === value[r]!) continue;
    value[r] = end;
    swap(dials, r);
    wasSwapped = true;
  }
  if (wasSwapped) restate(program, dials);
  return dials;
}

/** The table with all amounts held and all rows free, | F'F  -G' |  over  | G  give |, from the diagonal on. */
function fillCells({ columns, fit, aim, rows, give }: Program, dials: Dials): void {
  const { size, cells, doubt } = dials;
  dials.worstPivot = 0;
  dials.pivots = 0;
  doubt.fill(ROUNDING);
  cells.fill(0);
  for (let i = 0, row = 0; i < aim.length; i++, row += columns) {
    // Most products hold few nutrients, so most of what would be added up is 0.
    for (let j = 0; j < columns; j++) {
      const left = fit[row + j]!;
      if (left === 0) continue;
      for (let k = j; k < columns; k++) cells[j * size + k]! += left * fit[row + k]!;
    }
  }
  for (let r = columns; r < size; r++) {
    for (let j = 0; j < columns; j++) {
      const coefficient = rows[(r - columns) * columns + j]!;
      if (coefficient !== 0) cells[j * size + r] = -coefficient;
    }
    cells[r * size + r] = give[r - columns]!;
  }
}

/**
 * Makes the table anew for the dials that are held now, safest pivots first. A dial that turns out to depend on the
 * others (rounding had hidden it) stays as the new table has it: an amount held where it is, a row free.
 */
export function refresh(program: Program, dials: Dials): void {
  const { columns } = program;
  const { size, cells, held, price, doubt } = dials;
  const wanted = copyFloats(held);
  held.fill(1, 0, columns).fill(0, columns);
  fillCells(program, dials);
  for (;;) {
    let best = -1;
    let other = best;
    let surest = 0;
    for (let i = 0; i < size; i++) {
      if (held[i] === wanted[i]) continue;
      const sureness = cells[i * size + i]! / doubt[i]!;
      if (sureness > surest && isSure(dials, i)) {
        surest = sureness;
        best = i;
        other = -1;
      }
      if (!held[i]) continue;
      for (let k = columns; k < size; k++) {
        if (held[k] === wanted[k] || held[k]) continue;
        const answer = Math.abs(answerOf(dials, i, k));
        const pairSureness = answer / Math.sqrt(doubt[i]! * doubt[k]!);
        if (pairSureness > surest && answer > answerNoise(dials, i, k)) {
          surest = pairSureness;
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
  dials.pivots = 0;
}

/**
 * Takes the values of the amounts and the prices of the held rows as they are and computes the rest from the program.
 * What should be exact but is not (the price of a free amount, the activity of a held row) is returned, per dial.
 */
export function restate(program: Program, dials: Dials): Float64Array {
  const { columns, fit, aim, linear, rows, give } = program;
  const { size, value, price, held, error, gradient } = dials;
  error.fill(0);
  gradient.set(linear);
  for (let i = 0, row = 0; i < aim.length; i++, row += columns) {
    let residual = -aim[i]!;
    for (let j = 0; j < columns; j++) residual += fit[row + j]! * value[j]!;
    for (let j = 0; j < columns; j++) gradient[j]! += fit[row + j]! * residual;
  }
  for (let r = columns, row = 0; r < size; r++, row += columns) {
    let activity = 0;
    for (let j = 0; j < columns; j++) activity += rows[row + j]! * value[j]!;
    if (held[r]) {
      if (give[r - columns]) price[r] = value[r]! - activity;
      else error[r] = activity - value[r]!;
      for (let j = 0; j < columns; j++) gradient[j]! -= price[r]! * rows[row + j]!;
    } else value[r] = activity;
  }
  for (let j = 0; j < columns; j++) {
    if (held[j]) price[j] = gradient[j]!;
    else error[j] = gradient[j]!;
  }
  return error;
}
