import type { Product } from "../product/product.ts";
import type { BothForms } from "../supply/both-forms.ts";
import type { FedArea } from "../supply/read-area.ts";
import type { Amendment } from "./amendment.ts";
import type { Soil } from "./read-soil.ts";
import type { TestMethod } from "./soil-test.ts";

export interface LimeInput {
  readonly product: Product;
  readonly amendment: Amendment;
  readonly area: FedArea;
  /** Measured in water. */
  readonly fromPh: number;
  /** Above it for a lime, below it for sulfur, or the same. */
  readonly toPh: number;
  readonly soil: Soil;
  /** How deep it is mixed in; the source's own depth where nothing is said. */
  readonly depthMetres?: number;
}

export interface LimeAmount {
  readonly product: string;
  readonly massGrams: number;
  readonly gramsPerSquareMetre: number;
  /** Lowest and highest by what is published. */
  readonly rangeGrams: readonly [number, number];
  readonly volumeMillilitres?: number;
  readonly cost?: number;
}

/** One of the times that it is spread. */
export interface LimeApplication {
  /** Months after the first one: advice, to be settled by a new test each time. */
  readonly month: number;
  readonly massGrams: number;
  readonly gramsPerSquareMetre: number;
}

export interface LimeResult {
  readonly amounts: readonly LimeAmount[];
  /** Of the material, all goes together. */
  readonly gramsPerSquareMetre: number;
  readonly rangeGramsPerSquareMetre: readonly [number, number];
  readonly areaSquareMetres: number;
  readonly depthMetres: number;
  readonly applications: readonly LimeApplication[];
  /** What the soil asks for, whatever the material: pure, finely ground calcium carbonate, or sulfur; g/m2. */
  readonly needed: { readonly of: "calcium carbonate" | "sulfur"; readonly gramsPerSquareMetre: number };
  /** Of a lime, percent by mass. */
  readonly calciumCarbonateEquivalentPercent?: number;
  /** Of a lime whose fineness was said: how much of it works in the first year. */
  readonly finenessPercent?: number;
  /** By which figure it was worked out, and the id of its source: null where the goal is reached, and none was asked. */
  readonly by: TestMethod | "texture";
  readonly source: string | null;
  readonly deliveredGramsPerSquareMetre: BothForms;
}
