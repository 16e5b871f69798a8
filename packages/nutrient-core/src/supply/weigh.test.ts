import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { STEPS_AROUND, type WeighProblem, type WeighRow, weigh } from "./weigh.ts";

/** The measure that the search minimises, written down again from its definition. */
function measureOf(problem: WeighProblem, counts: readonly number[]): number {
  return problem.rows.reduce((sum, { supply, low, high, ideal, scale, weight }) => {
    const delivered = supply.reduce((total, perGram, j) => total + perGram * counts[j]! * problem.steps[j]!, 0);
    const outside = delivered < low ? low - delivered : delivered > high ? delivered - high : 0;
    return sum + weight * (outside / scale) ** 2 + 1e-3 * weight * ((delivered - ideal) / scale) ** 2;
  }, 0);
}

/** Every set of the box, one by one. */
function everySet(problem: WeighProblem): number[][] {
  return problem.steps.reduce<number[][]>(
    (sets, step, j) => {
      const ideal = problem.idealGrams[j]! / step;
      const low = ideal > 0 ? Math.max(0, Math.floor(ideal) - STEPS_AROUND) : 0;
      const high = ideal > 0 ? Math.ceil(ideal) + STEPS_AROUND : 0;
      const counts = Array.from({ length: high - low + 1 }, (_, i) => low + i);
      return sets.flatMap((set) => counts.map((count) => [...set, count]));
    },
    [[]],
  );
}

function isAllowed({ steps, most, least, leastIfUsed, ceilings }: WeighProblem, counts: readonly number[]): boolean {
  const grams = counts.map((count, j) => count * steps[j]!);
  return (
    grams.every(
      (mass, j) =>
        mass <= most[j]! * (1 + 1e-9) &&
        mass >= (least?.[j] ?? 0) * (1 - 1e-9) &&
        (mass === 0 || mass >= leastIfUsed[j]! * (1 - 1e-9)),
    ) &&
    ceilings.every(
      ({ coefficients, limit }) => coefficients.reduce((sum, one, j) => sum + one * grams[j]!, 0) <= limit * (1 + 1e-9),
    )
  );
}

const amount = fc.double({ min: 0.5, max: 20, noNaN: true });
const share = fc.oneof(fc.constant(0), fc.double({ min: 0.02, max: 0.6, noNaN: true }));

const problems: fc.Arbitrary<WeighProblem> = fc
  .record({ products: fc.integer({ min: 1, max: 3 }), rows: fc.integer({ min: 1, max: 4 }) })
  .chain(({ products, rows }) => {
    const each = <T>(one: fc.Arbitrary<T>) => fc.array(one, { minLength: products, maxLength: products });
    return fc
      .record({
        idealGrams: each(amount),
        steps: each(fc.constantFrom(0.1, 0.5, 1, 2, 5)),
        supply: fc.array(each(share), { minLength: rows, maxLength: rows }),
        kinds: fc.array(fc.constantFrom("point", "band", "at-least", "at-most", "off"), {
          minLength: rows,
          maxLength: rows,
        }),
        weights: fc.array(fc.constantFrom(1, 3), { minLength: rows, maxLength: rows }),
        ceiling: fc.option(each(fc.double({ min: 0.01, max: 1, noNaN: true }))),
        least: each(fc.constantFrom(0, 0, 0.5)),
        leastIfUsed: each(fc.constantFrom(0, 0, 4)),
        stock: each(fc.constantFrom(Number.POSITIVE_INFINITY, 6)),
      })
      .map(({ idealGrams, steps, supply, kinds, weights, ceiling, least, leastIfUsed, stock }) => ({
        idealGrams,
        steps,
        least,
        leastIfUsed,
        most: stock.map((grams, j) => Math.max(grams, idealGrams[j]!)),
        ceilings: ceiling
          ? [
              {
                coefficients: ceiling,
                limit: ceiling.reduce((sum, one, j) => sum + one * idealGrams[j]!, 0),
              },
            ]
          : [],
        rows: supply.map((perGram, i): WeighRow => {
          const ideal = perGram.reduce((sum, one, j) => sum + one * idealGrams[j]!, 0);
          const kind = kinds[i]!;
          const wanted = kind === "off" ? ideal * 1.3 + 0.1 : ideal;
          const low = kind === "at-most" ? Number.NEGATIVE_INFINITY : kind === "band" ? wanted * 0.97 : wanted;
          const high = kind === "at-least" ? Number.POSITIVE_INFINITY : kind === "band" ? wanted * 1.03 : wanted;
          return { supply: perGram, low, high, ideal, scale: wanted || 1, weight: weights[i]! };
        }),
      }));
  });

describe("exact search", () => {
  test("property: finds what trying every set of the box finds", () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const sets = everySet(problem).filter((counts) => isAllowed(problem, counts));
        const least = Math.min(...sets.map((counts) => measureOf(problem, counts)));
        const { best, complete } = weigh(problem);
        expect(complete).toBe(true);
        if (sets.length === 0) expect(best).toBeUndefined();
        // Sums in another order: 1e-9 of the value and of a miss of one hundredth.
        else expect(measureOf(problem, best!.counts)).toBeLessThanOrEqual(least * (1 + 1e-9) + 1e-13);
      }),
      { numRuns: 400 },
    );
  });

  test("property: never worse than rounding each product alone, and every limit kept", () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const { best, roundedEach, roundedEachAllowed } = weigh(problem);
        expect(roundedEachAllowed).toBe(isAllowed(problem, roundedEach.counts));
        if (best) expect(isAllowed(problem, best.counts)).toBe(true);
        if (roundedEachAllowed)
          expect(measureOf(problem, best!.counts)).toBeLessThanOrEqual(measureOf(problem, roundedEach.counts));
      }),
      { numRuns: 300 },
    );
  });
});

/** Ammonium nitrate 34-0-0 and potassium nitrate 13-0-44 for N 100, K2O 107 ppm in 9 L (K2O as such), on a 2 g scale. */
const CAN: WeighProblem = {
  rows: [
    { supply: [0.34, 0.13].map((one) => (one * 1000) / 9), low: 100, high: 100, ideal: 100, scale: 100, weight: 1 },
    { supply: [0, 0.44].map((one) => (one * 1000) / 9), low: 107, high: 107, ideal: 107, scale: 107, weight: 1 },
  ],
  steps: [1, 1],
  idealGrams: [1.810227, 2.188636],
  most: [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
  leastIfUsed: [0, 0],
  ceilings: [],
};

describe("a known case", () => {
  test("exact amounts that are whole steps stay as they are", () => {
    const whole = { ...CAN, idealGrams: [2, 3] };
    const rows = CAN.rows.map((row) => {
      const ideal = row.supply[0]! * 2 + row.supply[1]! * 3;
      return { ...row, low: ideal, high: ideal, ideal };
    });
    const { best } = weigh({ ...whole, rows });
    expect(best!.counts).toEqual([2, 3]);
    // Nothing but floating arithmetic between them.
    expect(best!.miss).toBeLessThan(1e-12);
  });

  test("is better than rounding each alone: half grams that would all go up", () => {
    // Three nitrogen carriers of 1.5 g each: rounding every one up brings a third too much, two up and one down do not.
    const supply = [20, 20, 20];
    const { best, roundedEach } = weigh({
      rows: [{ supply, low: 90, high: 90, ideal: 90, scale: 90, weight: 1 }],
      steps: [1, 1, 1],
      idealGrams: [1.5, 1.5, 1.5],
      most: [9, 9, 9],
      leastIfUsed: [0, 0, 0],
      ceilings: [],
    });
    expect(roundedEach.counts).toEqual([2, 2, 2]);
    expect(roundedEach.miss).toBe(30 / 90);
    expect(best!.counts.reduce((a, b) => a + b)).toBeGreaterThanOrEqual(4);
    expect(best!.miss).toBe(10 / 90);
  });

  test("says so when nothing near the exact blend keeps a ceiling", () => {
    const tight = weigh({
      ...CAN,
      steps: [10, 10],
      leastIfUsed: [5, 5],
      ceilings: [{ coefficients: [-1, -1], limit: -100 }],
    });
    expect(tight.best).toBeUndefined();
    expect(tight.roundedEachAllowed).toBe(false);
  });

  test("a product that the blend leaves out stays out", () => {
    expect(weigh({ ...CAN, idealGrams: [2.4, 0] }).best!.counts[1]).toBe(0);
  });
});

test("twelve products against twelve nutrients are still searched to the end", () => {
  const shares = (i: number, j: number) => (i === j ? 0.3 : ((i * 7 + j * 13) % 5) / 60);
  const idealGrams = Array.from({ length: 12 }, (_, j) => 3.37 + 1.618 * j);
  const rows = Array.from({ length: 12 }, (_, i): WeighRow => {
    const supply = idealGrams.map((__, j) => shares(i, j));
    const ideal = supply.reduce((sum, one, j) => sum + one * idealGrams[j]!, 0);
    return { supply, low: ideal, high: ideal, ideal, scale: ideal, weight: 1 };
  });
  const free = idealGrams.map(() => 0);
  const { best, roundedEach, complete, explored } = weigh({
    rows,
    steps: idealGrams.map(() => 1),
    idealGrams,
    most: free.map(() => Number.POSITIVE_INFINITY),
    leastIfUsed: free,
    ceilings: [],
  });
  expect(complete).toBe(true);
  expect(explored).toBeLessThan(400_000);
  expect(best!.miss).toBeLessThanOrEqual(roundedEach.miss);
});
