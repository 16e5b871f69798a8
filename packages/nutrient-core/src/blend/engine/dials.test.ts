import { describe, expect, test } from "vitest";
import { type Dials, exchange, follow, isSure, isUnclear, swap } from "./dials.ts";
import { seeded } from "./testing/random-blends.ts";

/** A board with three amounts and two rows, all amounts held: | H -G' | over | G 0 |. */
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
      cells[r * size + j] = random() - 0.3;
      cells[j * size + r] = -cells[r * size + j]!;
    }
  }
  return {
    size,
    cells,
    value: new Float64Array(size),
    price: new Float64Array(size),
    low: new Float64Array(size),
    high: new Float64Array(size).fill(9),
    held: Uint8Array.from([1, 1, 1, 0, 0]),
    doubt: new Float64Array(size).fill(1e-16),
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

describe("the board", () => {
  test("two swaps of one dial undo each other", () => {
    for (const k of [0, 1, 2]) {
      const dials = board(k);
      const before = dials.cells.slice();
      swap(dials, k);
      expect(dials.held[k]).toBe(0);
      swap(dials, k);
      expect(dials.held[k]).toBe(1);
      expectSame(dials.cells, before);
    }
  });

  test("an exchange is a swap of the one and then of the other", () => {
    for (let seed = 0; seed < 20; seed++) {
      const one = board(seed);
      const two = board(seed);
      swap(one, 0);
      swap(one, 4);
      exchange(two, 0, 4);
      expectSame(two.cells, one.cells);
      expect([...two.held]).toEqual([...one.held]);
    }
  });

  test("keeps its symmetry: equal within a kind, opposite between kinds", () => {
    for (let seed = 0; seed < 20; seed++) {
      const dials = board(seed);
      swap(dials, 1);
      exchange(dials, 2, 3);
      const { size, cells, held } = dials;
      for (let i = 0; i < size; i++) {
        for (let j = 0; j < size; j++) {
          const mirror = cells[j * size + i]! * (held[i] === held[j] ? 1 : -1);
          expect(Math.abs(cells[i * size + j]! - mirror)).toBeLessThan(1e-11 * Math.max(1, Math.abs(mirror)));
        }
      }
    }
  });

  test("outputs follow an input: values where free, prices where held", () => {
    const dials = board(3);
    swap(dials, 0);
    const { size, cells } = dials;
    follow(dials, 1, 2);
    expect([...dials.value]).toEqual([2 * cells[1]!, 0, 0, 2 * cells[3 * size + 1]!, 2 * cells[4 * size + 1]!]);
    expect([...dials.price]).toEqual([0, 2 * cells[size + 1]!, 2 * cells[2 * size + 1]!, 0, 0]);
  });

  test("doubt grows by the square of what a pivot spreads", () => {
    const dials = board(5);
    const own = dials.cells[0]!;
    const factor = dials.cells[dials.size]! / own;
    swap(dials, 0);
    expect(dials.worstPivot).toBe(1e-16 / own);
    expect(dials.pivots).toBe(1);
    expect(Math.abs(dials.doubt[0]! / (1e-16 / own ** 2) - 1)).toBeLessThan(1e-12);
    expect(Math.abs(dials.doubt[1]! / (1e-16 + factor ** 2 * (1e-16 + 2 ** -53 * own)) - 1)).toBeLessThan(1e-12);
  });

  test("the doubt of an exchange is what the block of the two spreads", () => {
    const dials = board(6);
    const { size, cells } = dials;
    const [a, u, t, b] = [cells[0]!, cells[4]!, cells[4 * size]!, cells[4 * size + 4]!];
    const determinant = a * b - u * t;
    const rootE = Math.sqrt(1e-16 + 2 ** -53 * a);
    const rootK = Math.sqrt(1e-16 + 2 ** -53 * b);
    const f = (cells[size]! * b - cells[size + 4]! * t) / determinant;
    const g = (-cells[size]! * u + cells[size + 4]! * a) / determinant;
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
    }
  });
});
