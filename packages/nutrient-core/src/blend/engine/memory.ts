/*
 * Working memory for one solution. A blend takes a few hundred short vectors, and to make each one its own typed array
 * costs more than the arithmetic done in it (some 300 ns beyond 8 numbers, against a tenth of that for a piece of a
 * block that is there already, and half a tenth for one that was taken before; `bench/run.mjs` shows the sum). So all
 * of them are pieces of one block, handed out in order, and the next solution begins at the front again.
 *
 * That is safe because a solution never starts inside another one, and nothing that `solveBlend` returns lies here:
 * answers and proofs are arrays of their own.
 */

let block = new Float64Array(4096);
let used = 0;

/** The pieces handed out, in their order, and where each begins and ends in this block. */
const pieces: Float64Array[] = [];
const starts: number[] = [];
const ends: number[] = [];
let handedOut = 0;

/** Gives the whole block back. Every piece handed out before is void from here on. */
export function startMemory(): void {
  used = 0;
  handedOut = 0;
}

/** Many blends have no limits, so many vectors have no numbers. */
const NONE = new Float64Array(0);

/** `count` numbers, all 0. */
export function takeFloats(count: number): Float64Array {
  if (count === 0) return NONE;
  if (used + count > block.length) {
    // Pieces of the old block stay good; it goes when the last of them does.
    block = new Float64Array(2 * Math.max(block.length, count));
    used = 0;
    handedOut = 0;
    starts.length = 0;
  }
  const from = used;
  const turn = handedOut++;
  used += count;
  // Blends of one shape, solved one after the other, take the same pieces.
  if (starts[turn] === from && ends[turn] === used) return pieces[turn]!.fill(0);
  const piece = block.subarray(from, used);
  pieces[turn] = piece;
  starts[turn] = from;
  ends[turn] = used;
  return piece.fill(0);
}

/** A copy of its own. */
export function copyFloats(from: Float64Array): Float64Array {
  const piece = takeFloats(from.length);
  piece.set(from);
  return piece;
}
