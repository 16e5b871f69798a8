import { describe, expect, test } from "vitest";
import { openBoard } from "./board.ts";
import type { Dials } from "./dials.ts";
import { startMemory } from "./memory.ts";
import { minimise, polish, repair } from "./minimise.ts";
import type { Program } from "./program.ts";
import { handBoard } from "./testing/hand-board.ts";

const ALL = Number.POSITIVE_INFINITY;

describe("repair", () => {
  test("holds a free amount at the end that it has passed, and lets the others follow", () => {
    const dials = handBoard({ rows: [[2, -1], [0]], held: [0, 0], value: [-0.5, 3] });
    expect(repair(dials)).toBe(true);
    expect([...dials.held]).toEqual([1, 0]);
    // Moved by 1/2 to 0; the other answers to it with -1/2.
    expect([...dials.value]).toEqual([0, 2.75]);
  });

  test("leaves alone what is outside by rounding, 1e-11, and what is held", () => {
    const dials = handBoard({ rows: [[2, 0], [2]], held: [0, 1], value: [-1e-11, -1] });
    expect(repair(dials)).toBe(false);
    expect([...dials.value]).toEqual([-1e-11, -1]);
    const further = handBoard({ rows: [[2]], held: [0], value: [-2e-11] });
    expect(repair(further)).toBe(true);
    expect([...further.value]).toEqual([0]);
  });

  /** Two held amounts and a row of theirs without give, which is 1 above its most. */
  const row = (answers: readonly [number, number], values: readonly [number, number], doubt = 0): Dials =>
    handBoard({
      rows: [[0, 0, -answers[0]], [0, -answers[1]], [0]],
      held: [1, 1, 0],
      value: [...values, 5],
      high: [9, 9, 4],
      doubt,
    });

  test("brings a row back by the held amount that answers most surely, which becomes free in its place", () => {
    const dials = row([4, 2], [3, 3], 0.5);
    expect(repair(dials)).toBe(true);
    expect([...dials.held]).toEqual([0, 1, 1]);
    expect([...dials.value]).toEqual([2.75, 3, 4]);
    // Of two alike the first.
    const alike = row([2, 2], [3, 3], 0.5);
    expect(repair(alike)).toBe(true);
    expect([...alike.held]).toEqual([0, 1, 1]);
    const second = row([2, 4], [3, 3], 0.5);
    expect(repair(second)).toBe(true);
    expect([...second.held]).toEqual([1, 0, 1]);
    expect([...second.value]).toEqual([3, 2.75, 4]);
  });

  test("an amount may be brought to its very end, but not beyond", () => {
    const toEnd = row([4, 1], [0.25, 3]);
    expect(repair(toEnd)).toBe(true);
    expect([...toEnd.value]).toEqual([0, 3, 4]);
    const beyond = row([4, 1], [0.125, 3], 0.25);
    expect(repair(beyond)).toBe(true);
    expect([...beyond.value]).toEqual([0.125, 2, 4]);
    const atMost = row([-4, 1], [8.75, 0.5]);
    expect(repair(atMost)).toBe(true);
    expect([...atMost.value]).toEqual([9, 0.5, 4]);
    const overMost = row([-4, 1], [8.875, 3], 0.25);
    expect(repair(overMost)).toBe(true);
    expect([...overMost.value]).toEqual([8.875, 2, 4]);
  });

  test("where nothing answers for sure, or may move that far, the row stays", () => {
    // A doubt of 1/2 each makes an answer of 1/2 just rounding.
    for (const dials of [row([0.5, 0.5], [9, 9], 0.5), row([1, 1], [0.5, 0.5])]) {
      const before = [...dials.value];
      expect(repair(dials)).toBe(false);
      expect([...dials.value]).toEqual(before);
    }
  });
});

/** One amount, and a row that is that amount. */
function one(parts: Partial<Program>): Program {
  startMemory();
  const floats = (...of: number[]): Float64Array => Float64Array.from(of);
  return {
    columns: 1,
    fit: floats(),
    aim: floats(),
    linear: floats(0),
    rows: floats(1),
    give: floats(0),
    low: floats(0, 0),
    high: floats(ALL, ALL),
    sure: 10,
    start: floats(0),
    ...parts,
  };
}

describe("polish", () => {
  test("takes rounding off; up to 1e-13 it was not worth noticing", () => {
    for (const [off, isNoticed] of [
      [0, false],
      [1e-13, false],
      [2e-13, true],
    ] as const) {
      const program = one({});
      const dials = openBoard(program);
      // The amount is free and hangs on the row, which is held at 0.
      dials.held.set([0, 1]);
      dials.cells.set([0, 1, Number.NaN, 0]);
      dials.value[0] = off;
      expect(polish(program, dials)).toBe(isNoticed);
      expect(dials.value[0]).toBe(0);
    }
  });
});

describe("a program", () => {
  test("without an end is given up after a hundred rounds", () => {
    let looks = 0;
    const endless = one({ linear: Float64Array.from([-1]) });
    const watched: Program = Object.defineProperty({ ...endless }, "rows", {
      get: () => {
        looks++;
        return endless.rows;
      },
    });
    expect(() => minimise(watched)).toThrow("blend engine: rounding has no end");
    // At the start the table and the values, then in each round the table and the values once more.
    expect(looks).toBe(2 + 100 * 2);
  });

  test("that is at its end from the start needs one look", () => {
    const dials = minimise(one({ linear: Float64Array.from([1]) }));
    expect([...dials.value]).toEqual([0, 0]);
  });
});
