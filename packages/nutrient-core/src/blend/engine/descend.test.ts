import { describe, expect, test } from "vitest";
import { openBoard } from "./board.ts";
import { descend, findStop } from "./descend.ts";
import { startMemory } from "./memory.ts";
import type { Program } from "./program.ts";
import { handBoard } from "./testing/hand-board.ts";
import { seeded } from "./testing/random-blends.ts";

const NONE = Number.NEGATIVE_INFINITY;
const ALL = Number.POSITIVE_INFINITY;

describe("where a move ends", () => {
  /** A held dial that may go from 0 to 1, and a free one beside it that answers with `answer` and may go from 0 to `high`. */
  const pair = (answer: number, high: number, { value = 0, doubt = 0, own = 0 } = {}): ReturnType<typeof handBoard> =>
    handBoard({ rows: [[1, -answer], [0]], held: [1, 0], value: [own, value], high: [1, high], doubt });

  test("at the nearest end, of the moving dial or of one that answers to it, up or down", () => {
    expect(findStop(pair(1, 2), 0, 1, false)).toEqual({ stop: 0, length: 1, end: 1 });
    expect(findStop(pair(4, 2), 0, 1, false)).toEqual({ stop: 1, length: 0.5, end: 2 });
    expect(findStop(pair(-4, 2, { value: 2 }), 0, 1, false)).toEqual({ stop: 1, length: 0.5, end: 0 });
    expect(findStop(pair(4, 2, { value: 2, own: 1 }), 0, -1, false)).toEqual({ stop: 1, length: 0.5, end: 0 });
    expect(findStop(pair(-1, 9, { own: 1 }), 0, -1, false)).toEqual({ stop: 0, length: 1, end: 0 });
    const endless = handBoard({ rows: [[0, -1], [0]], held: [1, 0] });
    expect(findStop(endless, 0, 1, false)).toEqual({ stop: 0, length: ALL, end: ALL });
  });

  test("at once where rounding has left a dial past its end", () => {
    expect(findStop(pair(1, 2, { value: 2.5 }), 0, 1, false)).toEqual({ stop: 1, length: 0, end: 2 });
  });

  test("among equals at the strongest answer, or by the least index at the first; equal is up to 1e-14", () => {
    expect(findStop(pair(2, 2), 0, 1, false).stop).toBe(1);
    expect(findStop(pair(2, 2), 0, 1, true).stop).toBe(0);
    // As strong as the moving dial's own 1 is not stronger.
    expect(findStop(pair(1, 1), 0, 1, false).stop).toBe(0);
    expect(findStop(pair(2, 2e-14, { own: 1 }), 0, 1, false)).toEqual({ stop: 1, length: 1e-14, end: 2e-14 });
    expect(findStop(pair(2, 3e-14, { own: 1 }), 0, 1, false).stop).toBe(0);
  });

  test("not at an answer that may be rounding", () => {
    // A doubt of 1/4 each makes answers up to 1/4 rounding.
    expect(findStop(pair(0.25, 0.125, { doubt: 0.25 }), 0, 1, false).stop).toBe(0);
    expect(findStop(pair(0.5, 0.125, { doubt: 0.25 }), 0, 1, false).stop).toBe(1);
  });
});

describe("the descent", () => {
  test("leaves alone what has nothing to gain: prices up to 1e-12, and dials at the end they would move to", () => {
    const atRest = handBoard({
      rows: [[1, 0, 0], [1, 0], [1]],
      held: [1, 1, 1],
      value: [0, 1, 0.5],
      price: [1, -1, 1e-12],
      high: [1, 1, 1],
    });
    expect(descend(atRest)).toBe("still");
    expect([...atRest.value]).toEqual([0, 1, 0.5]);
    const lost = handBoard({ rows: [[1]], held: [1], price: [Number.NaN] });
    expect(descend(lost)).toBe("still");
  });

  test("frees a dial at the bottom of its price", () => {
    const bowl = handBoard({ rows: [[2]], held: [1], price: [-4] });
    expect(descend(bowl)).toBe("settled");
    expect([bowl.value[0], bowl.price[0], bowl.held[0]]).toEqual([2, 0, 0]);
    // The bottom just at the end of the range is the bottom.
    const edge = handBoard({ rows: [[2]], held: [1], price: [-4], high: [2] });
    expect(descend(edge)).toBe("settled");
    expect([edge.value[0], edge.held[0]]).toEqual([2, 0]);
  });

  test("holds the row it runs into and goes on with the same dial, until its price is 1e-12 or less", () => {
    const rows = (own: number): number[][] => [[own, -1], [1]];
    const parts = { held: [1, 0], low: [0, NONE], high: [10, 1] };
    const rounded = handBoard({ ...parts, rows: rows(1e-12), price: [-2e-12, 0] });
    expect(descend(rounded)).toBe("settled");
    expect([...rounded.value]).toEqual([1, 1]);
    expect([...rounded.held]).toEqual([1, 1]);
    // With more to gain it goes on, past the end of the row, which has give and weighs 1 a unit beyond.
    const heavy = handBoard({ ...parts, rows: rows(1), price: [-3, 0] });
    expect(descend(heavy)).toBe("settled");
    expect([...heavy.value]).toEqual([2, 1]);
    expect([...heavy.held]).toEqual([0, 1]);
  });

  test("says that the table is worn where a direction has no end, a cell is unclear, or a pivot lost its digits", () => {
    const endless = handBoard({ rows: [[0]], held: [1], price: [-1] });
    expect(descend(endless)).toBe("worn");
    expect(endless.value[0]).toBe(0);
    const unclear = handBoard({ rows: [[1]], held: [1], price: [-1], doubt: 2, high: [1] });
    unclear.pivots = 1;
    expect(descend(unclear)).toBe("worn");
    expect(unclear.value[0]).toBe(0);
    const poor = (doubt: number, before = 0): string => {
      const dials = handBoard({ rows: [[1]], held: [1], price: [-1], doubt });
      dials.worstPivot = before;
      return descend(dials);
    };
    expect(poor(1e-9)).toBe("settled");
    expect(poor(2e-9)).toBe("worn");
    // What was poor before is not blamed on this descent.
    expect(poor(2e-9, 1e-9)).toBe("settled");
  });

  test("ends where the numbers make no sense", () => {
    const nonsense = handBoard({ rows: [[0]], held: [1], price: [-1], high: [Number.NaN] });
    expect(() => descend(nonsense)).toThrow("blend engine: no end of moves");
  });

  test("takes the least index after more moves of length 0 than there are dials", () => {
    // Programs of small whole numbers whose rows all meet in the start; the moves are those of the rule.
    const moved = [2524105, 2527962, 2569258].map((seed) => {
      const dials = openBoard(tangle(seed, 15));
      return `${descend(dials)} after ${dials.pivots}`;
    });
    expect(moved).toMatchInlineSnapshot(`
      [
        "settled after 31",
        "settled after 31",
        "worn after 33",
      ]
    `);
  });
});

/** Rows that all pass through the start, in whole numbers, so that nearly every move has length 0. */
function tangle(seed: number, count: number): Program {
  const random = seeded(seed);
  const integer = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
  const none = new Float64Array(0);
  const rows = new Float64Array(count * count).map(() => integer(-1, 1) + (random() < 0.2 ? integer(-1, 1) : 0));
  startMemory();
  return {
    columns: count,
    fit: none,
    aim: none,
    linear: new Float64Array(count).map(() => -integer(1, 9)),
    rows,
    give: new Float64Array(count),
    low: new Float64Array(2 * count).fill(NONE, count),
    high: new Float64Array(2 * count).fill(1, 0, count),
    sure: 10,
    start: new Float64Array(count),
  };
}
