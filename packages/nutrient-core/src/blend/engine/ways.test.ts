import { describe, expect, test } from "vitest";
import { checkCertificate } from "./certificate.ts";
import { type BlendProblem, DEFAULT_AIM } from "./problem.ts";
import type { BlendSolution } from "./solution.ts";
import { ATTEMPTS, solveContinuous, solveOnce } from "./solve-continuous.ts";
import { EVERYDAY_SEEDS, everydayBlend, HARD_SEEDS, hardBlend } from "./testing/hard-blends.ts";
import { DEGENERATE_KINDS, degenerateBlend, randomBlend, seeded } from "./testing/random-blends.ts";

/*
 * Every answer is checked, and what fails is set up in another way. So an engine that loses its way is still right, but
 * slow, and refuses more; these tests ask each way on its own.
 */

function* blends(seed: number, count: number, most: { products: number; nutrients: number }): Generator<BlendProblem> {
  const random = seeded(seed);
  for (let k = 0; k < count; k++) yield randomBlend(random, most);
  for (let k = 0; k < count / 2; k++) yield degenerateBlend(random, DEGENERATE_KINDS[k % DEGENERATE_KINDS.length]!);
}

const solve = (problem: BlendProblem, way: number): BlendSolution =>
  solveOnce(problem, problem.aim ?? DEFAULT_AIM, ATTEMPTS[way]!);

test("the first way answers every one of 300 blends of up to 30 products and 20 nutrients", () => {
  for (const problem of blends(2, 200, { products: 30, nutrients: 20 })) {
    expect(checkCertificate(problem, solve(problem, 0)).failures).toEqual([]);
  }
});

test("every way comes to the same amounts, whichever takes which pivots", () => {
  for (const problem of blends(3, 60, { products: 8, nutrients: 8 })) {
    const [first, ...others] = ATTEMPTS.map((_, way) => solve(problem, way));
    for (const other of others) {
      expect(other.status).toBe(first!.status);
      if (first!.status === "infeasible" || other.status === "infeasible") continue;
      // A later aim may use a hair of room, and pays for it where products are near-alike.
      const size = Math.max(...first!.masses);
      other.masses.forEach((mass, j) => {
        expect(Math.abs(mass - (first as typeof other).masses[j]!)).toBeLessThanOrEqual(1e-5 * size);
      });
    }
  }
});

test("each safeguard is needed: the first way answers the blends that fall without it", () => {
  for (const seed of EVERYDAY_SEEDS) {
    const problem = everydayBlend(seed);
    const solution = solve(problem, 0);
    expect(checkCertificate(problem, solution).failures, `${seed}`).toEqual([]);
    const other = solve(problem, 1);
    if (solution.status === "infeasible" || other.status === "infeasible") continue;
    const size = Math.max(...solution.masses);
    other.masses.forEach((mass, j) => {
      expect(Math.abs(mass - solution.masses[j]!), `${seed}`).toBeLessThanOrEqual(1e-5 * size);
    });
  }
  for (const seed of HARD_SEEDS) {
    const problem = hardBlend(seed);
    expect(checkCertificate(problem, solve(problem, 0)).failures, `hard ${seed}`).toEqual([]);
  }
});

test("a product that moves no target is counted in the batch's own size, or in its limits'", () => {
  for (const size of [1e-6, 1, 1e9]) {
    const of = (...shares: number[]): number[] => shares.map((share) => share * size);
    const batch = { supply: [[0.2, 0, 0]], targets: [{ wanted: 0.05 * size }], total: size };
    const ceiling = { supply: [[0.2, 0]], ceilings: [{ coefficients: [1, -1], limit: -0.3 * size }] };
    const cases: [BlendProblem, number[]][] = [
      [batch, [0.25, 0.75, 0]],
      [{ ...batch, upper: of(1, 0.1, 0.9), lower: of(0, 0.05, 0) }, [0.25, 0.1, 0.65]],
      [{ ...ceiling, targets: [{ wanted: 0.05 * size }], upper: of(1, 1) }, [0.25, 0.55]],
      [{ ...ceiling, targets: [{ wanted: 0.05 * size }], lower: of(0, 0.1) }, [0.25, 0.55]],
    ];
    for (const [problem, shares] of cases) {
      const solution = solve(problem, 0);
      expect(checkCertificate(problem, solution).failures).toEqual([]);
      if (solution.status === "infeasible") throw new Error("there is an answer");
      shares.forEach((share, j) => {
        expect(Math.abs(solution.masses[j]! / size - share)).toBeLessThan(1e-12);
      });
    }
  }
});

test("a blend whose ties wear the board out is answered, if not at the first go", () => {
  const random = seeded(7);
  let worn = randomBlend(random, { products: 30, nutrients: 20 });
  for (let k = 0; k < 324; k++) worn = randomBlend(random, { products: 30, nutrients: 20 });
  expect(solveContinuous(worn, worn.aim!).status).toBe("met");
});

test("a blend whose micronutrient dwarfs the rest is answered once its products are counted by what they move least", () => {
  const random = seeded(290);
  let dwarfed = randomBlend(random, { products: 30, nutrients: 20 });
  for (let k = 0; k < 627; k++) dwarfed = randomBlend(random, { products: 30, nutrients: 20 });
  const valid = ATTEMPTS.filter((_, way) => checkCertificate(dwarfed, solve(dwarfed, way)).valid);
  expect(valid[0]).toEqual({ isReversed: false, sure: 10, units: "least" });
  expect(solveContinuous(dwarfed, dwarfed.aim!).status).toBe("closest");
});

describe("blends that some way loses", () => {
  const near: BlendProblem = {
    // The second product is the first but for 2 parts in a million; the third brings a little of the second row.
    supply: [
      [98.6, 175.6, 0],
      [130.1, 231.7, 1000],
    ],
    targets: [{ wanted: 251.53973268988773 }, { wanted: 331.90032337517243 }],
    prices: [1.15, 3.33, 3.93],
    aim: { miss: "squares", next: "cost" },
  };
  test("near-alike products: the cheap one and a trace of the third, solved by hand", () => {
    const solution = solveContinuous(near, near.aim!);
    if (solution.status === "infeasible") throw new Error("there is an answer");
    // Alike to 2e-6, so what is left is missed by the square root of what the engine takes for 0, and no more.
    for (const miss of solution.relativeMisses) expect(miss).toBeLessThan(1e-6);
    const first = 251.53973268988773 / 98.6;
    const third = (331.90032337517243 - 130.1 * first) / 1000;
    expect(Math.abs(solution.masses[0]! / first - 1)).toBeLessThan(1e-6);
    expect(solution.masses[1]).toBe(0);
    expect(Math.abs(solution.cost! / (1.15 * first + 3.93 * third) - 1)).toBeLessThan(1e-6);
  });
  test("rows that agree only to the last digit: an amount stays within its stock", () => {
    const tight: BlendProblem = {
      supply: [
        [0, 0.18263304846329426, 0.19335918181638345, 0],
        [0.0775, 0.065, 0.06927162667405194, 0.17],
      ],
      targets: [
        { wanted: 1, bandBelow: 0.05, bandAbove: 0.05, weight: 100 },
        { wanted: 150, bandBelow: 30, bandAbove: 30 },
      ],
      ceilings: [
        {
          coefficients: [0.0006244278843835374, 0.0006411965458535839, 0.000681086945055116, 0.0008358455514581682],
          limit: 0.5,
        },
      ],
      upper: [Infinity, Infinity, 2, Infinity],
      prices: [0.0012488556438815105, 0.19224589560466343, 0.49999995000000497, 0.0016773028596944787],
    };
    const solution = solveContinuous(tight, { miss: "squares", next: "cost" });
    expect(solution.status).toBe("closest");
    if (solution.status === "closest") expect(solution.masses[2]).toBeLessThanOrEqual(2);
  });
});
