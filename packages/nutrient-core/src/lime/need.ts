import type { WorkingLine } from "../outcome/working.ts";

/** What the soil asks for, before the material and the depth: of calcium carbonate, or of sulfur. */
export interface Need {
  /** g of pure calcium carbonate, finely ground, or of pure sulfur, per m2. */
  readonly gramsPerSquareMetre: number;
  /** Lowest and highest by what is published. */
  readonly range: readonly [number, number];
  /** The depth that the figure is for, metres. */
  readonly depthMetres: number;
  /** Null where nothing is to be moved, so that no source was asked. */
  readonly source: string | null;
  readonly working: readonly WorkingLine[];
}

/** Six inches: printed, or the usual one where a source in pounds and acres says nothing (common practice). */
export const SIX_INCHES = 0.1524;
/** Fifteen centimetres: printed by one source on sulfur, the usual one for the others. */
export const FIFTEEN_CENTIMETRES = 0.15;

/** The lowest and highest of a figure and of what it is compared with. */
export function around(value: number, others: readonly number[]): readonly [number, number] {
  return [Math.min(value, ...others), Math.max(value, ...others)];
}
