import { changePlaces, descend } from "./descend.ts";
import { answerNoise, answerOf, type Dials, exchange, follow, isSure, ROUNDING, swap } from "./dials.ts";
import { copyFloats, takeFloats } from "./memory.ts";

/**
 * A convex program in scaled units. Made small:  1/2 |F z - aim|^2  +  1/2 (distance of soft rows from their ranges)^2
 * +  linear'z;  kept: the range of every z and of every hard row. Any part may be empty.
 *
 * A soft row is a row with give: its dial is the point y of the range that is aimed at, and the residual G z - y is what
 * the price of y answers to. A hard row has no give, its dial is G z itself. So the board's own cell is 1 for a soft row
 * and 0 for a hard one, and nothing else differs.
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
  /** Per row: 1 for a soft row, 0 for a hard one. */
  readonly give: Uint8Array;
  /** Ranges: of the amounts first, then of the rows. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** How many times its doubt a cell must be to count; see `Dials`. */
  readonly sure: number;
  /** A feasible point to start from. */
  readonly start: Float64Array;
}

/** Tables made anew for one program after which something is wrong. */
const MOST_ROUNDS = 100;
/** Rounds in which a broken range is still repaired. */
const MOST_REPAIRS = 20;
/** A free dial may be this far outside its range: rounding. */
const OUTSIDE_TOLERANCE = 1e-11;
/** Refinements after which nothing more is to be gained. */
const MOST_PASSES = 4;
/** Rounding above this is worth another look at the prices. */
const NOTICEABLE = 1e-13;

/** Sets up the board for a program, every amount held at the start and every row free, and runs it to its optimum. */
export function minimise(program: Program): Dials {
  const dials = open(program);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const outcome = descend(dials);
    if (outcome === "still" && round > 0 && !repair(dials)) return dials;
    if (outcome === "worn") refresh(program, dials);
    // Where rounding had hidden a gain, the search goes on from the polished point.
    const wasNoticeable = polish(program, dials);
    const wasBroken = round < MOST_REPAIRS && repair(dials);
    if (!wasNoticeable && !wasBroken && outcome !== "worn") return dials;
  }
  throw new Error("blend engine: rounding has no end");
}

/**
 * Rounding may leave a free dial outside its range once it is computed anew. It is brought back to the end it has passed
 * and held there: on its own where it has give of its own, otherwise by moving the held dial it answers to most, which
 * becomes free in its place. The search then goes on from there. True if there was one.
 */
export function repair(dials: Dials): boolean {
  const { size, value, low, high, held } = dials;
  let wasBroken = false;
  for (let k = 0; k < size; k++) {
    const end = Math.min(Math.max(value[k]!, low[k]!), high[k]!);
    const off = end - value[k]!;
    if (held[k] || Math.abs(off) <= OUTSIDE_TOLERANCE) continue;
    if (isSure(dials, k)) {
      swap(dials, k);
      value[k] = end;
      follow(dials, k, off);
      wasBroken = true;
      continue;
    }
    const partner = findPartner(dials, k, off);
    if (partner < 0) continue;
    const change = off / answerOf(dials, k, partner);
    value[partner]! += change;
    follow(dials, partner, change);
    value[k] = end;
    changePlaces(dials, partner, k);
    wasBroken = true;
  }
  return wasBroken;
}

/**
 * The held dial that can bring the free dial `k` back by `off` within its own range, and answers most surely. It may
 * leave its range by rounding: where rows agree only to the last digit, an amount pays for that digit many times over.
 */
function findPartner(dials: Dials, k: number, off: number): number {
  const { size, value, low, high, held } = dials;
  let best = -1;
  let surest = 1;
  for (let e = 0; e < size; e++) {
    if (!held[e]) continue;
    const answer = answerOf(dials, k, e);
    const moved = value[e]! + off / answer;
    const sureness = Math.abs(answer) / answerNoise(dials, k, e);
    if (sureness <= surest || moved < low[e]! - OUTSIDE_TOLERANCE || moved > high[e]! + OUTSIDE_TOLERANCE) continue;
    best = e;
    surest = sureness;
  }
  return best;
}

function open(program: Program): Dials {
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
    held: new Uint8Array(size).fill(1, 0, columns),
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
  const wanted = held.slice();
  held.fill(1, 0, columns).fill(0, columns);
  fillCells(program, dials);
  for (;;) {
    let best = -1;
    let other = -1;
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
function restate(program: Program, dials: Dials): Float64Array {
  const { columns, fit, aim, linear, rows, give } = program;
  const { size, value, price, held, error, gradient } = dials;
  error.fill(0);
  if (linear.length > 0) gradient.set(linear);
  else gradient.fill(0);
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

/** Takes the rounding of many pivots out of the answer by iterative refinement. True if it was noticeable. */
export function polish(program: Program, dials: Dials): boolean {
  let wasNoticeable = false;
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const error = restate(program, dials);
    let worst = 0;
    for (let i = 0; i < dials.size; i++) {
      const off = error[i]!;
      if (off === 0) continue;
      worst = Math.max(worst, Math.abs(off));
      follow(dials, i, -off);
    }
    if (worst <= NOTICEABLE) break;
    wasNoticeable = true;
  }
  return wasNoticeable;
}
