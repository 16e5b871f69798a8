import type { Content } from "../element/content.ts";
import type { Nutrient } from "../element/nutrient.ts";

/**
 * What one gram of a product holds of each nutrient, in grams: elements, and the forms of nitrogen where they
 * are known. Oxides, hydrates and densities were settled before, when the label became this.
 */
export type Composition = Readonly<Partial<Record<Nutrient, number>>>;

/** What a product can do to people, places or other products, each with a caution of its own. */
export const HAZARDS = [
  "oxidiser",
  "acid",
  "caustic",
  "eye-damage",
  "harmful-if-swallowed",
  "may-harm-fertility",
  "toxic-to-water-life",
  "dust",
  "flammable-dust",
  "pathogens",
  "sale-restricted",
] as const;
export type Hazard = (typeof HAZARDS)[number];

/** Where a product's numbers come from. */
export type ProductOrigin = "grade" | "formula" | "material" | "shelf";

/** A fertilizer, salt, meal or manure, ready for arithmetic. */
export interface Product {
  readonly id: string;
  readonly name: string;
  readonly origin: ProductOrigin;
  readonly state: "solid" | "liquid";
  readonly composition: Composition;
  /** The analysis as it is printed, in its own forms, shares by mass. */
  readonly printed: readonly Content[];
  /** The pure substance behind it, where there is one: `KNO3`. */
  readonly formula?: string;
  /** A liquid's density, or a solid's loose bulk density as it lies in a spoon, kg/L. */
  readonly densityKilogramsPerLitre?: number;
  /**
   * Set for a liquid whose label is by volume and whose density nobody said. Its density is then a stand-in of 1 kg/L,
   * so that its composition is grams in a millilitre: the stand-in cancels out of everything that is reckoned from
   * millilitres, and no mass of the product may be shown.
   */
  readonly massUnknown?: true;
  /** Lowest and highest published value of that density. */
  readonly densityRange?: readonly [number, number];
  /** Grams that dissolve in a litre of water at 20 °C. */
  readonly solubilityGramsPerLitre?: number;
  /** Solids that leave a residue (superphosphate, meals): not for stock tanks or fine roses. */
  readonly leavesResidue?: boolean;
  /** Share of an organic product's nitrogen that a crop can use in the first season, lowest and highest published. */
  readonly firstSeasonNitrogenShare?: readonly [number, number];
  readonly hazards: readonly Hazard[];
  /** Id of the source of the analysis; null when the grower gave it. */
  readonly source: string | null;
  readonly pricePerGram?: number;
  /** As it is sold, the usual pack first. */
  readonly packs?: readonly Pack[];
  readonly stockGrams?: number;
}

/** One pack of a product as it is sold. */
export interface Pack {
  readonly massGrams: number;
  /** Of the whole pack, in the grower's money. */
  readonly price?: number;
}

/** Mass fraction of a nutrient in a product, 0 where it holds none. */
export function fractionOf(product: Product, nutrient: Nutrient): number {
  return product.composition[nutrient] ?? 0;
}
