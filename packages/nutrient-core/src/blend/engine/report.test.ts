import { describe, expect, test } from "vitest";
import type { BlendProblem } from "./problem.ts";
import { reportBlend } from "./report.ts";
import type { AimProof } from "./solution.ts";

const SQUARES = { miss: "squares", next: "nearest" } as const;
const LARGEST = { miss: "largest", next: "nearest" } as const;

const proof = (over: Partial<AimProof>): AimProof => ({
  aim: "squares",
  value: 1,
  targets: [0],
  ceilings: [],
  total: 0,
  ...over,
});

/** One row, 10 per gram of the first product and 5 of the second, wanted 100. */
const ONE: BlendProblem = { supply: [[10, 5]], targets: [{ wanted: 100 }] };

describe("what counts as met", () => {
  const two: BlendProblem = {
    supply: [[100], [100]],
    targets: [
      { wanted: 100, weight: 100 },
      { wanted: 100, weight: 1 },
    ],
  };
  test("a relative miss of 1e-9 whatever the weight of the row, and no more", () => {
    expect(reportBlend(two, SQUARES, [1 + 5e-10], []).status).toBe("met");
    expect(reportBlend(two, SQUARES, [1 - 5e-10], []).misses).toEqual([0, 0]);
    for (const mass of [1 + 2e-9, 1 - 2e-9]) {
      const { misses, status } = reportBlend(two, SQUARES, [mass], [proof({ targets: [0, 0] })]);
      expect(status).toBe("closest");
      for (const miss of misses) expect(Math.abs(miss / (100 * (mass - 1)) - 1)).toBeLessThan(1e-6);
    }
  });
  test("what is met needs no proof of its miss", () => {
    const proofs = [proof({}), proof({ aim: "nearest" }), proof({ aim: "cost" })];
    expect(reportBlend(ONE, SQUARES, [10, 0], proofs).certificate.proofs.map(({ aim }) => aim)).toEqual([
      "nearest",
      "cost",
    ]);
    expect(reportBlend(ONE, LARGEST, [10, 0], [proof({ aim: "largest" })]).certificate.proofs).toEqual([]);
    expect(reportBlend(ONE, SQUARES, [9, 0], proofs).certificate.proofs.map(({ aim }) => aim)).toEqual([
      "squares",
      "nearest",
      "cost",
    ]);
  });
});

test("each proof carries the answer's own value of its aim", () => {
  const two: BlendProblem = {
    supply: [[10], [10], [10]],
    targets: [{ wanted: 100, weight: 2 }, { wanted: 90 }, { wanted: 60, bandAbove: 40 }],
    prices: [3],
  };
  const proofs = (["largest", "squares", "nearest", "cost"] as const).map((aim) => proof({ aim, targets: [0, 0, 0] }));
  for (const miss of ["largest", "squares"] as const) {
    // 80 delivered: 2 * 0.2 and 1/9 off; the third is within its band, a third off what is wanted.
    const { certificate, objective } = reportBlend(two, { miss, next: "nearest" }, [8], proofs);
    const squares = 2 * 0.2 ** 2 + (1 / 9) ** 2;
    const expected = [0.4, squares, (1 / 3) ** 2, 24];
    expect(certificate.proofs.map(({ aim }) => aim)).toEqual(["largest", "squares", "nearest", "cost"]);
    certificate.proofs.forEach(({ value }, k) => {
      expect(Math.abs(value / expected[k]! - 1)).toBeLessThan(1e-14);
    });
    expect(objective).toBe(certificate.proofs[miss === "largest" ? 0 : 1]!.value);
  }
});

describe("pulls, gains and cost", () => {
  test("by squares a row pulls by twice its weighted miss", () => {
    const weighted: BlendProblem = { ...ONE, targets: [{ wanted: 100, weight: 3 }], prices: [2, 1] };
    const { pulls, gains, cost, objective } = reportBlend(weighted, SQUARES, [8, 0], [proof({})]);
    // 20 short: 2 * 3 * -20 / 100^2.
    expect(Math.abs(pulls[0]! + 0.012)).toBeLessThan(1e-15);
    expect(Math.abs(gains[0]! + 0.12)).toBeLessThan(1e-14);
    expect(Math.abs(gains[1]! + 0.06)).toBeLessThan(1e-14);
    expect(gains.length).toBe(2);
    expect(Math.abs(objective - 0.12)).toBeLessThan(1e-14);
    expect(cost).toBe(16);
    expect("cost" in reportBlend(ONE, SQUARES, [8, 0], [proof({})])).toBe(false);
  });
  test("by the largest miss the rows that share it pull by their multipliers", () => {
    const { pulls, objective } = reportBlend(ONE, LARGEST, [8, 0], [proof({ aim: "largest", targets: [0.01] })]);
    expect(pulls).toEqual([-0.01]);
    expect(Math.abs(objective - 0.2)).toBeLessThan(1e-14);
    expect(reportBlend(ONE, LARGEST, [10, 0], []).pulls[0]! + 0).toBe(0);
  });
});

describe("limits that hold back", () => {
  const kinds = (problem: BlendProblem, masses: number[], over: Partial<AimProof>): string[] =>
    reportBlend(problem, SQUARES, masses, [proof(over)]).binding.map(({ kind, index }) => `${kind} ${index}`);

  test("a product's own limit is named where rows do not account for its gain", () => {
    // 20 short: a gram of the first gains -0.04, of the second -0.02.
    expect(kinds({ ...ONE, upper: [8, 9] }, [8, 0], {})).toEqual(["upper 0"]);
    expect(kinds({ ...ONE, upper: [9, 9] }, [8, 0], {})).toEqual([]);
    expect(kinds(ONE, [8, 0], {})).toEqual([]);
    // 20 over: what must be used holds back, what need not does not.
    expect(kinds({ ...ONE, lower: [12, 0] }, [12, 0], {})).toEqual(["lower 0"]);
    expect(kinds({ ...ONE, lower: [11, 0] }, [12, 0], {})).toEqual([]);
    expect(kinds(ONE, [12, 0], {})).toEqual([]);
  });
  test("a batch or a ceiling accounts for a gain", () => {
    expect(kinds({ ...ONE, total: 8, upper: [8, 9] }, [8, 0], { total: -0.04 })).toEqual(["total 0"]);
    expect(kinds({ ...ONE, total: 8, upper: [8, 9] }, [8, 0], { total: -0.02 })).toEqual(["total 0", "upper 0"]);
    const ceilings = [{ coefficients: [2, 1], limit: 16 }];
    expect(kinds({ ...ONE, ceilings, upper: [8, 9] }, [8, 0], { ceilings: [-0.02] })).toEqual(["ceiling 0"]);
    expect(kinds({ ...ONE, ceilings, upper: [8, 9] }, [8, 0], { ceilings: [-0.01] })).toEqual(["ceiling 0", "upper 0"]);
    expect(kinds({ ...ONE, ceilings, upper: [8, 9] }, [8, 0], { ceilings: [0] })).toEqual(["upper 0"]);
  });
  test("an amount that is fixed is held back from the side that it would go to", () => {
    expect(kinds({ ...ONE, lower: [8, 0], upper: [8, 9] }, [8, 0], {})).toEqual(["upper 0"]);
    expect(kinds({ ...ONE, lower: [12, 0], upper: [12, 9] }, [12, 0], {})).toEqual(["lower 0"]);
  });
  test("what is left of a gain is measured by all that was added up", () => {
    const ceilings = [{ coefficients: [2, 1], limit: 16 }];
    const held = { ...ONE, ceilings, upper: [8, 9] };
    expect(kinds(held, [8, 0], { ceilings: [-0.02 * (1 - 1e-12)] })).toEqual(["ceiling 0"]);
    expect(kinds({ ...ONE, total: 8, upper: [8, 9] }, [8, 0], { total: -0.04 * (1 - 1e-7) })).toEqual([
      "total 0",
      "upper 0",
    ]);
  });
  test("rounding is no limit, and a met blend is held back by none", () => {
    expect(kinds({ ...ONE, total: 8, upper: [8, 9] }, [8, 0], { total: -0.04 * (1 - 1e-12) })).toEqual(["total 0"]);
    expect(kinds({ ...ONE, upper: [10, 9] }, [10, 0], { ceilings: [-1] })).toEqual([]);
  });
});
