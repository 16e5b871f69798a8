import type { BlendInput } from "../blend/blend-input.ts";
import { explain } from "../blend/explain/explain.ts";
import { reachBlend } from "../blend/reach.ts";
import { dose } from "../dose/dose.ts";
import { answer, type Outcome } from "../outcome/outcome.ts";
import type { Product } from "../product/product.ts";
import type { Extent } from "../supply/basis.ts";
import { type Delivered, supplyPerGram } from "../supply/supply.ts";
import type { Wanted } from "../supply/target.ts";
import { weigh } from "../supply/weigh.ts";
import { type Measures, measuresFor } from "../supply/weigh-measures.ts";

/** The amounts of one can that hit the target best, before they are made measurable. */
export interface Exact {
  readonly grams: readonly number[];
  /** Why it comes no nearer, in words: worked out only when it is asked for, since many materials are tried for it. */
  readonly explanation: () => readonly string[];
}

/** A dose of one product, a blend of several: grams of each in one can. */
export function exactAmounts(
  products: readonly Product[],
  wanted: readonly Wanted[],
  already: Delivered,
  extent: Extent,
): Outcome<Exact> {
  const [only] = products;
  if (products.length === 1 && only) {
    const leading = wanted[0]!;
    const dosed = dose({
      product: only,
      purpose: { kind: "target", wanted: leading },
      waterLitres: extent.amount,
      already,
    });
    if (!dosed.ok) return dosed;
    // Every product of a season is weighed: a label by volume comes from the shelf, with its density.
    return answer({ grams: [dosed.value.amounts[0]!.massGrams!], explanation: () => [] }, [], dosed.working);
  }
  const input: BlendInput = { products, purpose: { kind: "target", wanted, extent }, already, within: 0 };
  const blended = reachBlend(input);
  if (!blended.ok) return blended;
  const { massGrams } = blended.value;
  // Where water and mix bring most of it, none of the products may come nearer: then none is the answer.
  if (massGrams.every((grams) => !(grams > 0))) return answer({ grams: massGrams, explanation: () => [NO_NEARER] });
  return answer({ grams: massGrams, explanation: () => explain(input, blended.value) });
}

const NO_NEARER = "Water and mix bring so much already that none of the products comes nearer: plain water will do.";

/** The amounts in whole steps of what there is to measure with, chosen together. */
export function measurable(
  products: readonly Product[],
  grams: readonly number[],
  wanted: readonly Wanted[],
  already: Delivered,
  extent: Extent,
  measures: Measures | undefined,
): Outcome<readonly number[]> {
  if (!measures) return answer(grams);
  const steps = measuresFor(products, measures);
  if (!steps.ok) return steps;
  const rows = wanted.map(({ nutrient, rate }) => {
    const supply = products.map((product) => supplyPerGram(product, nutrient, extent));
    const low = Math.max(0, rate - (already[nutrient] ?? 0));
    const ideal = supply.reduce((sum, perGram, index) => sum + perGram * grams[index]!, 0);
    return { supply, low, high: low, ideal, scale: rate > 0 ? rate : 1, weight: 1 };
  });
  // One product follows its leading nutrient alone, as its dose does.
  const { best, roundedEach } = weigh({
    rows: products.length === 1 ? rows.slice(0, 1) : rows,
    steps: steps.value.map(({ stepGrams }) => stepGrams),
    idealGrams: grams,
    most: products.map(() => Number.POSITIVE_INFINITY),
    leastIfUsed: products.map(() => 0),
    ceilings: [],
  });
  return answer((best ?? roundedEach).massGrams);
}
