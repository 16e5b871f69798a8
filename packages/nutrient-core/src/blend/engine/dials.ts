/**
 * The engine's one mechanism: a board of dials.
 *
 * Every quantity that can be limited is a dial: the amount of each product, and the activity of each hard row
 * (a ceiling, the batch total). A dial has a value, and a price: what one more unit of the value would add to the
 * thing being made small. At any moment a dial is either
 *
 *   held: we set its value, its price follows;        (input: value, output: price)
 *   free: we set its price, to 0, its value follows.  (input: price, output: value)
 *
 * For  min 1/2 x'Hx + c'x,  y = Gx  the conditions of optimality are linear, so outputs are a linear function of
 * inputs. With all amounts held and all rows free that function is written down at once:
 *
 *     price of x =  H x + c - G' (price of y)            | H  -G' |
 *     value of y =  G x                                  | G   0  |
 *
 * and changing one dial between held and free is one pivot of that square table. Linear programming (H = 0) and
 * least squares (H = F'F) are the same mechanism. The table keeps a symmetry: entries between two held or two free
 * dials are equal across the diagonal, entries between a held and a free dial are opposite.
 * (Principal pivoting: R. W. Cottle, J.-S. Pang, R. E. Stone, The Linear Complementarity Problem, SIAM, 2009, ch. 2
 * and 4, from memory.)
 */
export interface Dials {
  readonly size: number;
  /** size * size, row-major: how output `row` answers to one unit of input `column`. */
  readonly cells: Float64Array;
  readonly value: Float64Array;
  readonly price: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** 1 where held, 0 where free. */
  readonly held: Uint8Array;
  /** How far rounding may have moved each dial's own cell by now (a running first-order estimate). */
  readonly doubt: Float64Array;
  /** The largest doubt, relative to the cell, of any pivot so far. */
  worstPivot: number;
  /** Pivots since the table was made from the program. */
  pivots: number;
}

/** Half the gap between 1 and the next number. */
export const ROUNDING = 2 ** -53;
/** A cell counts as different from 0 when it is this many times its doubt, so that rounding is not taken for an answer. */
const SURE = 50;

/** True if the dial's own cell is more than rounding: for a held dial, that moving it changes what is fitted. */
export function isSure(dials: Dials, k: number): boolean {
  return dials.cells[k * dials.size + k]! > SURE * dials.doubt[k]!;
}

/** True if the own cell is lost in its doubt only because of the pivots so far: a table made anew would tell. */
export function isUnclear(dials: Dials, k: number): boolean {
  const own = Math.abs(dials.cells[k * dials.size + k]!);
  return dials.pivots > 0 && own <= SURE * dials.doubt[k]! && own > SURE * ROUNDING;
}

/** The size below which the answer of dial `i` to dial `k` is only rounding. */
export function answerNoise(dials: Dials, i: number, k: number): number {
  return SURE * Math.sqrt(dials.doubt[i]! * dials.doubt[k]!);
}

/** Lets every output follow a change of one input. The input itself is the caller's to set. */
export function follow(dials: Dials, input: number, change: number): void {
  const { size, cells, value, price, held } = dials;
  for (let i = 0, at = input; i < size; i++, at += size) {
    const answer = cells[at]!;
    if (answer === 0) continue;
    if (held[i]) price[i]! += answer * change;
    else value[i]! += answer * change;
  }
}

/** Swaps input and output of one dial. Its own cell must not be 0. */
export function swap(dials: Dials, k: number): void {
  const { size, cells, held, doubt } = dials;
  const own = cells[k * size + k]!;
  const inverse = 1 / own;
  const rowK = k * size;
  const doubtK = doubt[k]!;
  dials.pivots++;
  dials.worstPivot = Math.max(dials.worstPivot, doubtK / Math.abs(own));
  for (let i = 0, row = 0; i < size; i++, row += size) {
    if (i === k) continue;
    const factor = cells[row + k]! * inverse;
    if (factor === 0) continue;
    doubt[i]! += factor * factor * (doubtK + ROUNDING * Math.abs(own));
    for (let j = 0; j < size; j++) cells[row + j]! -= factor * cells[rowK + j]!;
    cells[row + k] = factor;
  }
  for (let j = 0; j < size; j++) cells[rowK + j]! *= -inverse;
  cells[rowK + k] = inverse;
  doubt[k] = doubtK * inverse * inverse;
  held[k] = held[k] ? 0 : 1;
}

/**
 * Frees the held dial `e` and holds the free dial `k` in one step. The 2 x 2 block of the two is
 * | a -t |
 * | t  b |  with a, b >= 0, so its determinant ab + t^2 is safe whenever the two answer to each other at all,
 * also where both own cells are 0 (the exchange of the simplex method).
 */
export function exchange(dials: Dials, e: number, k: number): void {
  const { size, cells, held, doubt } = dials;
  const rowE = e * size;
  const rowK = k * size;
  const a = cells[rowE + e]!;
  const b = cells[rowK + k]!;
  const u = cells[rowE + k]!;
  const t = cells[rowK + e]!;
  const determinant = a * b - u * t;
  const ee = b / determinant;
  const ek = -u / determinant;
  const ke = -t / determinant;
  const kk = a / determinant;
  const rootE = Math.sqrt(doubt[e]! + ROUNDING * Math.abs(a));
  const rootK = Math.sqrt(doubt[k]! + ROUNDING * Math.abs(b));
  dials.pivots++;
  dials.worstPivot = Math.max(dials.worstPivot, (rootE * rootK) / Math.sqrt(Math.abs(determinant)));
  for (let i = 0, row = 0; i < size; i++, row += size) {
    if (i === e || i === k) continue;
    const p = cells[row + e]!;
    const q = cells[row + k]!;
    if (p === 0 && q === 0) continue;
    const f = p * ee + q * ke;
    const g = p * ek + q * kk;
    doubt[i]! += (Math.abs(f) * rootE + Math.abs(g) * rootK) ** 2;
    for (let j = 0; j < size; j++) cells[row + j]! -= f * cells[rowE + j]! + g * cells[rowK + j]!;
    cells[row + e] = f;
    cells[row + k] = g;
  }
  for (let j = 0; j < size; j++) {
    const p = cells[rowE + j]!;
    const q = cells[rowK + j]!;
    cells[rowE + j] = -(ee * p + ek * q);
    cells[rowK + j] = -(ke * p + kk * q);
  }
  cells[rowE + e] = ee;
  cells[rowE + k] = ek;
  cells[rowK + e] = ke;
  cells[rowK + k] = kk;
  doubt[e] = (Math.abs(ee) * rootE + Math.abs(ek) * rootK) ** 2;
  doubt[k] = (Math.abs(ke) * rootE + Math.abs(kk) * rootK) ** 2;
  held[e] = 0;
  held[k] = 1;
}
