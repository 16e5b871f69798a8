import { expect, test } from "vitest";
import { checkCertificate } from "./certificate.ts";
import { type BlendProblem, missScales, type NutrientTarget } from "./problem.ts";
import type { AimProof, ReachedBlend } from "./solution.ts";
import { solveBlend } from "./solve.ts";
import { DEGENERATE_KINDS, degenerateBlend, randomBlend, seeded } from "./testing/random-blends.ts";

/*
 * The checker beside a second one, written from its description: every promise as one number, the largest of them the
 * answer. Both read certificates that were bent in one place by a little or by much.
 */

type Range = readonly [low: number, high: number];

const weightOf = (t: NutrientTarget): number => t.weight ?? 1;
const bandOf = (t: NutrientTarget): Range => [
  t.direction === "at-most" ? -Infinity : t.wanted - (t.bandBelow ?? 0),
  t.direction === "at-least" ? Infinity : t.wanted + (t.bandAbove ?? 0),
];
const idealOf = (t: NutrientTarget): Range => bandOf({ ...t, bandBelow: 0, bandAbove: 0 });
const outside = (x: number, [low, high]: Range): number => Math.min(0, x - low) + Math.max(0, x - high);
const apart = (a: number, b: number, size: number): number =>
  a === b ? 0 : Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), size);
const sum = (list: readonly number[]): number => list.reduce((total, x) => total + x, 0);
const times = (a: readonly number[], b: readonly number[]): number[] => b.map((x, k) => a[k]! * x);
const sizes = (list: readonly number[]): number => sum(list.map(Math.abs));

interface Row {
  readonly of: readonly number[];
  readonly range: Range;
  readonly size: number;
  readonly multiplier: number;
}

function hardRows(problem: BlendProblem, proof?: AimProof): Row[] {
  const products = problem.supply[0]!.length;
  const rows = (problem.ceilings ?? []).map(({ coefficients, limit }, r): Row => {
    return { of: coefficients, range: [-Infinity, limit], size: Math.abs(limit), multiplier: proof?.ceilings[r] ?? 0 };
  });
  const { total } = problem;
  if (total === undefined) return rows;
  const of = new Array<number>(products).fill(1);
  return [...rows, { of, range: [total, total], size: total, multiplier: proof?.total ?? 0 }];
}

/** The aim's slope at the answer and the size of its terms, per product; its value, and the size of that. */
function slope(problem: BlendProblem, s: ReachedBlend, aim: AimProof["aim"]): [number[], number[], number, number] {
  const { targets, supply } = problem;
  const scales = missScales(targets);
  const products = s.masses.map((_, j) => j);
  const rows = targets.map((_, i) => i);
  if (aim === "cost") return [[...problem.prices!], [...problem.prices!], sum(times(problem.prices!, s.masses)), 0];
  if (aim === "largest") {
    const reach = (j: number): number[] =>
      rows.map((i) => (weightOf(targets[i]!) / scales[i]!) * Math.abs(supply[i]![j]!));
    const value = Math.max(...rows.map((i) => weightOf(targets[i]!) * s.relativeMisses[i]!));
    return [products.map(() => 0), products.map((j) => Math.max(...reach(j))), value, 0];
  }
  const counted = rows.filter((i) => aim === "squares" || s.misses[i] === 0);
  const range = aim === "squares" ? bandOf : idealOf;
  const away = (i: number): number => outside(s.delivered[i]!, range(targets[i]!));
  const pull = (i: number): number => (2 * weightOf(targets[i]!)) / scales[i]! ** 2;
  return [
    products.map((j) => sum(counted.map((i) => pull(i) * away(i) * supply[i]![j]!))),
    products.map((j) =>
      sum(counted.map((i) => pull(i) * Math.max(Math.abs(away(i)), scales[i]!) * Math.abs(supply[i]![j]!))),
    ),
    sum(counted.map((i) => (pull(i) * away(i) ** 2) / 2)),
    1e-9 * Math.max(...targets.map(weightOf)),
  ];
}

function proofErrors(problem: BlendProblem, s: ReachedBlend, proof: AimProof, ranges: readonly Range[]): number[] {
  const { targets, supply, offsets } = problem;
  const scales = missScales(targets);
  const [c, cSizes, value, valueSize] = slope(problem, s, proof.aim);
  const rows = targets.map((t, i): Row => {
    const offset = offsets?.[i] ?? 0;
    const [low, high] = ranges[i]!;
    const size = Math.abs(t.wanted) + Math.abs(offset) + scales[i]!;
    return { of: supply[i]!, range: [low - offset, high - offset], size, multiplier: proof.targets[i]! };
  });
  const all = [...rows, ...hardRows(problem, proof)].filter(({ multiplier }) => multiplier !== 0);
  const level = proof.aim === "largest" ? proof.value : sum(times(c, s.masses));
  let bound = sum(all.map(({ multiplier: m, range }) => m * range[m > 0 ? 0 : 1]));
  let size = sum(all.map(({ multiplier: m, size: edge }) => Math.abs(m) * edge)) + sum(times(cSizes, s.masses));
  let wrong = 0;
  s.masses.forEach((mass, j) => {
    const price = c[j]! - sum(all.map(({ multiplier, of }) => multiplier * of[j]!));
    if (price === 0) return;
    const relative = Math.abs(price) / (cSizes[j]! + sizes(all.map(({ multiplier, of }) => multiplier * of[j]!)));
    let limit = price > 0 ? (problem.lower?.[j] ?? 0) : (problem.upper?.[j] ?? Infinity);
    if (limit === Infinity || relative <= 1e-9) {
      wrong = Math.max(wrong, relative);
      limit = mass;
    }
    bound += price * limit;
    size += Math.abs(price * limit);
  });
  const shared = sum(targets.map((t, i) => (Math.abs(proof.targets[i]!) * scales[i]!) / weightOf(t)));
  return [
    apart(proof.value, value, valueSize),
    proof.aim === "largest" ? Math.abs(shared - 1) : 0,
    wrong,
    level <= bound ? 0 : (level - bound) / (size + Math.abs(level)),
  ];
}

function worstOf(problem: BlendProblem, s: ReachedBlend): number {
  const { targets, supply, offsets, prices } = problem;
  const scales = missScales(targets);
  const errors: number[] = [];
  targets.forEach((t, i) => {
    const offset = offsets?.[i] ?? 0;
    const terms = times(supply[i]!, s.masses);
    const delivered = offset + sum(terms);
    const size = Math.abs(offset) + sizes(terms) + Math.abs(t.wanted);
    errors.push(apart(s.delivered[i]!, delivered, size));
    errors.push(apart(s.residuals[i]!, delivered - t.wanted, size));
    errors.push(apart(s.misses[i]!, outside(delivered, bandOf(t)), Math.max(size, scales[i]!)));
  });
  if (prices) errors.push(apart(s.cost!, sum(times(prices, s.masses)), 0));
  s.masses.forEach((mass, j) => {
    const low = problem.lower?.[j] ?? 0;
    const off = Math.abs(outside(mass, [low, problem.upper?.[j] ?? Infinity]));
    if (off > 0) errors.push(off / Math.max(Math.abs(mass), low));
  });
  for (const { of, range } of hardRows(problem)) {
    const off = Math.abs(outside(sum(times(of, s.masses)), range));
    if (off > 0) errors.push(off / Math.max(sizes(times(of, s.masses)), Math.abs(range[1])));
  }
  const isMissed = s.status === "closest";
  errors.push(isMissed ? apart(s.objective, s.certificate.proofs[0]!.value, 0) : s.objective);
  const kept = (t: NutrientTarget, i: number): Range => {
    const [low, high] = s.misses[i] === 0 ? bandOf(t) : [Infinity, -Infinity];
    return [Math.min(low, s.delivered[i]!), Math.max(high, s.delivered[i]!)];
  };
  let ranges = targets.map((t, i): Range => (isMissed ? [-Infinity, Infinity] : kept(t, i)));
  for (const proof of s.certificate.proofs) {
    if (proof.aim === "largest") ranges = targets.map(bandOf);
    errors.push(...proofErrors(problem, s, proof, ranges));
    if (proof.aim === "squares") ranges = targets.map(kept);
    if (proof.aim !== "largest") continue;
    ranges = ranges.map(([low, high], i): Range => {
      const room = (proof.value * scales[i]!) / weightOf(targets[i]!);
      return [low - room, high + room];
    });
  }
  return Math.max(...errors);
}

const bent = (list: readonly number[], k: number, factor: number): number[] =>
  list.map((x, at) => (at === k ? x * factor + (x === 0 ? factor - 1 : 0) : x));

/** The answer with one number bent. */
function tamper(s: ReachedBlend, random: () => number): ReachedBlend {
  const factor = 1 + (random() < 0.5 ? -1 : 1) * 10 ** (-1 - 7 * random());
  const any = (list: readonly unknown[]): number => Math.floor(random() * list.length);
  const inProof = (change: (proof: AimProof) => AimProof): ReachedBlend => {
    const chosen = any(s.certificate.proofs);
    return { ...s, certificate: { proofs: s.certificate.proofs.map((p, k) => (k === chosen ? change(p) : p)) } };
  };
  const kinds: (() => ReachedBlend)[] = [
    () => ({ ...s, masses: bent(s.masses, any(s.masses), factor) }),
    () => ({ ...s, delivered: bent(s.delivered, any(s.delivered), factor) }),
    () => ({ ...s, residuals: bent(s.residuals, any(s.residuals), factor) }),
    () => ({ ...s, misses: bent(s.misses, any(s.misses), factor) }),
    () => ({ ...s, relativeMisses: bent(s.relativeMisses, any(s.relativeMisses), factor) }),
    () => ({ ...s, objective: bent([s.objective], 0, factor)[0]! }),
    () => ({ ...s, ...(s.cost === undefined ? {} : { cost: bent([s.cost], 0, factor)[0]! }) }),
    () => inProof((p) => ({ ...p, value: bent([p.value], 0, factor)[0]! })),
    () => inProof((p) => ({ ...p, targets: bent(p.targets, any(p.targets), factor) })),
    () => inProof((p) => ({ ...p, ceilings: bent(p.ceilings, any(p.ceilings), factor) })),
    () => inProof((p) => ({ ...p, total: bent([p.total], 0, factor)[0]! })),
  ];
  return kinds[any(kinds)]!();
}

test("finds the same largest error as a second checker, in answers as they are and bent in one place", () => {
  const random = seeded(4242);
  let bentOnes = 0;
  for (let k = 0; k < 240; k++) {
    const kind = DEGENERATE_KINDS[k % DEGENERATE_KINDS.length]!;
    const problem = k % 3 === 0 ? degenerateBlend(random, kind) : randomBlend(random, { products: 6, nutrients: 6 });
    const solution = solveBlend(problem);
    if (solution.status === "infeasible") continue;
    for (const s of [solution, tamper(solution, random), tamper(solution, random), tamper(solution, random)]) {
      const report = checkCertificate(problem, s);
      const worst = worstOf(problem, s);
      const where = `${k}: ${report.worst} and ${worst}, ${report.failures}`;
      // Sums in another order differ in their last digits; an error of rounding is as large as they are.
      const isSame = report.worst === worst || Math.abs(report.worst - worst) <= 1e-13 + 1e-6 * worst;
      expect(isSame, where).toBe(true);
      if (report.worst > 1e-9) bentOnes++;
      const isMet = s.misses.every((miss) => miss === 0);
      const holds = worst <= 1e-9 && isMet === (s.status === "met");
      expect(report.failures.length === 0, where).toBe(holds);
      expect(report.valid).toBe(holds);
    }
  }
  expect(bentOnes).toBeGreaterThan(240);
});
