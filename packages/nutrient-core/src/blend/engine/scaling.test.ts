import { expect, test } from "vitest";
import { startMemory } from "./memory.ts";
import type { BlendProblem } from "./problem.ts";
import { type Attempt, type ScaledProblem, scaleProblem } from "./scaling.ts";

function scale(problem: BlendProblem, attempt: Partial<Attempt> = {}): ScaledProblem {
  startMemory();
  return scaleProblem(problem, { isReversed: false, sure: 10, ...attempt });
}

test("rows are counted in their own scale and weight, products so that one unit moves them by 1", () => {
  const scaled = scale({
    supply: [
      [3, 0],
      [4, 8],
    ],
    targets: [
      { wanted: 2, weight: 4 },
      { wanted: 8, weight: 1, bandBelow: 2, bandAbove: 4 },
    ],
    offsets: [1, 2],
    lower: [1, 0],
    upper: [2, Number.POSITIVE_INFINITY],
  });
  // sqrt(4 / 4) / 2 and sqrt(1 / 4) / 8.
  expect([...scaled.rowUnit]).toEqual([1 / 2, 1 / 16]);
  expect([...scaled.relativeUnit]).toEqual([1, 1 / 2]);
  expect([...scaled.missUnit]).toEqual([1 / 4, 1 / 2]);
  expect([...scaled.bandLow]).toEqual([1 / 2, 4 / 16]);
  expect([...scaled.bandHigh]).toEqual([1 / 2, 10 / 16]);
  expect([...scaled.idealLow]).toEqual([1 / 2, 6 / 16]);
  expect([...scaled.idealHigh]).toEqual([1 / 2, 6 / 16]);
  const first = 1 / Math.hypot(3 / 2, 4 / 16);
  const near = (actual: Float64Array, expected: readonly number[]): void => {
    expect(actual.length).toBe(expected.length);
    // A square root and a few products.
    expected.forEach((x, k) => {
      expect(Math.abs(actual[k]! - x)).toBeLessThanOrEqual(1e-15 * x);
    });
  };
  near(scaled.grams, [first, 2]);
  near(scaled.supply, [1.5 * first, 0, 0.25 * first, 1]);
  near(scaled.low, [1 / first, 0]);
  near(scaled.high.subarray(0, 1), [2 / first]);
  expect(scaled.high[1]).toBe(Number.POSITIVE_INFINITY);
});

test("rows minded on one side only are left out of a product's unit where that is asked for", () => {
  const problem: BlendProblem = {
    supply: [[1], [1], [1], [1]],
    targets: [
      { wanted: 1 },
      { wanted: 1, direction: "at-least" },
      { wanted: 1, direction: "at-most" },
      { wanted: 1, direction: "about" },
    ],
  };
  expect(scale(problem).grams[0]).toBe(1 / 2);
  expect(scale(problem, { units: "minded" }).grams[0]).toBe(1 / Math.sqrt(2));
});

test("a product may be counted by the row that it moves least, of those that it moves", () => {
  const problem: BlendProblem = { supply: [[8], [0], [2], [4]], targets: [1, 1, 1, 1].map((wanted) => ({ wanted })) };
  expect(scale(problem, { units: "least" }).grams[0]).toBe(1 / 2);
  const first: BlendProblem = { supply: [[0], [2], [8]], targets: [1, 1, 1].map((wanted) => ({ wanted })) };
  expect(scale(first, { units: "least" }).grams[0]).toBe(1 / 2);
  expect(scale({ ...first, supply: [[0], [0], [0]] }, { units: "least" }).grams[0]).toBe(1);
});

test("a product that moves nothing is counted in the batch, in its own most or least, or in grams", () => {
  const unit = (parts: Partial<BlendProblem>): number =>
    scale({ supply: [[0]], targets: [{ wanted: 1 }], ...parts }).grams[0]!;
  expect(unit({ total: 5, upper: [4], lower: [3] })).toBe(5);
  expect(unit({ total: 0, upper: [4], lower: [3] })).toBe(4);
  expect(unit({ upper: [4], lower: [3] })).toBe(4);
  expect(unit({ upper: [Number.POSITIVE_INFINITY], lower: [3] })).toBe(3);
  expect(unit({ upper: [0], lower: [0] })).toBe(1);
  expect(unit({})).toBe(1);
});

test("hard rows are counted so that their largest coefficient is 1; the total is the last of them", () => {
  const scaled = scale({
    supply: [[1, 1]],
    targets: [{ wanted: 1 }],
    ceilings: [
      { coefficients: [-4, 2], limit: 8 },
      { coefficients: [0, 0], limit: 3 },
    ],
    total: 6,
  });
  expect([...scaled.hardUnit]).toEqual([1 / 4, 1, 1]);
  expect([...scaled.hard.rows]).toEqual([-1, 1 / 2, 0, 0, 1, 1]);
  expect([...scaled.hard.low]).toEqual([Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, 6]);
  expect([...scaled.hard.high]).toEqual([2, 3, 6]);
  expect(scaled.hasTotal).toBe(true);
  expect(scale({ supply: [[1]], targets: [{ wanted: 1 }] }).hasTotal).toBe(false);
});
