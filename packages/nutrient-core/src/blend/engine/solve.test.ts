import { expect, test } from "vitest";
import { type BlendProblem, solveBlend } from "./index.ts";
import type { ReachedBlend } from "./solution.ts";

function reached(problem: BlendProblem): ReachedBlend {
  const solution = solveBlend(problem);
  if (solution.status === "infeasible") throw new Error("expected an answer");
  return solution;
}

test("two salts reach two targets exactly", () => {
  // Per litre: 1 g of the first gives 130 N and 370 K, 1 g of the second 155 N (mg/L). Solved by hand:
  // K 185 needs 0.5 g of the first, which brings 65 N; the other 62 N need 0.4 g of the second.
  const { status, masses, misses } = reached({
    supply: [
      [130, 155],
      [370, 0],
    ],
    targets: [{ wanted: 127 }, { wanted: 185 }],
  });
  expect(status).toBe("met");
  expect(Math.abs(masses[0]! - 0.5)).toBeLessThan(1e-12);
  expect(Math.abs(masses[1]! - 0.4)).toBeLessThan(1e-12);
  expect(misses).toEqual([0, 0]);
});

test("what one product cannot do alone is missed fairly", () => {
  // min (x - 1)^2 + (x - 2)^2 / 4 in relative misses of targets 1 and 2: 2 (x - 1) + (x - 2) / 2 = 0, x = 1.2.
  const { status, masses, objective, misses } = reached({
    supply: [[1], [1]],
    targets: [{ wanted: 1 }, { wanted: 2 }],
  });
  expect(status).toBe("closest");
  expect(Math.abs(masses[0]! - 1.2)).toBeLessThan(1e-12);
  expect(Math.abs(objective - (0.04 + 0.16))).toBeLessThan(1e-12);
  expect(Math.abs(misses[0]! - 0.2)).toBeLessThan(1e-12);
  expect(Math.abs(misses[1]! + 0.8)).toBeLessThan(1e-12);
});
