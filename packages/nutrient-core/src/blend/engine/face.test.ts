import { describe, expect, test } from "vitest";
import { isOpen, openFace, settleTies } from "./face.ts";
import type { Program } from "./program.ts";
import { handBoard } from "./testing/hand-board.ts";

/** Only looked at where a table is made anew, which these are not. */
const UNUSED = {} as Program;

describe("the face of all optima", () => {
  test("leaves out the dials that have a price: more than 1e-10", () => {
    const dials = handBoard({ rows: [[0, 0, 0], [0, 0], [0]], held: [1, 1, 0], price: [1e-10, 2e-10, 1] });
    openFace(dials);
    expect([...dials.high]).toEqual([Infinity, 0, Infinity]);
    expect(isOpen(dials)).toBe(true);
    dials.high[0] = 0;
    expect(isOpen(dials)).toBe(false);
  });

  test("frees a dial that rests at an end for no reason", () => {
    const dials = handBoard({ rows: [[4]], held: [1], price: [1e-11] });
    openFace(dials);
    expect([dials.held[0], dials.price[0]]).toEqual([0, 0]);
    expect(isOpen(dials)).toBe(false);
  });
});

describe("ties", () => {
  /** Two amounts, the first held, of which the second is what a row leaves: 4 less `answer` times the first. */
  const shared = (answer: number, doubt = 0): ReturnType<typeof handBoard> =>
    handBoard({ rows: [[0, answer], [0]], held: [1, 0], value: [0, 4], high: [8, 8], doubt });

  test("go to the products named first: the last is made small", () => {
    const dials = shared(1);
    settleTies(UNUSED, dials, 2, false);
    expect([...dials.value]).toEqual([4, 0]);
    // In the reverse order the first of the board is the last of the caller's.
    const reversed = shared(1);
    settleTies(UNUSED, reversed, 2, true);
    expect([...reversed.value]).toEqual([0, 4]);
  });

  test("as far as the range of the other allows", () => {
    const dials = shared(0.25);
    settleTies(UNUSED, dials, 2, false);
    expect([...dials.value]).toEqual([8, 2]);
    const up = shared(-0.25);
    up.value[0] = 4;
    settleTies(UNUSED, up, 2, false);
    expect([...up.value]).toEqual([0, 3]);
  });

  test("an answer that may be rounding moves nothing", () => {
    const dials = shared(0.5, 0.5);
    settleTies(UNUSED, dials, 2, false);
    // The second does not answer to the first, so the first is made small on its own: it is 0 already.
    expect([...dials.value]).toEqual([0, 4]);
  });
});
