/**
 * The blend problem in pure numbers. Nothing here knows a product, a nutrient's name or a unit: the caller decides
 * what a row is (a nutrient, a sum of nutrients, a ratio written as a difference) and what the basis is (a litre of
 * water, a square metre, a batch), and only has to use it consistently.
 */

/** Which side of the wanted amount counts as a miss. */
export type Direction = "about" | "at-least" | "at-most";

/** What one nutrient (one row) should come to. */
export interface NutrientTarget {
  /** Wanted amount per basis unit, any finite number; offsets (water, compost) count towards it. */
  readonly wanted: number;
  /** Default `about`: both sides count. `at-least` never minds more, `at-most` never minds less. */
  readonly direction?: Direction;
  /** How far below the wanted amount still counts as met, in the row's own unit, >= 0. Default 0. */
  readonly bandBelow?: number;
  /** How far above the wanted amount still counts as met, in the row's own unit, >= 0. Default 0. */
  readonly bandAbove?: number;
  /** How much a relative miss of this row matters beside the others, > 0. Default 1. */
  readonly weight?: number;
  /** The amount that makes a relative miss of 1, > 0. Default: |wanted|; where that is 0, the largest |wanted| of all. */
  readonly scale?: number;
}

/** A hard ceiling: the sum of coefficient times grams stays at or below the limit (offsets already taken off). */
export interface LinearLimit {
  /** One coefficient per product, per gram; negative ones allow shares such as `ammonium - 0.2 * nitrogen <= 0`. */
  readonly coefficients: readonly number[];
  readonly limit: number;
}

/**
 * How a blend is judged, in order. First every band is to be met; where that cannot be, the miss is made fair:
 * `squares` makes the sum of weight * (relative miss)^2 least, `largest` the largest weight * relative miss.
 * Then, without giving any of that up: `nearest` comes as near the wanted amounts as it can, `cost` spends least,
 * `fewest` uses the fewest products and comes as near as it can with those.
 * What is still undecided goes to the amounts asked (rows that do not mind more get no more of what costs no other row
 * anything), then to the products named first (see `face.ts`).
 */
export interface BlendAim {
  readonly miss: "squares" | "largest";
  readonly next: "nearest" | "cost" | "fewest";
}

export interface BlendProblem {
  /** supply[i][j]: what one gram of product j adds to row i, per basis unit. */
  readonly supply: readonly (readonly number[])[];
  /** One per row of `supply`. */
  readonly targets: readonly NutrientTarget[];
  /** What is there already, per row. Default 0. */
  readonly offsets?: readonly number[];
  readonly ceilings?: readonly LinearLimit[];
  /** Least grams of each product, >= 0. Default 0. */
  readonly lower?: readonly number[];
  /** Most grams of each product (stock on hand); Infinity where there is no limit. Default Infinity. */
  readonly upper?: readonly number[];
  /** Grams below which a product is not worth weighing: it is left out, or used at this much or more. Default 0. */
  readonly smallestIfUsed?: readonly number[];
  /** Grams that all products together must come to (a batch). */
  readonly total?: number;
  /** Money per gram of each product, >= 0; needed when the aim is `cost`. */
  readonly prices?: readonly number[];
  /** Default `{ miss: "squares", next: "nearest" }`. */
  readonly aim?: BlendAim;
}

export const DEFAULT_AIM: BlendAim = { miss: "squares", next: "nearest" };

/** The least delivered amount that counts as met. */
export function bandLow(target: NutrientTarget): number {
  return target.direction === "at-most" ? Number.NEGATIVE_INFINITY : target.wanted - (target.bandBelow ?? 0);
}

/** The largest delivered amount that counts as met. */
export function bandHigh(target: NutrientTarget): number {
  return target.direction === "at-least" ? Number.POSITIVE_INFINITY : target.wanted + (target.bandAbove ?? 0);
}

/** What the answer is drawn up to once every band is met: the wanted amount, unless less is not minded. */
export function idealLow(target: NutrientTarget): number {
  return target.direction === "at-most" ? Number.NEGATIVE_INFINITY : target.wanted;
}

/** What the answer is drawn down to once every band is met: the wanted amount, unless more is not minded. */
export function idealHigh(target: NutrientTarget): number {
  return target.direction === "at-least" ? Number.POSITIVE_INFINITY : target.wanted;
}

/** The amount that makes a relative miss of 1, for each row. */
export function missScales(targets: readonly NutrientTarget[]): number[] {
  let largest = 0;
  for (const { wanted } of targets) largest = Math.max(largest, Math.abs(wanted));
  const scales: number[] = [];
  for (const { wanted, scale } of targets) scales.push(scale ?? (Math.abs(wanted) || largest || 1));
  return scales;
}

/** A relative miss smaller than this is rounding: the row is met. The engine and its report must say the same. */
export const MET_TOLERANCE = 1e-9;

/** The amount by which `value` lies outside the range: negative when short, positive when over, 0 inside. */
export function missOf(value: number, low: number, high: number): number {
  if (value < low) return value - low;
  if (value > high) return value - high;
  return 0;
}
