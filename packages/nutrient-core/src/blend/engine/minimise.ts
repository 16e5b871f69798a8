import { openBoard, refresh, restate } from "./board.ts";
import { changePlaces, descend } from "./descend.ts";
import { answerNoise, answerOf, type Dials, follow, isSure, swap } from "./dials.ts";
import type { Program } from "./program.ts";

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
  const dials = openBoard(program);
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

/** The held dial that can bring the free dial `k` back by `off` within its own range, and answers most surely. */
function findPartner(dials: Dials, k: number, off: number): number {
  const { size, value, low, high, held } = dials;
  let best = -1;
  let surest = 1;
  for (let e = 0; e < size; e++) {
    if (!held[e]) continue;
    const answer = answerOf(dials, k, e);
    const moved = value[e]! + off / answer;
    const sureness = Math.abs(answer) / answerNoise(dials, k, e);
    if (sureness <= surest || moved < low[e]! || moved > high[e]!) continue;
    best = e;
    surest = sureness;
  }
  return best;
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
