import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { BlendInput } from "./blend-input.ts";
import { contradiction } from "./contradiction.ts";
import type { BlendProblem } from "./engine/problem.ts";
import { solveBlend } from "./engine/solve.ts";
import { engineTarget, type PosedBlend, type Row, withAmountLimits } from "./pose.ts";
import type { Reached } from "./reach.ts";

/**
 * A ratio is free of scale: it is solved for one hundred grams' worth and stretched to the batch. Where the stretched
 * amounts break a stock or another limit on amounts, the batch is solved as such, with its own scale as one more
 * unknown: rows `delivered - scale * ratio = 0`, and the masses adding up to the batch.
 */
export function reachRatio(input: BlendInput, batchGrams: number, posed: PosedBlend): Outcome<Reached> {
  const { problem, rows, extent } = posed;
  const free = solveBlend(problem);
  if (free.status === "infeasible") return unusable(contradiction(input));
  const filled = free.masses.reduce((sum, mass) => sum + mass, 0);
  const stretch = filled > 0 ? batchGrams / filled : 1;
  const massGrams = free.masses.map((mass) => mass * stretch);
  const limited = withAmountLimits(problem, input);
  if (!(filled > 0) || keepsAmounts(limited, massGrams)) {
    return answer({
      problem,
      solution: free,
      rows,
      extent,
      massGrams,
      delivered: free.delivered,
      conductivityCorrection: 1,
      stretch,
    });
  }
  const whole = ofWholeBatch(limited, rows, batchGrams, stretch);
  const solution = solveBlend(whole);
  if (solution.status === "infeasible") return unusable(contradiction(input));
  const scale = solution.masses.at(-1)!;
  const masses = solution.masses.slice(0, -1);
  return answer({
    problem: whole,
    solution,
    rows: rows.map((row) => ({
      ...row,
      wanted: row.wanted * scale,
      band: row.band * scale,
      // Shown on the scale of the ratio that was asked for.
      shownAs: (amount: number) => (scale > 0 ? row.shownAs(amount / scale) : 0),
    })),
    extent,
    massGrams: masses,
    delivered: problem.supply.map((row) => row.reduce((sum, perGram, j) => sum + perGram * masses[j]!, 0)),
    conductivityCorrection: 1,
    stretch: 1,
  });
}

function keepsAmounts({ lower, upper, smallestIfUsed }: BlendProblem, masses: readonly number[]): boolean {
  return masses.every(
    (mass, j) =>
      mass >= (lower?.[j] ?? 0) &&
      mass <= (upper?.[j] ?? Number.POSITIVE_INFINITY) &&
      (mass === 0 || mass >= (smallestIfUsed?.[j] ?? 0)),
  );
}

/** The relative misses are those at the scale of the free blend: the true scale is not known before. */
function ofWholeBatch(limited: BlendProblem, rows: readonly Row[], batchGrams: number, stretch: number): BlendProblem {
  const { lower, upper, smallestIfUsed, prices, ceilings = [] } = limited;
  const products = limited.supply[0]!.length;
  const ones = new Array<number>(products).fill(1);
  const largest = Math.max(...rows.map(({ wanted }) => wanted));
  return {
    ...limited,
    supply: limited.supply.map((row, i) => [...row, -rows[i]!.wanted]),
    targets: rows.map((row) => {
      const { wanted, ...bands } = engineTarget({ ...row, wanted: row.wanted * stretch, band: row.band * stretch });
      return { ...bands, wanted: 0, scale: wanted || largest * stretch };
    }),
    ceilings: [
      ...ceilings.map(({ coefficients, limit }) => ({ coefficients: [...coefficients, 0], limit })),
      { coefficients: [...ones, 0], limit: batchGrams },
      { coefficients: [...ones.map((one) => -one), 0], limit: -batchGrams },
    ],
    ...(lower ? { lower: [...lower, 0] } : {}),
    ...(upper ? { upper: [...upper, Number.POSITIVE_INFINITY] } : {}),
    ...(smallestIfUsed ? { smallestIfUsed: [...smallestIfUsed, 0] } : {}),
    ...(prices ? { prices: [...prices, 0] } : {}),
  };
}
