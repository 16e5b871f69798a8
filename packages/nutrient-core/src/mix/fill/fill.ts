import type { Measure } from "../shape/measure.ts";
import type { Section } from "../shape/section.ts";

/** One line of what is to be filled: so many beds, pots or ridges of one shape and size. */
export interface Fill {
  /** One of them in the grower's own words, without its count. */
  readonly written: string;
  /** One of them as it was understood, sizes in metres and litres, the outline of a mound named. */
  readonly label: string;
  readonly kind: "bed" | "pot" | "ridge";
  readonly count: number;
  /** Litres of mix that one of them takes. */
  readonly volume: Measure;
  /** Square metres that one of them covers, seen from above; unknown for a pot of which only the litres are known. */
  readonly area?: Measure;
  /** How high the mix stands, in metres, where it is known: what decides air and water in a drained pot. */
  readonly heightMetres?: number;
  /** Plants in one of them, where the grower said how they stand. */
  readonly plants?: Measure;
  /** Cut across, for a drawing; unknown where the sizes do not tell. */
  readonly section?: Section;
  /** What deserves a word of caution. */
  readonly notes?: readonly ("trade-pot" | "drainage-layer" | "layer")[];
}
