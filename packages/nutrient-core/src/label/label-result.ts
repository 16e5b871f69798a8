import type { NitrogenForm, Nutrient, OxideName } from "../element/nutrient.ts";
import type { Product } from "../product/product.ts";
import type { BothForms } from "../supply/both-forms.ts";
import type { Triple } from "../supply/ratio.ts";

export interface LabelInput {
  readonly product: Product;
  /** The amount whose contents are asked for, in grams, more than 0. */
  readonly massGrams?: number;
}

/** A mass of one form. */
export interface HeldMass {
  readonly massGrams: number;
}

/** Percent by mass under the names of labels: oxides where labels print them, elements for the rest. */
export type LabelPercent = Readonly<Partial<Record<Nutrient | OxideName, number>>>;

export interface LabelResult {
  readonly product: string;
  readonly name: string;
  /** Percent by mass of each element; N, P and K always. */
  readonly elementPercent: Readonly<Partial<Record<Nutrient, number>>>;
  /** The same in the forms of labels: N, P2O5, K2O, CaO, MgO, SO3, and the element where labels print it. */
  readonly oxidePercent: LabelPercent;
  /** N : P2O5 : K2O, divided by the smallest part that is not 0. */
  readonly ratio: Triple;
  /** Percent by mass of the product that is nitrogen of each form, where known. */
  readonly nitrogenFormsPercent?: Readonly<Partial<Record<NitrogenForm, number>>>;
  readonly formula?: string;
  /** Of the pure substance. */
  readonly molarMassGramsPerMole?: number;
  /** A liquid's, or a solid's loose bulk density. */
  readonly densityKilogramsPerLitre?: number;
  /** Grams in a litre of a liquid whose density is known, elements and oxides. */
  readonly gramsPerLitre?: BothForms;
  /** Grams that dissolve in a litre of added water at 20 °C. */
  readonly solubilityGramsPerLitre?: number;
  /** Lowest and highest share of the nitrogen that a crop can use in the first season. */
  readonly firstSeasonNitrogenShare?: readonly [number, number];
  readonly massGrams?: number;
  /** What that mass holds: elements, nitrogen forms and oxides. */
  readonly contents?: Readonly<Record<string, HeldMass>>;
  /** Id of the source of the analysis; null when it is the grower's own label. */
  readonly source: string | null;
}
