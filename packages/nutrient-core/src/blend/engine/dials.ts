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
  /**
   * size * size, row-major: how output `row` answers to one unit of input `column`. Only the places from the diagonal
   * on (column >= row) are kept; the others follow by the symmetry, see `answerOf`.
   */
  readonly cells: Float64Array;
  readonly value: Float64Array;
  readonly price: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** 1 where held, 0 where free. */
  readonly held: Float64Array;
  /** How far rounding may have moved each dial's own cell by now (a running first-order estimate). */
  readonly doubt: Float64Array;
  /** Scratch, per dial: answers to one input and to another, what refining and what the slopes on a face need. */
  readonly answers: Float64Array;
  readonly answersToOther: Float64Array;
  readonly error: Float64Array;
  readonly slopes: Float64Array;
  /** Scratch, per amount. */
  readonly gradient: Float64Array;
  /** A cell counts as different from 0 when it is this many times its doubt, so that rounding is not taken for an answer. */
  readonly sure: number;
  /** The largest doubt, relative to the cell, of any pivot so far. */
  worstPivot: number;
  /** Pivots since the table was made from the program. */
  pivots: number;
}

/** Half the gap between 1 and the next number. */
export const ROUNDING = 2 ** -53;

/** True if the dial's own cell is more than rounding: for a held dial, that moving it changes what is fitted. */
export function isSure(dials: Dials, k: number): boolean {
  return dials.cells[k * dials.size + k]! > dials.sure * dials.doubt[k]!;
}

/** True if the own cell is lost in its doubt only because of the pivots so far: a table made anew would tell. */
export function isUnclear(dials: Dials, k: number): boolean {
  const own = Math.abs(dials.cells[k * dials.size + k]!);
  return dials.pivots > 0 && own <= dials.sure * dials.doubt[k]! && own > dials.sure * ROUNDING;
}

/** The size below which the answer of dial `i` to dial `k` is only rounding. */
export function answerNoise(dials: Dials, i: number, k: number): number {
  return dials.sure * Math.sqrt(dials.doubt[i]! * dials.doubt[k]!);
}

/** How output `i` answers to one unit of input `k`. */
export function answerOf(dials: Dials, i: number, k: number): number {
  const { size, cells, held } = dials;
  if (i <= k) return cells[i * size + k]!;
  const mirror = cells[k * size + i]!;
  return held[i] === held[k] ? mirror : -mirror;
}

/** How every output answers to one unit of input `k`; void once `into` is used again. */
export function answersTo(dials: Dials, k: number, into: Float64Array = dials.answers): Float64Array {
  const { size, cells, held } = dials;
  const kind = held[k];
  for (let i = 0, at = k; i < k; i++, at += size) into[i] = cells[at]!;
  for (let i = k, at = k * size + k; i < size; i++, at++) into[i] = held[i] === kind ? cells[at]! : -cells[at]!;
  return into;
}

/** Lets every output follow a change of one input, whose answers may be at hand. The input itself is the caller's to set. */
export function follow(dials: Dials, input: number, change: number, answers = answersTo(dials, input)): void {
  const { size, value, price, held } = dials;
  for (let i = 0; i < size; i++) {
    const answer = answers[i]!;
    if (answer === 0) continue;
    if (held[i]) price[i]! += answer * change;
    else value[i]! += answer * change;
  }
}

/*
 * A pivot touches only the places that are filled: most products hold few nutrients, and a linear program has whole
 * blocks of zeros. The lists below are scratch, void between calls: which columns of a row are filled, and with what.
 */
interface Filled {
  places: Int32Array;
  cells: Float64Array;
  count: number;
}

const filledE: Filled = { places: new Int32Array(0), cells: new Float64Array(0), count: 0 };
const filledK: Filled = { places: new Int32Array(0), cells: new Float64Array(0), count: 0 };

/** Lists the row of dial `k`, which mirrors the answers to it. */
function listRow({ size, held }: Dials, k: number, answers: Float64Array, filled: Filled): void {
  if (filled.places.length <= size) {
    filled.places = new Int32Array(2 * size);
    filled.cells = new Float64Array(2 * size);
  }
  const { places, cells } = filled;
  const kind = held[k];
  let count = 0;
  for (let j = 0; j < size; j++) {
    const answer = answers[j]!;
    if (answer === 0) continue;
    places[count] = j;
    cells[count++] = held[j] === kind ? answer : -answer;
  }
  // After the last one, a place that no row comes to.
  places[count] = size;
  filled.count = count;
}

/** Takes `factor` times a listed row off row `i`, from entry `first` of the list on. */
function subtract(dials: Dials, i: number, factor: number, { places, cells, count }: Filled, first: number): void {
  const target = dials.cells;
  const row = i * dials.size;
  for (let at = first; at < count; at++) target[row + places[at]!]! -= factor * cells[at]!;
}

/** Puts the answer of dial `i` to dial `k` in its place, or in the mirrored one. */
function setAnswer(dials: Dials, i: number, k: number, answer: number): void {
  const { size, cells, held } = dials;
  if (i <= k) cells[i * size + k] = answer;
  else cells[k * size + i] = held[i] === held[k] ? answer : -answer;
}

/** Swaps input and output of one dial. Its own cell must not be 0. */
export function swap(dials: Dials, k: number): void {
  const { size, cells, held, doubt } = dials;
  const answers = answersTo(dials, k);
  const own = answers[k]!;
  const inverse = 1 / own;
  const doubtK = doubt[k]!;
  const worse = doubtK + ROUNDING * Math.abs(own);
  dials.pivots++;
  dials.worstPivot = Math.max(dials.worstPivot, doubtK / Math.abs(own));
  answers[k] = 0;
  listRow(dials, k, answers, filledK);
  const { places, count } = filledK;
  held[k] = held[k] ? 0 : 1;
  for (let at = 0; at < count; at++) {
    const i = places[at]!;
    const factor = answers[i]! * inverse;
    doubt[i]! += factor * factor * worse;
    subtract(dials, i, factor, filledK, at);
    setAnswer(dials, i, k, factor);
  }
  cells[k * size + k] = inverse;
  doubt[k] = doubtK * inverse * inverse;
}

/**
 * Frees the held dial `e` and holds the free dial `k` in one step. The 2 x 2 block of the two is
 * | a -t |
 * | t  b |  with a, b >= 0, so its determinant ab + t^2 is safe whenever the two answer to each other at all,
 * also where both own cells are 0 (the exchange of the simplex method).
 */
export function exchange(dials: Dials, e: number, k: number): void {
  const { size, cells, held, doubt } = dials;
  const answersE = answersTo(dials, e);
  const answersK = answersTo(dials, k, dials.answersToOther);
  const a = answersE[e]!;
  const b = answersK[k]!;
  const u = answersK[e]!;
  const t = answersE[k]!;
  const determinant = a * b - u * t;
  const ee = b / determinant;
  const ek = -u / determinant;
  const ke = -t / determinant;
  const kk = a / determinant;
  const rootE = Math.sqrt(doubt[e]! + ROUNDING * Math.abs(a));
  const rootK = Math.sqrt(doubt[k]! + ROUNDING * Math.abs(b));
  dials.pivots++;
  dials.worstPivot = Math.max(dials.worstPivot, (rootE * rootK) / Math.sqrt(Math.abs(determinant)));
  listRow(dials, e, answersE, filledE);
  listRow(dials, k, answersK, filledK);
  held[e] = 0;
  held[k] = 1;
  let firstE = 0;
  let firstK = 0;
  // What this makes of the two themselves is written over at the end.
  for (let i = 0; i < size; i++) {
    while (filledE.places[firstE]! < i) firstE++;
    while (filledK.places[firstK]! < i) firstK++;
    const p = answersE[i]!;
    const q = answersK[i]!;
    if (p === 0 && q === 0) continue;
    const f = p * ee + q * ke;
    const g = p * ek + q * kk;
    doubt[i]! += (Math.abs(f) * rootE + Math.abs(g) * rootK) ** 2;
    if (f !== 0) subtract(dials, i, f, filledE, firstE);
    if (g !== 0) subtract(dials, i, g, filledK, firstK);
    setAnswer(dials, i, e, f);
    setAnswer(dials, i, k, g);
  }
  cells[e * size + e] = ee;
  cells[k * size + k] = kk;
  setAnswer(dials, e, k, ek);
  doubt[e] = (Math.abs(ee) * rootE + Math.abs(ek) * rootK) ** 2;
  doubt[k] = (Math.abs(ke) * rootE + Math.abs(kk) * rootK) ** 2;
}
