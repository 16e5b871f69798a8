import { type Caution, type CautionKind, raise } from "../outcome/caution.ts";
import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { type WeighRow, weigh } from "../supply/weigh.ts";
import { type Measure, type Measures, measuresFor } from "../supply/weigh-measures.ts";
import type { BlendInput } from "./blend-input.ts";
import type { Residual, WeighedBlend } from "./blend-result.ts";
import { bandHigh, bandLow, missScales } from "./engine/problem.ts";
import { engineTarget, type Row, withAmountLimits } from "./pose.ts";
import type { Reached } from "./reach.ts";
import { percent } from "./words.ts";

/**
 * The blend in whole steps of what there is to measure with: the best set, not each product rounded by itself.
 *
 * @param times How many times the blend is measured out at once: a tank of stock feeds more water than the blend.
 * @returns The set with its misses, and the measure of each product (undefined for those left out).
 */
export function weighBlend(
  input: BlendInput,
  reached: Reached,
  measures: Measures,
  times: number,
): Outcome<{ readonly weighed: WeighedBlend; readonly measures: readonly (Measure | undefined)[] }> {
  const used = input.products.flatMap((_, j) => (reached.massGrams[j]! > 0 ? [j] : []));
  const found = measuresFor(
    used.map((j) => input.products[j]!),
    measures,
  );
  if (!found.ok) return found;
  const pick = <T>(list: readonly T[]): T[] => used.map((j) => list[j]!);
  const { problem, rows, delivered, stretch } = reached;
  const offsets = problem.offsets ?? rows.map(() => 0);
  const targets = rows.map(engineTarget);
  const scales = missScales(targets);
  const weighRows = rows.map(({ weight }, i): WeighRow => {
    const offset = offsets[i]!;
    return {
      // One gram in the tank is 1/times of a gram in the blend; a ratio's rows are stretched to its batch.
      supply: pick(problem.supply[i]!).map((perGram) => perGram / times / stretch),
      low: bandLow(targets[i]!) - offset,
      high: bandHigh(targets[i]!) - offset,
      ideal: delivered[i]! - offset,
      scale: scales[i]!,
      weight,
    };
  });
  const limited = withAmountLimits(problem, input);
  const none = input.products.map(() => 0);
  const search = weigh({
    rows: weighRows,
    steps: found.value.map(({ stepGrams }) => stepGrams),
    idealGrams: pick(reached.massGrams).map((mass) => mass * times),
    most: pick(limited.upper ?? input.products.map(() => Number.POSITIVE_INFINITY)).map((most) => most * times),
    least: pick(limited.lower ?? none).map((least) => least * times),
    leastIfUsed: pick(limited.smallestIfUsed ?? none).map((least) => least * times),
    ceilings: (input.purpose.kind === "ratio" ? [] : (problem.ceilings ?? [])).map(({ coefficients, limit }) => ({
      coefficients: pick(coefficients).map((one) => one / times),
      limit,
    })),
  });
  const { best, roundedEach, complete } = search;
  if (!best?.massGrams.some((grams) => grams > 0)) return unusable(tooCoarse(input, measures));
  const residuals = rows.map((row, i) =>
    residualOf(
      row,
      offsets[i]! + weighRows[i]!.supply.reduce((sum, perGram, j) => sum + perGram * best.massGrams[j]!, 0),
    ),
  );
  const measureOf: (Measure | undefined)[] = input.products.map((_, j) => found.value[used.indexOf(j)]);
  return answer({
    measures: measureOf,
    weighed: {
      amounts: used.map((j, index) => {
        const { kind, stepGrams, stepMillilitres } = found.value[index]!;
        const steps = best.counts[index]!;
        return {
          product: input.products[j]!.id,
          massGrams: best.massGrams[index]!,
          measure: kind,
          steps,
          stepGrams,
          ...(stepMillilitres === undefined ? {} : { volumeMillilitres: steps * stepMillilitres }),
        };
      }),
      residuals,
      miss: best.miss,
      exactMiss: missOfBlend(reached),
      roundedEachMiss: roundedEach.miss,
      met: residuals.every(({ met }) => met),
      complete,
    },
  });
}

/** Said where whole steps put a nutrient off by more than this beyond the exact blend (common practice, no source). */
const COARSE = 0.1;

const MEASURE_COARSE: CautionKind<{ readonly nutrient: string; readonly off: number }> = {
  code: "measure-coarse",
  severity: "caution",
  source: "common-practice",
  sentence: ({ nutrient, off }) =>
    `These measures are coarse for so little: measured so, ${nutrient} is ${percent(off)} off. Use a finer scale, or make more at once, through a stock solution.`,
};

/** Whether the measures are fine enough for the blend. */
export function coarseCautions(weighed: WeighedBlend, exact: readonly Residual[]): Caution[] {
  const off = ({ relativeMiss, met }: Residual): number => (met ? 0 : Math.abs(relativeMiss ?? 0));
  const worst = weighed.residuals
    .map((one, i) => ({ nutrient: one.nutrient, off: off(one), more: off(one) - off(exact[i]!) }))
    .sort((a, b) => b.more - a.more)[0];
  return worst && worst.more > COARSE ? [raise(MEASURE_COARSE, { nutrient: worst.nutrient, off: worst.off })] : [];
}

/** A miss below this share of the wanted is rounding. */
const MET = 1e-9;

/** How a row came out at this delivery. */
export function residualOf(row: Row, delivered: number): Residual {
  const target = engineTarget(row);
  const slack = MET * Math.max(row.wanted, Math.abs(delivered));
  return {
    nutrient: row.name,
    wanted: row.shownAs(row.wanted),
    delivered: row.shownAs(delivered),
    relativeMiss: row.wanted > 0 ? delivered / row.wanted - 1 : null,
    met: delivered >= bandLow(target) - slack && delivered <= bandHigh(target) + slack,
  };
}

function missOfBlend({ rows, solution }: Reached): number {
  return Math.sqrt(rows.reduce((sum, { weight }, i) => sum + weight * solution.relativeMisses[i]! ** 2, 0));
}

function tooCoarse({ products }: BlendInput, measures: Measures) {
  return {
    code: "measure-too-coarse",
    path: "scale",
    message: "No set of whole steps near the exact blend keeps the limits and holds anything at all.",
    expected: "a finer scale or smaller spoons, or limits with more room",
    received: Object.entries(measures)
      .map(([name, value]) => `${name} ${typeof value === "number" ? value : value.name}`)
      .join(", "),
    hint: `use a finer scale, or make a larger amount of ${products.length > 1 ? "the blend" : "it"} at once`,
  };
}
