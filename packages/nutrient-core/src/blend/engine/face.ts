import { refresh } from "./board.ts";
import { changePlaces, findStop, POOR_PIVOT } from "./descend.ts";
import { answerNoise, answersTo, type Dials, isSure, swap } from "./dials.ts";
import { polish } from "./minimise.ts";
import type { Program } from "./program.ts";

/*
 * A convex program may have many optima; together they form a face: a flat piece of the feasible set. Ties are settled
 * on that face, on the same board: moves along it are those that change neither what is fitted (own cell 0) nor what
 * has been bought (price 0).
 */

/** A held dial with a larger price than this takes part in no other optimum. */
const PINNED_PRICE = 1e-10;

/** Moves per dial after which only rounding is moving. */
const MOST_MOVES = 50;

/** Reduces the board of an optimum to the face of all optima. */
export function openFace(dials: Dials): void {
  const { size, cells, price, held } = dials;
  for (let i = 0; i < size; i++) if (held[i] && Math.abs(price[i]!) > PINNED_PRICE) pin(dials, i);
  // A dial that rests at an end for no reason is freed, so that the dials still held can only move without loss.
  for (let i = 0; i < size; i++) {
    if (held[i] && !isPinned(dials, i) && isSure(dials, i)) {
      swap(dials, i);
      price[i] = 0;
    }
  }
  // The others move without changing any price, so what the board shows of that is rounding, and only costs time.
  for (let i = 0; i < size; i++) {
    if (!held[i] || isPinned(dials, i)) continue;
    for (let j = 0; j < size; j++) if (held[j]) cells[Math.min(i, j) * size + Math.max(i, j)] = 0;
  }
}

/** True if some dial can still be moved on the face, so that there is more than one optimum. */
export function isOpen(dials: Dials): boolean {
  for (let i = 0; i < dials.size; i++) if (dials.held[i] && !isPinned(dials, i)) return true;
  return false;
}

/**
 * What is left undecided goes, first, to what was asked: a row that does not mind more gets no more than that where
 * others lose nothing by it, the rows in their order. Then to the products named first: the last product is made small,
 * then the one before it, and so on. The answer is then the same every time, and has no more products than the rows that
 * shape it.
 */
export function settleTies(program: Program, dials: Dials, products: number, isReversed: boolean): void {
  for (let dial = program.columns; dial < dials.size && isOpen(dials); dial++) {
    if (mindsOnlyLess(program, dial)) makeSmall(program, dials, dial);
  }
  for (let last = products - 1; last >= 0 && isOpen(dials); last--) {
    makeSmall(program, dials, isReversed ? products - 1 - last : last);
  }
}

/** True for the dial of a soft row whose range has a low end only. */
function mindsOnlyLess({ columns, give, low, high }: Program, dial: number): boolean {
  return give[dial - columns] === 1 && low[dial]! > -Infinity && high[dial] === Infinity;
}

/** Makes one amount, or what a row delivers, small on the face and narrows the face to where it is: the simplex method. */
function makeSmall(program: Program, dials: Dials, amount: number): void {
  const { value, low, held } = dials;
  let patience = POOR_PIVOT;
  // Rounding can keep a face busy without end; where it stopped is an optimum too.
  for (let moves = 0; moves < MOST_MOVES * dials.size; moves++) {
    if (held[amount] && value[amount]! <= low[amount]!) {
      pin(dials, amount);
      return;
    }
    const slopes = slopesOnFace(dials, amount);
    const entering = chooseDownhill(dials, slopes);
    if (entering < 0) {
      for (let i = 0; i < dials.size; i++) if (held[i] && slopes[i] !== 0) pin(dials, i);
      return;
    }
    const direction = -Math.sign(slopes[entering]!);
    // What is made small has a floor, so this ends at it if not before.
    const move = findStop(dials, entering, direction, false);
    value[entering]! += direction * move.length;
    moveFree(dials, entering, direction * move.length);
    value[move.stop] = move.end;
    if (move.stop !== entering) changePlaces(dials, entering, move.stop);
    if (dials.worstPivot > patience) {
      refresh(program, dials);
      polish(program, dials);
      openFace(dials);
      patience = Math.max(POOR_PIVOT, 10 * dials.worstPivot);
    }
  }
}

/** Slopes of one amount at the held dials, 0 where they are only rounding. */
function slopesOnFace(dials: Dials, amount: number): Float64Array {
  const { size, held, slopes } = dials;
  slopes.fill(0);
  if (held[amount]) {
    slopes[amount] = 1;
    return slopes;
  }
  // The value of a free dial answers to a held one as that one's price does to it, the other way round.
  const answers = answersTo(dials, amount);
  for (let i = 0; i < size; i++) {
    if (held[i] && Math.abs(answers[i]!) > answerNoise(dials, i, amount)) slopes[i] = -answers[i]!;
  }
  return slopes;
}

function chooseDownhill(dials: Dials, slopes: Float64Array): number {
  const { size, value, low, high, held } = dials;
  let best = -1;
  let steepest = 0;
  for (let i = 0; i < size; i++) {
    const slope = Math.abs(slopes[i]!);
    if (!held[i] || slope <= steepest) continue;
    if (slopes[i]! > 0 ? value[i]! <= low[i]! : value[i]! >= high[i]!) continue;
    best = i;
    steepest = slope;
  }
  return best;
}

/** On the face prices stay as they are; only the free values follow. */
function moveFree(dials: Dials, input: number, change: number): void {
  const { size, value, held } = dials;
  const answers = answersTo(dials, input);
  for (let i = 0; i < size; i++) if (!held[i]) value[i]! += answers[i]! * change;
}

function pin(dials: Dials, i: number): void {
  dials.low[i] = dials.value[i]!;
  dials.high[i] = dials.value[i]!;
}

function isPinned(dials: Dials, i: number): boolean {
  return dials.low[i]! === dials.high[i]!;
}
