import type { Caution } from "../outcome/caution.ts";
import { answer, type Outcome } from "../outcome/outcome.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { unitExtent } from "../supply/basis.ts";
import { deliveredRanges, type MeasuredAmount, rangeWorking } from "../supply/range.ts";
import type { Amount } from "../supply/supply.ts";
import type { Measure } from "../supply/weigh-measures.ts";
import type { BlendInput } from "./blend-input.ts";
import type { BlendResult, Residual, WeighedBlend } from "./blend-result.ts";
import type { Row } from "./pose.ts";
import type { Reached } from "./reach.ts";
import { spreadOf } from "./spread.ts";
import { coarseCautions, weighBlend } from "./weigh-blend.ts";

/** A blend as it is measured out, with the measure of each product. */
export interface Measured {
  readonly weighed: WeighedBlend;
  readonly measures: readonly (Measure | undefined)[];
}

/** Weighable amounts, where there is something named to measure with: of the blend, or of a full tank of it. */
export function measuredBlend(input: BlendInput, reached: Reached): Outcome<Measured | undefined> {
  if (!input.measures) return answer(undefined);
  return weighBlend(input, reached, input.measures, tankfuls(input));
}

/** How much of the blend a full tank holds. */
function tankfuls({ purpose, stock }: BlendInput): number {
  return stock && purpose.kind === "target" ? (stock.ratio * stock.tankLitres) / purpose.extent.amount : 1;
}

/** What is measured out, or the exact amounts where nothing was named to measure with, and what it is spread over. */
function madeOf(input: BlendInput, amounts: readonly Amount[], measured: Measured | undefined) {
  const { purpose, already, labelRule = "us" } = input;
  const times = tankfuls(input);
  const extent = purpose.kind === "target" ? { ...purpose.extent, amount: purpose.extent.amount * times } : unitExtent;
  const list = amounts.map(({ product, massGrams }, index): MeasuredAmount => {
    const measure = measured?.measures[index];
    const weighed = measured?.weighed.amounts.find((one) => one.product === product.id);
    return { product, massGrams: weighed?.massGrams ?? massGrams * times, ...(measure ? { measure } : {}) };
  });
  return { list, extent, care: { labelRule }, already: purpose.kind === "target" ? already : {} };
}

/** Between which limits every nutrient lies in what is measured out. */
export function rangeOf(
  input: BlendInput,
  amounts: readonly Amount[],
  measured: Measured | undefined,
): BlendResult["range"] {
  const { list, extent, care, already } = madeOf(input, amounts, measured);
  return deliveredRanges(list, extent, care, already);
}

/** How the measured amounts and the limits of what they deliver were reached, for the nutrients that were asked for. */
export function measuredWorking(
  input: BlendInput,
  amounts: readonly Amount[],
  rows: readonly Row[],
  measured: Measured | undefined,
): WorkingLine[] {
  const { list, extent, care, already } = madeOf(input, amounts, measured);
  const steps = (measured?.weighed.amounts ?? []).map(
    ({ product, steps: count, stepGrams, massGrams }): WorkingLine => ({
      label: `${product} measured`,
      expression: `${count} * ${term(stepGrams)} g`,
      value: massGrams,
      unit: "g",
      source: null,
    }),
  );
  if (input.purpose.kind !== "target") return steps;
  return [...steps, ...rows.flatMap(({ nutrient }) => rangeWorking(nutrient, list, extent, care, already))];
}

/** What is measured out can be stronger than the exact blend, and has to be heeded as it is. */
export function measuredCautions(input: BlendInput, { weighed }: Measured, exact: readonly Residual[]): Caution[] {
  const times = tankfuls(input);
  const amounts = weighed.amounts.map(({ product, massGrams }) => ({
    product: input.products.find(({ id }) => id === product)!,
    massGrams: massGrams / times,
  }));
  const coarse = coarseCautions(weighed, exact);
  return coarse.length > 0 ? [...coarse, ...(spreadOf(input, amounts)?.cautions ?? [])] : [];
}
