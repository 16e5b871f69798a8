import { answer, gatherList, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Problem } from "../outcome/problem.ts";
import { mayBeSpooned, NOT_BY_SPOON } from "../product/not-by-spoon.ts";
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
  if (millilitres === undefined) return unusable(nothingFor(product, measures));
  return unusable(weightUnknown(product, kind));
}

/** No named measure suits the product. */
function nothingFor(product: Product, { spoons, syringeStepMillilitres }: Measures): Problem {
  const { name, state, hazards } = product;
  const received = spoons ? `${spoons.name} spoons` : syringeStepMillilitres === undefined ? "a scoop" : "a syringe";
  if (state === "liquid") {
    return {
      code: "measure-missing",
      path: "syringe",
      message: `${name} is a liquid, and ${spoons ? "level spoons are" : "a scoop is"} for powders.`,
      expected: "a syringe or a measuring jug, or a scale",
      received,
      hint: 'add --syringe "1 mL", or --scale "1 g"',
    };
  }
  const unfit = hazards.filter((hazard) => NOT_BY_SPOON.has(hazard)).map((hazard) => hazard.replaceAll("-", " "));
  if (spoons && unfit.length > 0) {
    return {
      code: "measure-missing",
      path: "scale",
      message: `${name} is nothing for a kitchen spoon (${unfit.join(", ")}).`,
      expected: "a scale, or a scoop that is used for nothing else",
      received,
      hint: 'add --scale "1 g": the other products still go by the spoon',
    };
  }
  return {
    code: "measure-missing",
    path: "scale",
    message: `${name} is a solid, and a syringe is for liquids.`,
    expected: "a scale, spoons or a scoop",
    received,
    hint: 'add --scale "1 g"',
  };
}

/** A measure of volume suits the product, but nobody said what that volume of it weighs. */
function weightUnknown({ id, name, state, origin }: Product, kind: MeasureKind): Problem {
  const isLiquid = state === "liquid";
  // 48 g in ten metric teaspoons: only an example of how it is written.
  const density = isLiquid ? "density: 1.2 kg/L" : "density: 48 g / 50 mL";
  const entry = origin === "shelf" ? `its entry "${id}" in the shelf file` : "an entry for it in the shelf file";
  const found = isLiquid
    ? "take its density from the label or the safety sheet"
    : "weigh ten level metric teaspoons (50 mL) of it";
  return {
    code: "density-missing",
    path: kind,
    message: `What a ${isLiquid ? "millilitre" : kind === "scoop" ? "scoop" : "spoonful"} of ${name} weighs is not known.`,
    expected: `the density of ${name}${isLiquid ? "" : " as it lies in a spoon"}, or a scale`,
    received: `no density for ${id}`,
    hint: `${found} and write it into ${entry}, such as "${density}"; or add --scale "1 g" to weigh it`,
  };
}
