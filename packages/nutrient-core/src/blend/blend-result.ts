import type { BothForms } from "../supply/both-forms.ts";
import type { DeliveredRanges } from "../supply/range.ts";
import type { Triple } from "../supply/ratio.ts";
import type { MeasureKind } from "../supply/weigh-measures.ts";
import type { BlendProblem } from "./engine/problem.ts";
import type { Certificate, ReachedBlend } from "./engine/solution.ts";
import type { ReachableSegment } from "./square-method.ts";
import type { BlendTanks } from "./tanks.ts";

export interface BlendAmount {
  readonly product: string;
  readonly massGrams: number;
  /** Fraction by mass of the batch, filler included. */
  readonly share: number;
  readonly volumeMillilitres?: number;
  readonly cost?: number;
}

/** How one wanted nutrient came out. */
export interface Residual {
  readonly nutrient: string;
  /** In the form and basis that was asked for: ppm, g/m2, g/m3, or percent of the batch. */
  readonly wanted: number;
  readonly delivered: number;
  /** Delivered over wanted, less one; null where nothing was wanted. */
  readonly relativeMiss: number | null;
  /** Whether it lies within what counts as met. */
  readonly met: boolean;
}

export interface WeighedAmount {
  readonly product: string;
  readonly massGrams: number;
  readonly measure: MeasureKind;
  /** Whole steps of the measure. */
  readonly steps: number;
  readonly stepGrams: number;
  /** Where it is measured by volume. */
  readonly volumeMillilitres?: number;
}

/** The blend in amounts that can be measured, and what that costs in exactness. */
export interface WeighedBlend {
  /** Of the whole blend, or of a full tank where stocks are made. */
  readonly amounts: readonly WeighedAmount[];
  readonly residuals: readonly Residual[];
  /** Root of the sum of weighted squared relative misses. */
  readonly miss: number;
  /** The same for the exact blend, and for each product rounded by itself. */
  readonly exactMiss: number;
  readonly roundedEachMiss: number;
  /** Whether every target is still met. */
  readonly met: boolean;
  /** False when the search was cut off, so that a better set may exist. */
  readonly complete: boolean;
}

/** Everything that proves the amounts; `checkBlendCertificate` verifies it without the solver. */
export interface BlendCertificate extends Certificate {
  /** What was solved. In a JSON document a missing limit is null. */
  readonly problem: BlendProblem;
  readonly solution: Omit<ReachedBlend, "certificate">;
}

export interface BlendResult {
  readonly status: "met" | "closest";
  readonly amounts: readonly BlendAmount[];
  readonly totalGrams: number;
  /** Inert material that makes up a batch of a stated grade. */
  readonly fillerGrams?: number;
  /** Percent N-P2O5-K2O of the batch. */
  readonly grade: Triple;
  readonly ratio: Triple;
  readonly deliveredPpm?: BothForms;
  readonly deliveredGramsPerSquareMetre?: BothForms;
  readonly deliveredGramsPerCubicMetre?: BothForms;
  readonly ecMilliSiemensPerCm?: number;
  /** Lowest and highest the conductivity can be, where only a grade is known. */
  readonly ecRange?: readonly [number, number];
  readonly residuals: readonly Residual[];
  /** In a grower's words: what limits the blend, and what would mend it. */
  readonly explanation: readonly string[];
  readonly cost?: number;
  /** Between which limits each nutrient really lies, in the delivered field's unit (a batch: grams in the batch). */
  readonly range: DeliveredRanges;
  readonly weighed?: WeighedBlend;
  /** As stock solutions. */
  readonly stock?: BlendTanks;
  /** For two products: what they can reach. */
  readonly reachable?: ReachableSegment;
  readonly certificate: BlendCertificate;
}
