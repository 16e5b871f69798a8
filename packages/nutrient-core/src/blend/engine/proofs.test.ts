import { expect, test } from "vitest";
import { rowsProof } from "./proofs.ts";
import type { ScaledProblem } from "./scaling.ts";
import type { Stage } from "./stages.ts";

/** A board with one amount, a ceiling, a batch total and the two sides of one nutrient's band. */
function multipliers(lower: number, upper: number): readonly number[] {
  const scaled = {
    nutrients: 2,
    hardUnit: Float64Array.of(2, 4),
    hasTotal: true,
    rowUnit: Float64Array.of(1, 8),
  } as unknown as ScaledProblem;
  const price = Float64Array.of(9, -0.5, 0.25, lower, upper);
  const stage = { dials: { price }, firstRow: 1 } as unknown as Stage;
  const proof = rowsProof(scaled, stage, "largest", 10, [1, 1]);
  expect(proof).toMatchObject({ aim: "largest", ceilings: [-10], total: 10 });
  return proof.targets;
}

test("prices become multipliers in raw units, both sides of a band together", () => {
  expect(multipliers(3e-3, -1e-3)).toEqual([0, 10 * 8 * 3e-3 - 10 * 8 * 1e-3]);
  expect(multipliers(0, -1e-3)).toEqual([0, -0.08]);
});

test("a price of rounding is none, and sides that cancel leave nothing", () => {
  expect(multipliers(1e-13, -1e-13)).toEqual([0, 0]);
  expect(multipliers(1e-3, -1e-3 * (1 - 1e-14))).toEqual([0, 0]);
  expect(multipliers(1e-3, -1e-3 * (1 - 1e-10))[1]).toBeGreaterThan(0);
  expect(multipliers(1e-12, 0)).toEqual([0, 0]);
  expect(multipliers(2e-12, 0)[1]).toBeGreaterThan(0);
  // What cancels is measured by the size of the two, however large.
  expect(multipliers(1e3, -1e3 * (1 - 1e-14))).toEqual([0, 0]);
  expect(multipliers(1e-3, -1e-3 * (1 - 1e-11))[1]).toBeGreaterThan(0);
});
