import { describe, expect, test } from "vitest";
import { answerOf, answersTo, type Dials, exchange, follow, isSure, isUnclear, swap } from "./dials.ts";
import { seeded } from "./testing/random-blends.ts";

/** A board with three amounts, a row without give and one with, all amounts held: | H -G' | over | G give |. */
function board(seed: number): Dials {
  const random = seeded(seed);
  const columns = 3;
  const size = 5;
  const cells = new Float64Array(size * size);
  const fit = Array.from({ length: 4 }, () => Array.from({ length: columns }, () => random()));
  for (const row of fit) {
    row.forEach((a, j) => {
      row.forEach((b, k) => {
        cells[j * size + k]! += a * b;
      });
    });
  }
  for (let r = columns; r < size; r++) {
    for (let j = 0; j < columns; j++) {
      cells[j * size + r] = 0.3 - random();
    }
  }
  cells[size * size - 1] = 1;
  // Places below the diagonal are not kept.
  for (let i = 0; i < size; i++) cells.fill(Number.NaN, i * size, i * size + i);
  return {
    size,
    cells,
    value: new Float64Array(size),
    price: new Float64Array(size),
    low: new Float64Array(size),
    high: new Float64Array(size).fill(9),
    held: Float64Array.from([1, 1, 1, 0, 0]),
    doubt: new Float64Array(size).fill(1e-16),
    answers: new Float64Array(size),
    answersToOther: new Float64Array(size),
    error: new Float64Array(size),
    slopes: new Float64Array(size),
    gradient: new Float64Array(columns),
    sure: 50,
    worstPivot: 0,
    pivots: 0,
  };
}

function expectSame(a: Float64Array, b: Float64Array): void {
  // A handful of operations on numbers near 1, magnified by pivots above 1e-2.
  a.forEach((x, i) => {
    expect(Math.abs(x - b[i]!)).toBeLessThan(1e-11 * Math.max(1, Math.abs(b[i]!)));
  });
}

/** The whole table, as the answer of every output to every input. */
function whole(dials: Dials): number[][] {
  return Array.from({ length: dials.size }, (_, i) =>
    Array.from({ length: dials.size }, (_, j) => answerOf(dials, i, j)),
  );
}

/** The textbook's pivot of a whole table: output k = sum of row k, solved for input k. */
function pivoted(table: readonly (readonly number[])[], k: number): number[][] {
  const own = table[k]![k]!;
  return table.map((row, i) =>
    row.map((cell, j) => {
      if (i === k) return j === k ? 1 / own : -cell / own;
      return j === k ? cell / own : cell - (row[k]! * table[k]![j]!) / own;
    }),
  );
}

function expectTable(dials: Dials, expected: readonly (readonly number[])[]): void {
  expected.forEach((row, i) => {
    expectSame(
      Float64Array.from(row),
      Float64Array.from(row, (_, j) => answerOf(dials, i, j)),
    );
  });
}

describe("the board", () => {
  test("a swap is the pivot of the whole table, and a second one undoes it", () => {
    for (const k of [0, 1, 2, 4]) {
      const dials = board(k);
      const before = whole(dials);
      const wasHeld = dials.held[k];
      swap(dials, k);
      expect(dials.held[k]).toBe(1 - wasHeld!);
      expectTable(dials, pivoted(before, k));
      swap(dials, k);
      expect(dials.held[k]).toBe(wasHeld);
      expectTable(dials, before);
    }
  });

  test("an exchange is the pivots of the one and then of the other, with a hard row and with one that has give", () => {
    for (const e of [0, 1, 2]) {
      for (const k of [3, 4]) {
        for (let seed = 0; seed < 20; seed++) {
          const dials = board(seed);
          const expected = pivoted(pivoted(whole(dials), e), k);
          exchange(dials, e, k);
          expectTable(dials, expected);
          expect([...dials.held]).toEqual([0, 1, 2, 3, 4].map((i) => (i === k || (i < 3 && i !== e) ? 1 : 0)));
        }
      }
    }
  });

  test("keeps its symmetry: equal within a kind, opposite between kinds", () => {
    const dials = board(7);
    let expected = pivoted(whole(dials), 1);
    swap(dials, 1);
    for (const [e, k] of [
      [2, 3],
      [0, 4],
      [3, 1],
    ] as const) {
      expected = pivoted(pivoted(expected, e), k);
      exchange(dials, e, k);
    }
    expectTable(dials, expected);
    expect([...dials.held]).toEqual([0, 1, 0, 0, 1]);
    expected.forEach((row, i) => {
      row.forEach((cell, j) => {
        const mirror = expected[j]![i]! * (dials.held[i] === dials.held[j] ? 1 : -1);
        expect(Math.abs(cell - mirror)).toBeLessThan(1e-11 * Math.max(1, Math.abs(mirror)));
      });
    });
  });

  test("places that are 0 stay out of it", () => {
    const dials = board(8);
    dials.cells[1] = 0;
    dials.cells[4] = 0;
    const expected = pivoted(whole(dials), 0);
    swap(dials, 0);
    expectTable(dials, expected);
    expect(dials.doubt[1]).toBe(1e-16);
    expect(dials.doubt[4]).toBe(1e-16);
  });

  test("the answers to one input are its column", () => {
    const dials = board(9);
    swap(dials, 1);
    for (let k = 0; k < dials.size; k++) {
      const column = [0, 1, 2, 3, 4].map((i) => answerOf(dials, i, k));
      expect([...answersTo(dials, k)]).toEqual(column);
      expect([...answersTo(dials, k, dials.answersToOther)]).toEqual(column);
    }
    expect(answerOf(dials, 3, 1)).toBe(dials.cells[dials.size + 3]);
    expect(answerOf(dials, 3, 2)).toBe(-dials.cells[2 * dials.size + 3]!);
  });

  test("outputs follow an input: values where free, prices where held", () => {
    const dials = board(3);
    swap(dials, 0);
    const [a, b, c, d, e] = whole(dials).map((row) => 2 * row[1]!);
    follow(dials, 1, 2);
    expect([...dials.value]).toEqual([a, 0, 0, d, e]);
    expect([...dials.price]).toEqual([0, b, c, 0, 0]);
  });

  test("doubt grows by the square of what a pivot spreads", () => {
    const dials = board(5);
    const own = dials.cells[0]!;
    const factor = dials.cells[1]! / own;
    swap(dials, 0);
    expect(dials.worstPivot).toBe(1e-16 / own);
    expect(dials.pivots).toBe(1);
    expect(Math.abs(dials.doubt[0]! / (1e-16 / own ** 2) - 1)).toBeLessThan(1e-12);
    expect(Math.abs(dials.doubt[1]! / (1e-16 + factor ** 2 * (1e-16 + 2 ** -53 * own)) - 1)).toBeLessThan(1e-12);
  });

  test("the doubt of an exchange is what the block of the two spreads", () => {
    const dials = board(6);
    const table = whole(dials);
    const [a, u, t, b] = [table[0]![0]!, table[0]![4]!, table[4]![0]!, table[4]![4]!];
    expect(b).toBe(1);
    const determinant = a * b - u * t;
    const rootE = Math.sqrt(1e-16 + 2 ** -53 * a);
    const rootK = Math.sqrt(1e-16 + 2 ** -53 * b);
    const f = (table[1]![0]! * b - table[1]![4]! * t) / determinant;
    const g = (-table[1]![0]! * u + table[1]![4]! * a) / determinant;
    exchange(dials, 0, 4);
    const expectRelative = (actual: number, expected: number): void => {
      expect(Math.abs(actual / expected - 1)).toBeLessThan(1e-9);
    };
    expect(dials.pivots).toBe(1);
    expectRelative(dials.worstPivot, (rootE * rootK) / Math.sqrt(determinant));
    expectRelative(dials.doubt[1]!, 1e-16 + (Math.abs(f) * rootE + Math.abs(g) * rootK) ** 2);
    expectRelative(dials.doubt[0]!, ((b * rootE + Math.abs(u) * rootK) / determinant) ** 2);
    expectRelative(dials.doubt[4]!, ((Math.abs(t) * rootE + a * rootK) / determinant) ** 2);
  });

  test("a cell counts when it is above its doubt; lost in it, only a fresh table may say 0", () => {
    const dials = board(1);
    const own = (k: number, cell: number, doubt: number, pivots: number): [boolean, boolean] => {
      dials.cells[k * dials.size + k] = cell;
      dials.doubt[k] = doubt;
      dials.pivots = pivots;
      return [isSure(dials, k), isUnclear(dials, k)];
    };
    for (const k of [1, 2]) {
      expect(own(k, 1, 1e-16, 3)).toEqual([true, false]);
      expect(own(k, 1e-3, 1e-3, 3)).toEqual([false, true]);
      expect(own(k, -1e-3, 1e-3, 3)).toEqual([false, true]);
      expect(own(k, 1e-3, 1e-3, 0)).toEqual([false, false]);
      expect(own(k, 1e-16, 1e-3, 3)).toEqual([false, false]);
      expect(own(k, 60e-3, 1e-3, 3)).toEqual([true, false]);
      expect(own(k, 40e-3, 1e-3, 3)).toEqual([false, true]);
      // Just 50 times its doubt is not above it; just 50 times the rounding of a 1 is no more than rounding.
      expect(own(k, 50 * 2 ** -10, 2 ** -10, 3)).toEqual([false, true]);
      expect(own(k, 50 * 2 ** -53, 1e-3, 3)).toEqual([false, false]);
    }
  });
});
