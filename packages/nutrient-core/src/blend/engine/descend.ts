import { answerNoise, answersTo, type Dials, exchange, follow, isSure, isUnclear, swap } from "./dials.ts";

/*
 * Tolerances. Every program is scaled before it comes here (scaling.ts): products so that one unit alone would move
 * the fit by 1, rows so that their largest coefficient is 1. So these are relative figures.
 */
/** A held dial whose price is smaller than this is not worth moving: about 5,000 rounding errors. */
export const PRICE_TOLERANCE = 1e-12;
/** A pivot that kept fewer digits than this leaves a table that should be made anew. */
export const POOR_PIVOT = 1e-9;
/** Moves per dial after which something is wrong. */
const MOST_MOVES = 100;
/** Two moves that differ by less end together. */
const TIE_LENGTH = 1e-14;
/** A move shorter than this gets nowhere. */
const STALL_LENGTH = 1e-12;

/** Where a move ends: after `length`, with the dial `stop` (it may be the moving one itself) at the `end` of its range. */
export interface Move {
  readonly stop: number;
  readonly length: number;
  readonly end: number;
}

/**
 * Moves the held dials downhill, one at a time, until every price is right: an amount at its low end may only be
 * dear (price >= 0), at its high end only cheap (price <= 0), in between only 0. For a convex program these are the
 * conditions of optimality (Karush, Kuhn and Tucker), so where this ends is a global optimum.
 * The start must be feasible; every later point then is.
 *
 * Returns `still` where there was nothing to move, `settled` where all prices are right now, and `worn` where the table
 * has lost digits to a poor pivot, or shows a direction without end (there is none: misses and money have a floor), so
 * that the caller should make it anew and go on.
 */
export function descend(dials: Dials): "still" | "settled" | "worn" {
  const { size, cells, value, price, held } = dials;
  let moves = 0;
  let stalls = 0;
  let isLeastIndex = false;
  const patience = Math.max(POOR_PIVOT, 10 * dials.worstPivot);
  for (let entering = chooseEntering(dials, false); entering >= 0; entering = chooseEntering(dials, isLeastIndex)) {
    const own = entering * size + entering;
    while (held[entering] && Math.abs(price[entering]!) > PRICE_TOLERANCE) {
      const direction = -Math.sign(price[entering]!);
      const move = findStop(dials, entering, direction, isLeastIndex);
      if (isUnclear(dials, entering)) return "worn";
      const toBottom = isSure(dials, entering) ? Math.abs(price[entering]!) / cells[own]! : Infinity;
      const step = Math.min(move.length, toBottom);
      if (step === Infinity) return "worn";
      if (++moves > MOST_MOVES * size) throw new Error("blend engine: no end of moves");
      stalls = step > STALL_LENGTH ? 0 : stalls + 1;
      isLeastIndex = stalls > size;
      value[entering]! += direction * step;
      follow(dials, entering, direction * step);
      if (toBottom <= move.length) {
        // The price has come down to 0: from here on the dial is free.
        price[entering] = 0;
        swap(dials, entering);
        break;
      }
      value[move.stop] = move.end;
      if (move.stop === entering) break;
      if (isSure(dials, move.stop)) {
        price[move.stop] = 0;
        swap(dials, move.stop);
      } else {
        // The parked dial hangs on the held rows and the moving dial alone.
        changePlaces(dials, entering, move.stop);
      }
    }
    if (dials.worstPivot > patience) return "worn";
  }
  return moves > 0 ? "settled" : "still";
}

/** Frees the moving dial and holds the parked one: the two change places. */
export function changePlaces(dials: Dials, entering: number, stop: number): void {
  const { price } = dials;
  const left = price[entering]!;
  exchange(dials, entering, stop);
  price[entering] = 0;
  price[stop] = 0;
  follow(dials, entering, -left);
}

/**
 * The held dial with the most to gain. After many moves of length 0 the lowest numbered one instead: the least-index
 * rule cannot run in circles (R. G. Bland, New finite pivoting rules for the simplex method, 1977, from memory).
 */
function chooseEntering(dials: Dials, isLeastIndex: boolean): number {
  const { size, value, price, low, high, held } = dials;
  let best = -1;
  let most = PRICE_TOLERANCE;
  for (let i = 0; i < size; i++) {
    if (!held[i]) continue;
    const gain = Math.abs(price[i]!);
    // Written so that a NaN is passed over.
    if (!(gain > most)) continue;
    if (price[i]! > 0 ? value[i]! <= low[i]! : value[i]! >= high[i]!) continue;
    if (isLeastIndex) return i;
    best = i;
    most = gain;
  }
  return best;
}

/** How far the held dial `entering` may go before a free dial, or it itself, comes to an end of its range. */
export function findStop(dials: Dials, entering: number, direction: number, isLeastIndex: boolean): Move {
  const { size, value, held } = dials;
  const answers = answersTo(dials, entering);
  let stop = entering;
  let end = endAhead(dials, entering, direction);
  let least = Math.abs(end - value[entering]!);
  let strongest = 1;
  for (let i = 0; i < size; i++) {
    if (held[i]) continue;
    const answer = direction * answers[i]!;
    const strength = Math.abs(answer);
    if (strength <= answerNoise(dials, i, entering)) continue;
    const ahead = endAhead(dials, i, answer);
    // What rounding has moved past its end is there.
    const length = Math.max(0, (ahead - value[i]!) / answer);
    // Among equals the strongest answer makes the safest pivot, and the least index the sure end.
    const isTie = Math.abs(length - least) <= TIE_LENGTH;
    if (isTie ? !isLeastIndex && strength > strongest : length < least) {
      stop = i;
      end = ahead;
      least = length;
      strongest = strength;
    }
  }
  return { stop, length: least, end };
}

/** The end of its range that a dial moves towards. */
function endAhead({ low, high }: Dials, i: number, direction: number): number {
  return direction > 0 ? high[i]! : low[i]!;
}
