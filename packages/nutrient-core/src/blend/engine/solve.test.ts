import { expect, test } from "vitest";
import { type BlendProblem, solveBlend } from "./index.ts";
import type { ReachedBlend } from "./solution.ts";

function reached(problem: BlendProblem): ReachedBlend {
  const solution = solveBlend(problem);
  if (solution.status === "infeasible") throw new Error("expected an answer");
  return solution;
}

/** A dozen operations on numbers of this size: 1e-11 relative is far above their rounding and far below any error. */
function expectNear(actual: number | undefined, expected: number): void {
  expect(Math.abs(actual! - expected)).toBeLessThan(1e-11 * Math.max(1e-2, Math.abs(expected)));
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

test("ties go to the products named first", () => {
  // Three ways to the same nitrogen: the first is used, up to its stock, then the second.
  const supply = [[10, 10, 10]];
  expect(reached({ supply, targets: [{ wanted: 20 }] }).masses).toEqual([2, 0, 0]);
  const { masses } = reached({ supply, targets: [{ wanted: 20 }], upper: [1.5, Number.POSITIVE_INFINITY, 1] });
  expect(masses[0]).toBe(1.5);
  expect(Math.abs(masses[1]! - 0.5)).toBeLessThan(1e-12);
  expect(masses[2]).toBe(0);
});

test("least cost within the bands, at the edge that is cheapest", () => {
  const { masses, cost, status } = reached({
    supply: [[10, 10]],
    targets: [{ wanted: 20, bandBelow: 2, bandAbove: 5 }],
    prices: [3, 1],
    aim: { miss: "squares", next: "cost" },
  });
  expect(status).toBe("met");
  expect(masses[0]).toBe(0);
  expect(Math.abs(masses[1]! - 1.8)).toBeLessThan(1e-12);
  expect(Math.abs(cost! - 1.8)).toBeLessThan(1e-12);
});

test("nearest within the bands keeps to the wanted amount", () => {
  const { masses } = reached({ supply: [[10]], targets: [{ wanted: 20, bandBelow: 2, bandAbove: 5 }] });
  expect(Math.abs(masses[0]! - 2)).toBeLessThan(1e-12);
});

test("the smallest largest miss shares it out; weights and scales count", () => {
  // One product, targets 1 and 2 per gram: (x - 1) / 1 = (2 - x) / 2 at x = 4/3, a miss of 1/3 each.
  const one = reached({
    supply: [[1], [1]],
    targets: [{ wanted: 1 }, { wanted: 2 }],
    aim: { miss: "largest", next: "nearest" },
  });
  expect(Math.abs(one.masses[0]! - 4 / 3)).toBeLessThan(1e-12);
  expect(Math.abs(one.objective - 1 / 3)).toBeLessThan(1e-12);
  // Weight 3 on the second: (x - 1) = 3 (2 - x) / 2 at x = 1.6. Scale 4 there: (x - 1) = (2 - x) / 4 at x = 1.2.
  const heavy = reached({
    supply: [[1], [1]],
    targets: [{ wanted: 1 }, { wanted: 2, weight: 3 }],
    aim: { miss: "largest", next: "nearest" },
  });
  expect(Math.abs(heavy.masses[0]! - 1.6)).toBeLessThan(1e-12);
  const wide = reached({
    supply: [[1], [1]],
    targets: [{ wanted: 1 }, { wanted: 2, scale: 4 }],
    aim: { miss: "largest", next: "nearest" },
  });
  expect(Math.abs(wide.masses[0]! - 1.2)).toBeLessThan(1e-12);
  expect(one.pulls.map((pull) => Math.sign(pull))).toEqual([1, -1]);
});

test("directions: more than `at-least` and less than `at-most` is no miss", () => {
  const supply = [[1], [1], [1]];
  const { masses, misses, status } = reached({
    supply,
    targets: [{ wanted: 5 }, { wanted: 3, direction: "at-least" }, { wanted: 8, direction: "at-most" }],
  });
  expectNear(masses[0], 5);
  expect(misses).toEqual([0, 0, 0]);
  expect(status).toBe("met");
  const pulled = reached({
    supply,
    targets: [{ wanted: 5 }, { wanted: 10, direction: "at-least" }, { wanted: 4, direction: "at-most" }],
  });
  expect(pulled.status).toBe("closest");
  expect(pulled.misses[1]).toBeLessThan(0);
  expect(pulled.misses[2]).toBeGreaterThan(0);
});

test("what does not mind more gets no more than asked where that costs no other row anything, the first row first", () => {
  // Potassium nitrate, calcium nitrate and potassium sulfate in shares of N, K, Ca and S.
  const supply = [
    [130, 155, 0],
    [370, 0, 450],
    [0, 190, 0],
    [0, 0, 180],
  ];
  const wanting = (k: number, ca: number): BlendProblem => ({
    supply,
    targets: [
      { wanted: 150 },
      { wanted: k, direction: "at-least" },
      { wanted: ca, direction: "at-least" },
      { wanted: 90, direction: "at-most" },
    ],
  });
  for (const [k, ca] of [
    [150, 20],
    [20, 150],
  ] as const) {
    const { delivered, masses, status } = reached(wanting(k, ca));
    expect(status).toBe("met");
    expectNear(delivered[0], 150);
    // Potassium is the earlier row, so it is what was asked, and calcium what comes with the rest of the nitrogen.
    expectNear(delivered[1], k);
    expectNear(delivered[2], (190 * (150 - (130 * k) / 370)) / 155);
    expect(masses[2]).toBe(0);
  }
  // As little of either as the nitrogen allows: the earlier row all the way, down to none.
  expectNear(reached(wanting(0, 0)).delivered[1], 0);
  expectNear(reached(wanting(0, 0)).delivered[2], (190 * 150) / 155);
});

test("what is there already counts, and the report names what holds back", () => {
  const solution = reached({
    supply: [[10, 5]],
    targets: [{ wanted: 50 }],
    offsets: [20],
    upper: [1, Number.POSITIVE_INFINITY],
    ceilings: [{ coefficients: [1, 1], limit: 3 }],
    prices: [2, 4],
  });
  // 20 + 10 * 1 + 5 * 2 = 40, 10 short of 50: relative miss 0.2.
  expectNear(solution.delivered[0], 40);
  expectNear(solution.residuals[0], -10);
  expectNear(solution.relativeMisses[0], 0.2);
  expectNear(solution.objective, 0.04);
  expectNear(solution.cost, 10);
  // d(miss / 50)^2 / d delivered = 2 * -10 / 2500 = -0.008; a gram of the second brings 5 of that.
  expectNear(solution.pulls[0], -0.008);
  expectNear(solution.gains[0], -0.08);
  expectNear(solution.gains[1], -0.04);
  expect(solution.binding.map(({ kind, index }) => [kind, index])).toEqual([
    ["ceiling", 0],
    ["upper", 0],
  ]);
  // One more gram allowed lets 5 more of the second in; one more gram of the first in place of the second also 5.
  expectNear(solution.binding[0]!.effect, -0.04);
  expectNear(solution.binding[1]!.effect, -0.04);
});

test("a batch and least amounts that hold back are named too", () => {
  const solution = reached({ supply: [[10, 0]], targets: [{ wanted: 10 }], lower: [2, 0], total: 2.5 });
  expect(solution.masses[0]).toBe(2);
  expectNear(solution.masses[1], 0.5);
  expect(solution.binding.map(({ kind }) => kind)).toEqual(["lower"]);
  const batch = reached({ supply: [[10, 5]], targets: [{ wanted: 10 }], total: 2.5 });
  expect(batch.masses[0]).toBe(0);
  expectNear(batch.masses[1], 2.5);
  expect(batch.binding.map(({ kind }) => kind)).toEqual(["total"]);
});

test("an error of the program stops at the door", () => {
  const good: BlendProblem = { supply: [[1, 2]], targets: [{ wanted: 1 }] };
  expect(() => solveBlend(good)).not.toThrow();
  const bad: [string, BlendProblem][] = [
    ["no rows", { supply: [], targets: [] }],
    ["no products", { supply: [[]], targets: [{ wanted: 1 }] }],
    ["targets missing", { ...good, targets: [] }],
    ["ragged supply", { supply: [[1, 2], [1]], targets: [{ wanted: 1 }, { wanted: 1 }] }],
    ["supply NaN", { ...good, supply: [[1, Number.NaN]] }],
    ["wanted NaN", { ...good, targets: [{ wanted: Number.NaN }] }],
    ["negative band", { ...good, targets: [{ wanted: 1, bandBelow: -1 }] }],
    ["endless band", { ...good, targets: [{ wanted: 1, bandAbove: Infinity }] }],
    ["weight 0", { ...good, targets: [{ wanted: 1, weight: 0 }] }],
    ["scale 0", { ...good, targets: [{ wanted: 1, scale: 0 }] }],
    ["endless weight", { ...good, targets: [{ wanted: 1, weight: Infinity }] }],
    ["offsets short", { ...good, offsets: [] }],
    ["offsets NaN", { ...good, offsets: [Number.NaN] }],
    ["ceiling short", { ...good, ceilings: [{ coefficients: [1], limit: 1 }] }],
    ["ceiling NaN", { ...good, ceilings: [{ coefficients: [1, Number.NaN], limit: 1 }] }],
    ["limit endless", { ...good, ceilings: [{ coefficients: [1, 1], limit: Infinity }] }],
    ["lower short", { ...good, lower: [0] }],
    ["lower below 0", { ...good, lower: [-1, 0] }],
    ["lower above upper", { ...good, lower: [2, 0], upper: [1, 1] }],
    ["lower endless", { ...good, lower: [Infinity, 0] }],
    ["prices below 0", { ...good, prices: [-1, 0] }],
    ["prices endless", { ...good, prices: [Infinity, 0] }],
    ["smallest below 0", { ...good, smallestIfUsed: [-1, 0] }],
    ["total below 0", { ...good, total: -1 }],
    ["total endless", { ...good, total: Infinity }],
    ["cost without prices", { ...good, aim: { miss: "squares", next: "cost" } }],
  ];
  for (const [name, problem] of bad) expect(() => solveBlend(problem), name).toThrow(RangeError);
});

test("nothing wanted at all is met with nothing", () => {
  expect(reached({ supply: [[1, 2]], targets: [{ wanted: 0 }] })).toMatchObject({ status: "met", masses: [0, 0] });
});

test("where nothing is wanted of a row, its miss is measured by the largest amount that is wanted of any", () => {
  // 10 wanted of the first row, -20 (a difference) of the second: 2 of the third is a tenth of 20.
  const { relativeMisses } = reached({
    supply: [[1], [-2], [0.2]],
    targets: [{ wanted: 10 }, { wanted: -20 }, { wanted: 0 }],
    lower: [10],
    upper: [10],
  });
  expect(relativeMisses.slice(0, 2)).toEqual([0, 0]);
  expectNear(relativeMisses[2], 0.1);
});

test("the aim that nobody names is nearest by squares", () => {
  expect(reached({ supply: [[1]], targets: [{ wanted: 1 }] }).aim).toEqual({ miss: "squares", next: "nearest" });
});
