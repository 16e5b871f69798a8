import type { Caution } from "../outcome/caution.ts";
import { answer, type Outcome } from "../outcome/outcome.ts";
import { unitExtent } from "../supply/basis.ts";
import { deliveredRanges } from "../supply/range.ts";
import type { Amount } from "../supply/supply.ts";
import type { Measure } from "../supply/weigh-measures.ts";
import type { BlendInput } from "./blend-input.ts";
import type { BlendResult, Residual, WeighedBlend } from "./blend-result.ts";
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

/** Of what is measured out; of the exact amounts, by label and filling alone, where nothing was named to measure with. */
export function rangeOf(
  input: BlendInput,
  amounts: readonly Amount[],
  measured: Measured | undefined,
): BlendResult["range"] {
  const { purpose, already, labelRule = "us" } = input;
  const times = tankfuls(input);
  const extent = purpose.kind === "target" ? { ...purpose.extent, amount: purpose.extent.amount * times } : unitExtent;
  const list = amounts.map(({ product, massGrams }, index) => {
    const measure = measured?.measures[index];
    const weighed = measured?.weighed.amounts.find((one) => one.product === product.id);
    return { product, massGrams: weighed?.massGrams ?? massGrams * times, ...(measure ? { measure } : {}) };
  });
  return deliveredRanges(list, extent, { labelRule }, purpose.kind === "target" ? already : {});
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
