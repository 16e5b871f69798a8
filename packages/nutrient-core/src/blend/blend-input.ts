import type { ContentForm, Nutrient } from "../element/nutrient.ts";
import type { LabelRule } from "../product/label-tolerance.ts";
import type { Product } from "../product/product.ts";
import type { UnitHabit } from "../quantity/present.ts";
import type { Extent } from "../supply/basis.ts";
import type { Triple } from "../supply/ratio.ts";
import type { Stock } from "../supply/read-stock.ts";
import type { Delivered } from "../supply/supply.ts";
import type { Wanted } from "../supply/target.ts";
import type { Measures } from "../supply/weigh-measures.ts";
import type { BlendAim, Direction } from "./engine/problem.ts";

/** One nutrient of a target, and how exactly it is meant. */
export interface BlendTarget extends Wanted {
  /** Which side counts as a miss: both (`about`, the usual), short only (`at-least`) or over only (`at-most`). */
  readonly direction?: Direction;
  /** How far off, as a share of the wanted rate, still counts as met; the blend's own `within` when left out. */
  readonly within?: number;
  /** How much a relative miss of it matters beside the others, > 0; 1 when left out. */
  readonly weight?: number;
}

/** What a blend is made for. */
export type BlendPurpose =
  /** A batch whose N:P2O5:K2O stands in this ratio. */
  | { readonly kind: "ratio"; readonly ratio: Triple; readonly batchGrams: number }
  /** A batch of this grade, in percent N-P2O5-K2O; what the products do not fill is filler. */
  | { readonly kind: "grade"; readonly grade: Triple; readonly batchGrams: number }
  /** Rates in water, on an area or in a mix. */
  | { readonly kind: "target"; readonly wanted: readonly BlendTarget[]; readonly extent: Extent };

/** A ceiling that is kept whatever else is missed; what is there already counts towards it. */
export type Limit =
  | {
      readonly kind: "nutrient";
      readonly nutrient: Nutrient;
      /** Of the element, in the basis' rate unit. */
      readonly rate: number;
      readonly asked: { readonly form: ContentForm; readonly rate: number };
    }
  /** A part of another nutrient: ammonium nitrogen as a share of all nitrogen. */
  | { readonly kind: "share"; readonly nutrient: Nutrient; readonly of: Nutrient; readonly share: number }
  /** Of the feed at 25 °C, above the water's own. */
  | { readonly kind: "conductivity"; readonly milliSiemensPerCm: number };

/** How much of one product may be used, in grams of the whole blend. */
export interface UseLimit {
  readonly product: string;
  readonly leastGrams?: number;
  readonly mostGrams?: number;
  /** Either none of it, or at least so much: less is not worth weighing. */
  readonly leastIfUsedGrams?: number;
}

export interface BlendInput {
  readonly products: readonly Product[];
  readonly purpose: BlendPurpose;
  /** Rates already there, on the purpose's basis. */
  readonly already: Delivered;
  /** How far off, as a share of the wanted rate, still counts as met: 0 for exact. */
  readonly within: number;
  readonly limits?: readonly Limit[];
  readonly uses?: readonly UseLimit[];
  /** Least squares, then the cheapest where every price is known, when left out. */
  readonly aim?: BlendAim;
  /** Made as stock solutions; only for a target in water. */
  readonly stock?: Stock;
  /** What there is to measure with; exact amounts only when left out. */
  readonly measures?: Measures;
  /** In whose units the explanation speaks of amounts and rates; metric when left out. */
  readonly explainedIn?: UnitHabit;
  /** Whose rule the range of the label is taken from; `us` when left out. */
  readonly labelRule?: LabelRule;
}
