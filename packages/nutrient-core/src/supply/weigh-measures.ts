import { answer, gatherList, type Outcome, unusable } from "../outcome/outcome.ts";
import { mayBeSpooned } from "../product/not-by-spoon.ts";
import type { Product } from "../product/product.ts";
import type { SpoonSet } from "./spoons.ts";

/** What there is to measure with. */
export interface Measures {
  /** The scale's step: the smallest change it shows. */
  readonly scaleStepGrams?: number;
  readonly spoons?: SpoonSet;
  /** The syringe's or measuring jug's step, for liquids. */
  readonly syringeStepMillilitres?: number;
  /** A scoop that is filled level, whole scoops only. */
  readonly scoopMillilitres?: number;
}

export type MeasureKind = "scale" | "spoons" | "syringe" | "scoop";

/** How one product is measured: in whole steps. */
export interface Measure {
  readonly kind: MeasureKind;
  readonly stepGrams: number;
  /** For measures of volume. */
  readonly stepMillilitres?: number;
}

/** A level spoon or scoop is filled to within a tenth (common practice, no source). */
export const SPOON_SPREAD = 0.1;
/** The smallest level amount that a kitchen set allows: an eighth of a teaspoon. */
const SPOON_PARTS = 8;

/**
 * With what is each product measured, and in which steps?
 *
 * A liquid goes by the syringe, a solid by spoons, else by whole scoops, where its density is known; everything else,
 * and whatever must not touch a spoon, goes on the scale.
 *
 * @param measures What there is; at least one.
 * @returns One measure a product, or a problem naming the product that none of them can measure.
 * @example
 * measuresFor([], { scaleStepGrams: 1 })  // => []
 */
export function measuresFor(products: readonly Product[], measures: Measures): Outcome<readonly Measure[]> {
  return gatherList(products.map((product) => measureFor(product, measures)));
}

function measureFor(product: Product, measures: Measures): Outcome<Measure> {
  const { scaleStepGrams, spoons, syringeStepMillilitres, scoopMillilitres } = measures;
  const density = product.densityKilogramsPerLitre;
  const byVolume =
    product.state === "liquid"
      ? ({ kind: "syringe", millilitres: syringeStepMillilitres } as const)
      : spoons && mayBeSpooned(product)
        ? ({ kind: "spoons", millilitres: spoons.teaspoonMillilitres / SPOON_PARTS } as const)
        : ({ kind: "scoop", millilitres: scoopMillilitres } as const);
  const { kind, millilitres } = byVolume;
  if (millilitres !== undefined && density !== undefined) {
    // 1 kg/L is 1 g/mL.
    return answer({ kind, stepGrams: millilitres * density, stepMillilitres: millilitres });
  }
  if (scaleStepGrams !== undefined) return answer({ kind: "scale", stepGrams: scaleStepGrams });
  if (millilitres === undefined) {
    const liquid = product.state === "liquid";
    return unusable({
      code: "measure-missing",
      path: liquid ? "syringe" : "scale",
      message: `Nothing was named to measure ${product.name} with: it is a ${product.state}.`,
      expected: liquid ? "a syringe or a scale" : "a scale, spoons or a scoop",
      received: Object.keys(measures).length === 0 ? "nothing" : "measures for other products",
      hint: liquid ? 'add --syringe "1 mL" or --scale "1 g"' : 'add --scale "1 g"',
    });
  }
  return unusable({
    code: "density-missing",
    path: kind,
    message: `What a spoonful or millilitre of ${product.name} weighs is not known.`,
    expected: "a product with a density, or a scale beside the spoons",
    received: `no density for ${product.id}`,
    hint: 'add --scale "1 g", or give the product a density in the shelf file (weigh ten level spoons)',
  });
}
