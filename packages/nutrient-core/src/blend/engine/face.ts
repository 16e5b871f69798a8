import { changePlaces, findStop, type Move, POOR_PIVOT, park, STALL_LENGTH } from "./descend.ts";
import { answerNoise, answersTo, type Dials, isSure, swap } from "./dials.ts";
import { faceMultipliers } from "./face-multipliers.ts";
import { takeFloats } from "./memory.ts";
import { type Program, polish, refresh } from "./program.ts";

/*
 * A convex program may have many optima; together they form a face: a flat piece of the feasible set. The next aim in
 * the order is made small on that face, on the same board: moves along it are those that change neither what is
 * fitted (own cell 0) nor what has been bought (price 0).
 */

/** A held dial with a larger price than this takes part in no other optimum. */
export const PINNED_PRICE = 1e-10;

/** A slope smaller than this, refined from the program, is rounding. */
const EXACT_SLOPE = 1e-12;
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
 * Makes `weights`'z small on the face and narrows the face to where it is. This is the simplex method; after
 * many moves of length 0 it goes by least index, so that it always ends.
 */
export function minimiseOnFace(program: Program, dials: Dials, weights: Float64Array, isExact: boolean): void {
  const { value, held } = dials;
  const move: Move = { stop: -1, length: 0 };
  let patience = POOR_PIVOT;
  let stalls = 0;
  for (let moves = 0; ; moves++) {
    // Rounding can keep a face busy without end; where it stopped is an optimum too, and what it lacks the check shows.
    if (moves > MOST_MOVES * dials.size) return;
    let slopes = slopesOnFace(dials, weights);
    const isLeastIndex = stalls > dials.size;
    let entering = chooseDownhill(dials, slopes, isLeastIndex);
    if (entering < 0 && isExact) {
      // What the board cannot tell from rounding, the program can.
      slopes = faceMultipliers(program, dials, weights).slopes;
      for (let i = 0; i < slopes.length; i++) if (Math.abs(slopes[i]!) <= EXACT_SLOPE) slopes[i] = 0;
      entering = chooseDownhill(dials, slopes, isLeastIndex);
    }
    if (entering < 0) {
      for (let i = 0; i < dials.size; i++) if (held[i] && slopes[i] !== 0) pin(dials, i);
      return;
    }
    const direction = slopes[entering]! > 0 ? -1 : 1;
    findStop(dials, entering, direction, isLeastIndex, move);
    stalls = move.length > STALL_LENGTH ? 0 : stalls + 1;
    if (move.length === Infinity) {
      // Money and masses have a floor, so this slope is rounding.
      pin(dials, entering);
      continue;
    }
    value[entering]! += direction * move.length;
    moveFree(dials, entering, direction * move.length);
    park(dials, move.stop, entering, direction);
    if (move.stop !== entering) changePlaces(dials, entering, move.stop);
    if (dials.worstPivot > patience) {
      refresh(program, dials);
      polish(program, dials);
      openFace(dials);
      patience = Math.max(POOR_PIVOT, 10 * dials.worstPivot);
    }
  }
}

/**
 * What is left undecided goes to the products named first: the last product is made small, then the one before it,
 * and so on. The answer is then the same every time, and has no more products than the rows that shape it.
 */
export function settleTies(program: Program, dials: Dials, products: number, isReversed: boolean): void {
  const weights = takeFloats(products);
  for (let last = products - 1; last >= 0 && isOpen(dials); last--) {
    const j = isReversed ? products - 1 - last : last;
    if (dials.held[j] && dials.value[j]! <= dials.low[j]!) {
      // It is as small as it can be.
      pin(dials, j);
      continue;
    }
    weights[j] = 1;
    minimiseOnFace(program, dials, weights, false);
    weights[j] = 0;
  }
}

/** Slopes of the weighted sum at the held dials, 0 where they are only rounding. */
function slopesOnFace(dials: Dials, weights: Float64Array): Float64Array {
  const { size, held, slopes, error: noise } = dials;
  slopes.fill(0);
  noise.fill(0);
  for (let j = 0; j < weights.length; j++) {
    const weight = weights[j]!;
    if (weight === 0) continue;
    if (held[j]) {
      slopes[j]! += weight;
      continue;
    }
    // The value of a free amount answers to a held dial as that dial's price does to it, the other way round.
    const answers = answersTo(dials, j);
    for (let i = 0; i < size; i++) {
      if (!held[i]) continue;
      slopes[i]! -= weight * answers[i]!;
      noise[i]! += Math.abs(weight) * answerNoise(dials, i, j);
    }
  }
  for (let i = 0; i < size; i++) if (Math.abs(slopes[i]!) <= noise[i]!) slopes[i] = 0;
  return slopes;
}

function chooseDownhill(dials: Dials, slopes: Float64Array, isLeastIndex: boolean): number {
  const { size, value, low, high, held } = dials;
  let best = -1;
  let steepest = 0;
  for (let i = 0; i < size; i++) {
    const slope = Math.abs(slopes[i]!);
    if (!held[i] || slope <= steepest) continue;
    if (slopes[i]! > 0 ? value[i]! <= low[i]! : value[i]! >= high[i]!) continue;
    if (isLeastIndex) return i;
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
