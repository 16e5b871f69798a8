/** What an amount of nutrient is spread over: the denominator of the one linear map. */
export type Basis = "litre" | "squareMetre" | "cubicMetre";

/** A basis and how much of it there is: litres of water, square metres of bed, cubic metres of mix. */
export interface Extent {
  readonly basis: Basis;
  /** In litres, square metres or cubic metres; more than zero. */
  readonly amount: number;
}

interface BasisWords {
  /** How much of the basis, in an expression. */
  readonly extentUnit: string;
  /** Unit of an amount of nutrient per unit of the basis. */
  readonly rateUnit: string;
  /** Milligrams or grams of nutrient, per gram: a litre is fed in milligrams, an area and a volume of mix in grams. */
  readonly perGram: number;
}

export const BASIS: Readonly<Record<Basis, BasisWords>> = {
  litre: { extentUnit: "L", rateUnit: "mg/L", perGram: 1000 },
  squareMetre: { extentUnit: "m^2", rateUnit: "g/m^2", perGram: 1 },
  cubicMetre: { extentUnit: "m^3", rateUnit: "g/m^3", perGram: 1 },
};

/** One square metre: an extent that leaves grams as they are, for batches that are spread on nothing. */
export const unitExtent: Extent = { basis: "squareMetre", amount: 1 };
