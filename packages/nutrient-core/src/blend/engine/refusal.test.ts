import { afterEach, expect, test, vi } from "vitest";
import type { CertificateReport } from "./certificate.ts";
import type { BlendProblem } from "./problem.ts";
import type { BlendSolution } from "./solution.ts";

/*
 * An answer that fails its check is not given. No blend that is known fails in every way, so here the check, or a part
 * of the engine, is replaced by one that fails.
 */

afterEach(() => {
  vi.doUnmock("./certificate.ts");
  vi.doUnmock("./lexicographic.ts");
  vi.resetModules();
});

type Check = (problem: BlendProblem, solution: BlendSolution) => CertificateReport;

async function engineWith(replaced: { check?: Check; reachAims?: () => never }): Promise<typeof import("./solve.ts")> {
  vi.resetModules();
  if (replaced.check) vi.doMock("./certificate.ts", () => ({ checkCertificate: replaced.check }));
  if (replaced.reachAims) vi.doMock("./lexicographic.ts", () => ({ reachAims: replaced.reachAims }));
  return import("./solve.ts");
}

const valid: CertificateReport = { valid: true, worst: 0, failures: [] };
const invalid: CertificateReport = { valid: false, worst: 1, failures: ["cost: gap", "hard row"] };
const problem: BlendProblem = { supply: [[100, 50]], targets: [{ wanted: 150 }] };

test("an answer that fails its check in every way is refused, with what fails", async () => {
  let checked = 0;
  const { solveBlend } = await engineWith({
    check: () => {
      checked++;
      return invalid;
    },
  });
  expect(() => solveBlend(problem)).toThrow("blend engine: the certificate fails: cost: gap; hard row");
  expect(checked).toBe(10);
});

test("so is an answer that never came, with the reason", async () => {
  const { solveBlend } = await engineWith({
    reachAims: () => {
      throw new Error("no end of moves");
    },
  });
  expect(() => solveBlend(problem)).toThrow(/^blend engine: the certificate fails: Error: no end of moves$/);
});

test("the first way whose answer holds is the answer", async () => {
  let checked = 0;
  const { solveBlend } = await engineWith({ check: () => (++checked < 4 ? invalid : valid) });
  expect(solveBlend(problem).status).toBe("met");
  expect(checked).toBe(4);
});

test("an answer of the search is checked as a whole", async () => {
  const { solveBlend } = await engineWith({
    check: (_, { status, ...rest }) =>
      status !== "infeasible" && "certificate" in rest && rest.certificate.search ? invalid : valid,
  });
  const wanting: BlendProblem = { ...problem, smallestIfUsed: [5, 5] };
  expect(() => solveBlend(wanting)).toThrow("blend engine: the certificate fails: cost: gap; hard row");
});
