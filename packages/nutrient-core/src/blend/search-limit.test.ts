import { expect, test } from "vitest";
import { solveBlend } from "./engine/index.ts";

/** Half a second of searching, so it stands apart from the tests that every mutant of the engine runs. */
test("a search without end stops and says so, with the best that it has", () => {
  // All or nothing of thirty products that bring 1 each, and 5.5 wanted: every set of 5 or 6 is as good.
  const ones = new Array<number>(30).fill(1);
  const solution = solveBlend({ supply: [ones], targets: [{ wanted: 5.5 }], upper: ones, smallestIfUsed: ones });
  if (solution.status === "infeasible") throw new Error("there is an answer");
  expect(solution.certificate.search).toMatchObject({ explored: 20_000, complete: false });
  expect(Math.abs(solution.objective / (0.5 / 5.5) ** 2 - 1)).toBeLessThan(1e-9);
});
