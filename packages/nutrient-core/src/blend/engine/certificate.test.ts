import { describe, expect, test } from "vitest";
import { checkCertificate } from "./certificate.ts";
import type { BlendProblem } from "./problem.ts";
import type { BlendSolution, ReachedBlend } from "./solution.ts";
import { solveBlend } from "./solve.ts";
import { randomBlend, seeded } from "./testing/random-blends.ts";
import { SHORT } from "./testing/short-blend.ts";

const reached = (problem: BlendProblem): ReachedBlend => solveBlend(problem) as ReachedBlend;

describe("a certificate stands only for its own answer", () => {
  const short = reached({ ...SHORT, aim: { miss: "squares", next: "cost" } });
  const largest = reached({ ...SHORT, aim: { miss: "largest", next: "cost" } });
  const nearest = reached({ ...SHORT, ceilings: [], aim: { miss: "squares", next: "nearest" } });
  const squaresProblem: BlendProblem = { ...SHORT, aim: { miss: "squares", next: "cost" } };

  test("the answers themselves are valid", () => {
    for (const [problem, solution] of [
      [squaresProblem, short],
      [{ ...SHORT, aim: { miss: "largest", next: "cost" } } as BlendProblem, largest],
      [{ ...SHORT, ceilings: [] }, nearest],
    ] as const) {
      const report = checkCertificate(problem, solution);
      expect(report.failures).toEqual([]);
      expect(report.valid).toBe(true);
      expect(report.worst).toBeLessThan(1e-9);
    }
    expect(short.certificate.proofs.map((proof) => proof.aim)).toEqual(["squares", "cost"]);
    expect(largest.certificate.proofs.map((proof) => proof.aim)).toEqual(["largest", "cost"]);
    expect(nearest.certificate.proofs.map((proof) => proof.aim)).toEqual(["nearest"]);
  });

  const tampered: [string, (s: ReachedBlend) => ReachedBlend][] = [
    ["a mass", (s) => ({ ...s, masses: s.masses.map((m) => m * (1 + 1e-6)) })],
    ["a negative mass", (s) => ({ ...s, masses: s.masses.map((m, j) => (j === 2 ? -1e-3 : m)) })],
    ["a mass that is no number", (s) => ({ ...s, masses: s.masses.map(() => Number.NaN) })],
    ["a delivered amount", (s) => ({ ...s, delivered: s.delivered.map((d) => d + 1e-3) })],
    ["a residual", (s) => ({ ...s, residuals: s.residuals.map((d) => d + 1e-3) })],
    ["a miss", (s) => ({ ...s, misses: s.misses.map((d) => d + 1e-3) })],
    ["the status", (s) => ({ ...s, status: s.status === "met" ? "closest" : "met" })],
    ["the objective", (s) => ({ ...s, objective: s.objective + 1e-6 })],
    ["the cost", (s) => ({ ...s, cost: s.cost! * 1.001 })],
    ["no proofs", (s) => ({ ...s, certificate: { proofs: [] } })],
    ["one proof too few", (s) => ({ ...s, certificate: { proofs: s.certificate.proofs.slice(1) } })],
    [
      "a proof's value",
      (s) => ({ ...s, certificate: { proofs: s.certificate.proofs.map((p) => ({ ...p, value: p.value + 1e-6 })) } }),
    ],
    [
      "a ceiling's multiplier",
      (s) => ({
        ...s,
        certificate: {
          proofs: s.certificate.proofs.map((p) => ({ ...p, ceilings: p.ceilings.map((m) => m * 1.00001 - 1e-6) })),
        },
      }),
    ],
    [
      "a ceiling's multiplier of the wrong sign",
      (s) => ({
        ...s,
        certificate: { proofs: s.certificate.proofs.map((p) => ({ ...p, ceilings: p.ceilings.map(() => 0.1) })) },
      }),
    ],
    [
      "a target's multiplier",
      (s) => ({
        ...s,
        certificate: { proofs: s.certificate.proofs.map((p) => ({ ...p, targets: p.targets.map((m) => m + 1e-4) })) },
      }),
    ],
    [
      "a choice that was not made",
      (s) => ({
        ...s,
        certificate: {
          ...s.certificate,
          search: { choices: s.masses.map(() => "out" as const), explored: 1, complete: true },
        },
      }),
    ],
  ];
  for (const [name, change] of tampered) {
    test(`not with another ${name}`, () => {
      expect(checkCertificate(squaresProblem, change(short)).valid, "squares").toBe(false);
      expect(
        checkCertificate({ ...SHORT, aim: { miss: "largest", next: "cost" } }, change(largest)).valid,
        "largest",
      ).toBe(false);
    });
  }

  test("nor for another problem", () => {
    expect(
      checkCertificate({ ...squaresProblem, ceilings: [{ coefficients: [1, 1, 1], limit: 1.01 }] }, short).valid,
    ).toBe(false);
    expect(
      checkCertificate({ ...squaresProblem, ceilings: [{ coefficients: [1, 1, 1], limit: 0.99 }] }, short).valid,
    ).toBe(false);
    expect(checkCertificate({ ...squaresProblem, total: 1.2 }, short).valid).toBe(false);
    expect(checkCertificate({ ...squaresProblem, upper: [0.01, 0.01, 0.01] }, short).valid).toBe(false);
    expect(checkCertificate({ ...squaresProblem, lower: [1, 1, 1] }, short).valid).toBe(false);
    expect(checkCertificate({ ...squaresProblem, smallestIfUsed: [2, 2, 2] }, short).valid).toBe(false);
    expect(checkCertificate({ ...squaresProblem, offsets: [1, 0] }, short).valid).toBe(false);
  });
});

describe("hard limits that contradict each other", () => {
  const cases: [string, BlendProblem][] = [
    [
      "a ceiling below the least amounts",
      { supply: [[1, 1]], targets: [{ wanted: 1 }], lower: [2, 1], ceilings: [{ coefficients: [1, 1], limit: 2.9 }] },
    ],
    ["a batch larger than the stock", { supply: [[1, 1]], targets: [{ wanted: 1 }], upper: [2, 1], total: 3.1 }],
    [
      "a batch smaller than the least amounts",
      { supply: [[1, 1]], targets: [{ wanted: 1 }], lower: [2, 1], total: 2.9 },
    ],
    [
      "a ceiling below 0",
      { supply: [[1, 1]], targets: [{ wanted: 1 }], ceilings: [{ coefficients: [1, 2], limit: -0.1 }] },
    ],
    [
      "two ceilings and a batch",
      {
        supply: [[1, 1]],
        targets: [{ wanted: 1 }],
        total: 2,
        ceilings: [
          { coefficients: [1, 0], limit: 0.9 },
          { coefficients: [0, 1], limit: 0.9 },
        ],
      },
    ],
  ];
  for (const [name, problem] of cases) {
    test(`${name}: proved, and only for that problem`, () => {
      const solution = solveBlend(problem);
      expect(solution.status).toBe("infeasible");
      expect(checkCertificate(problem, solution).valid).toBe(true);
      const none: BlendSolution = {
        status: "infeasible",
        contradiction: { ceilings: problem.ceilings?.map(() => 0) ?? [], total: 0 },
      };
      expect(checkCertificate(problem, none).valid).toBe(false);
      expect(checkCertificate(problem, { status: "infeasible" }).valid).toBe(false);
      const looser: BlendProblem = {
        ...problem,
        ...(problem.ceilings ? { ceilings: problem.ceilings.map((c) => ({ ...c, limit: c.limit + 1 })) } : {}),
        ...(problem.lower ? { lower: [0, 0] } : {}),
        ...(problem.upper ? { upper: [4, 4] } : {}),
      };
      expect(checkCertificate(looser, solution).valid).toBe(false);
    });
  }
  test("just enough is feasible", () => {
    expect(solveBlend({ supply: [[1, 1]], targets: [{ wanted: 1 }], upper: [2, 1], total: 3 }).status).not.toBe(
      "infeasible",
    );
    expect(
      solveBlend({
        supply: [[1, 1]],
        targets: [{ wanted: 1 }],
        lower: [2, 1],
        ceilings: [{ coefficients: [1, 1], limit: 3 }],
      }).status,
    ).not.toBe("infeasible");
  });
});

test("150 random answers are valid, and none of them for other targets", () => {
  const random = seeded(7);
  for (let k = 0; k < 150; k++) {
    const problem = randomBlend(random, { products: 8, nutrients: 6 });
    const solution = solveBlend(problem);
    expect(checkCertificate(problem, solution).worst).toBeLessThan(1e-9);
    if (solution.status === "infeasible") continue;
    const other = {
      ...problem,
      targets: problem.targets.map((t) => ({ ...t, wanted: t.wanted + 7, direction: "about" as const })),
    };
    expect(checkCertificate(other, solution).valid).toBe(false);
  }
});
