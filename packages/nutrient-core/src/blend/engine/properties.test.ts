import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type BlendProblem,
  bandHigh,
  bandLow,
  idealHigh,
  idealLow,
  missOf,
  missScales,
  type NutrientTarget,
} from "./problem.ts";
import type { ReachedBlend } from "./solution.ts";
import { solveBlend } from "./solve.ts";
import { randomBlend, seeded } from "./testing/random-blends.ts";

/** Two solves of one problem in other units differ by rounding only: a few hundred operations of 1e-16. */
const SAME_ANSWER = 1e-9;

const SMALL = { products: 8, nutrients: 7 };
const blends = fc.integer().map((seed) => randomBlend(seeded(seed), SMALL));
const RUNS = { numRuns: 60, seed: 41 };

function reached(problem: BlendProblem): ReachedBlend | undefined {
  const solution = solveBlend(problem);
  return solution.status === "infeasible" ? undefined : solution;
}

function expectClose(actual: number, expected: number, size: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(SAME_ANSWER * Math.max(Math.abs(expected), size));
}

type Range = (target: NutrientTarget) => readonly [low: number, high: number];
const band: Range = (target) => [bandLow(target), bandHigh(target)];
const ideal: Range = (target) => [idealLow(target), idealHigh(target)];

/** The value of the last aim, so that a blend can be compared with another on everything that was asked. */
function lastValue(problem: BlendProblem, masses: readonly number[]): number {
  if (problem.aim?.next === "cost") return problem.prices!.reduce((sum, price, j) => sum + price * masses[j]!, 0);
  return distance(problem, masses, ideal);
}

function distance(problem: BlendProblem, masses: readonly number[], range: Range): number {
  const scales = missScales(problem.targets);
  return problem.targets.reduce((sum, target, i) => {
    const delivered = problem.supply[i]!.reduce((d, s, j) => d + s * masses[j]!, problem.offsets?.[i] ?? 0);
    return sum + (target.weight ?? 1) * (missOf(delivered, ...range(target)) / scales[i]!) ** 2;
  }, 0);
}

test("ten times the targets, limits and offsets need ten times the masses", () => {
  fc.assert(
    fc.property(blends, (problem) => {
      const ten = (x: number): number => x * 10;
      const larger: BlendProblem = {
        ...problem,
        targets: problem.targets.map((t) => ({
          ...t,
          wanted: t.wanted * 10,
          ...(t.bandBelow === undefined ? {} : { bandBelow: t.bandBelow * 10 }),
          ...(t.bandAbove === undefined ? {} : { bandAbove: t.bandAbove * 10 }),
          ...(t.scale === undefined ? {} : { scale: t.scale * 10 }),
        })),
        ...(problem.offsets ? { offsets: problem.offsets.map(ten) } : {}),
        ...(problem.lower ? { lower: problem.lower.map(ten) } : {}),
        ...(problem.upper ? { upper: problem.upper.map(ten) } : {}),
        ...(problem.total === undefined ? {} : { total: problem.total * 10 }),
        ...(problem.ceilings ? { ceilings: problem.ceilings.map((c) => ({ ...c, limit: c.limit * 10 })) } : {}),
      };
      const small = reached(problem);
      const large = reached(larger);
      expect(large?.status).toBe(small?.status);
      if (!small || !large) return;
      expectClose(large.objective, small.objective, 1e-6);
      large.delivered.forEach((amount, i) => {
        if (problem.aim!.miss === "squares" && small.misses[i] !== 0)
          expectClose(amount / 10, small.delivered[i]!, 1e-3);
      });
    }),
    RUNS,
  );
});

test("other units of a row or a product change nothing but the units", () => {
  fc.assert(
    fc.property(blends, fc.integer({ min: -6, max: 6 }), (problem, power) => {
      const factor = 2 ** power;
      // Product 0 counted in other units, all rows in other units.
      const other: BlendProblem = {
        ...problem,
        supply: problem.supply.map((row) => row.map((s, j) => s * factor * (j === 0 ? 1 / 8 : 1))),
        targets: problem.targets.map((t) => ({
          ...t,
          wanted: t.wanted * factor,
          ...(t.bandBelow === undefined ? {} : { bandBelow: t.bandBelow * factor }),
          ...(t.bandAbove === undefined ? {} : { bandAbove: t.bandAbove * factor }),
          ...(t.scale === undefined ? {} : { scale: t.scale * factor }),
        })),
        ...(problem.offsets ? { offsets: problem.offsets.map((o) => o * factor) } : {}),
        ...(problem.lower ? { lower: problem.lower.map((x, j) => (j === 0 ? x * 8 : x)) } : {}),
        ...(problem.upper ? { upper: problem.upper.map((x, j) => (j === 0 ? x * 8 : x)) } : {}),
        prices: problem.prices!.map((p, j) => (j === 0 ? p / 8 : p)),
        ...(problem.ceilings
          ? {
              ceilings: problem.ceilings.map((c) => ({
                ...c,
                coefficients: c.coefficients.map((x, j) => (j === 0 ? x / 8 : x)),
              })),
            }
          : {}),
      };
      if (problem.total !== undefined) return;
      const one = reached(problem);
      const two = reached(other);
      expect(two?.status).toBe(one?.status);
      if (one && two) expectClose(two.objective, one.objective, 1e-9);
    }),
    RUNS,
  );
});

test("the order of products changes neither what is missed nor what it costs", () => {
  fc.assert(
    fc.property(blends, (problem) => {
      const turn = <T>(list: readonly T[] | undefined): T[] => [...(list ?? [])].reverse();
      const turned: BlendProblem = {
        ...problem,
        supply: problem.supply.map(turn),
        prices: turn(problem.prices),
        ...(problem.lower ? { lower: turn(problem.lower) } : {}),
        ...(problem.upper ? { upper: turn(problem.upper) } : {}),
        ...(problem.ceilings
          ? { ceilings: problem.ceilings.map((c) => ({ ...c, coefficients: turn(c.coefficients) })) }
          : {}),
      };
      const one = reached(problem);
      const two = reached(turned);
      expect(two?.status).toBe(one?.status);
      if (!one || !two) return;
      expectClose(two.objective, one.objective, 1e-9);
      if (problem.aim!.next === "cost") expectClose(two.cost!, one.cost!, 1e-6);
    }),
    RUNS,
  );
});

test("no allowed step from the answer does better on the aims in their order", () => {
  fc.assert(
    fc.property(blends, fc.integer(), (problem, seed) => {
      const best = reached(problem);
      if (!best) return;
      const random = seeded(seed);
      const squares = problem.aim!.miss === "squares";
      for (let k = 0; k < 40; k++) {
        const masses = step(problem, best.masses, random);
        if (!masses) continue;
        const first = squares ? distance(problem, masses, band) : largest(problem, masses);
        const room = 1e-9 * Math.max(1e-3, best.objective);
        expect(first).toBeGreaterThanOrEqual(best.objective - room);
        if (first > best.objective + 1e-15 || problem.aim!.next === "nearest") continue;
        const last = lastValue(problem, masses);
        const own = lastValue(problem, best.masses);
        expect(last).toBeGreaterThanOrEqual(own - 1e-6 * Math.max(1e-3, own));
      }
    }),
    RUNS,
  );
});

/** A random step that keeps every hard limit, or nothing. */
function step(problem: BlendProblem, from: readonly number[], random: () => number): number[] | undefined {
  const size = 10 ** -(random() * 5);
  const masses = from.map((mass, j) => {
    const moved = random() < 0.5 ? mass : mass + (random() - 0.5) * size;
    return Math.min(Math.max(moved, problem.lower?.[j] ?? 0), problem.upper?.[j] ?? Number.POSITIVE_INFINITY);
  });
  if (problem.total !== undefined) return undefined;
  const isKept = (problem.ceilings ?? []).every(
    ({ coefficients, limit }) => coefficients.reduce((sum, c, j) => sum + c * masses[j]!, 0) <= limit,
  );
  return isKept ? masses : undefined;
}

function largest(problem: BlendProblem, masses: readonly number[]): number {
  const scales = missScales(problem.targets);
  return problem.targets.reduce((most, target, i) => {
    const delivered = problem.supply[i]!.reduce((d, s, j) => d + s * masses[j]!, problem.offsets?.[i] ?? 0);
    return Math.max(most, ((target.weight ?? 1) * Math.abs(missOf(delivered, ...band(target)))) / scales[i]!);
  }, 0);
}

test("a row that does not mind more gets more only where less of it would cost another row something", () => {
  let tried = 0;
  for (let seed = 1; seed <= 200; seed++) {
    const blend = randomBlend(seeded(seed), SMALL);
    const problem: BlendProblem = {
      ...blend,
      targets: blend.targets.map((target, k) => (k % 2 ? { ...target, direction: "at-least" } : target)),
      aim: { miss: "squares", next: "nearest" },
    };
    const solution = reached(problem);
    if (!solution) continue;
    // The first such row that is over; the ones before it are at what was asked already.
    const i = problem.targets.findIndex(
      ({ direction, wanted }, k) => direction === "at-least" && solution.delivered[k]! > wanted * (1 + 1e-6),
    );
    if (i < 0) continue;
    tried++;
    const limit = solution.delivered[i]! * (1 - 1e-4) - (problem.offsets?.[i] ?? 0);
    const less = reached({
      ...problem,
      ceilings: [...(problem.ceilings ?? []), { coefficients: problem.supply[i]!, limit }],
    });
    if (!less) continue;
    // A bound of a ten-thousandth costs that share squared where it costs anything at all.
    const isWorse = (range: Range): boolean =>
      distance(problem, less.masses, range) - distance(problem, solution.masses, range) > 1e-14;
    // Or it is an earlier one of these rows that gets more.
    const isMoved = problem.targets.some(
      ({ direction }, k) =>
        k < i && direction === "at-least" && less.delivered[k]! > solution.delivered[k]! * (1 + SAME_ANSWER),
    );
    expect(isWorse(band) || isWorse(ideal) || isMoved, `seed ${seed}`).toBe(true);
  }
  expect(tried).toBeGreaterThan(20);
});
