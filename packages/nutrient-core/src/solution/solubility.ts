import type { Amount } from "../supply/supply.ts";

/**
 * The room that a dissolved gram takes, mL: a quarter to three quarters by salt (from memory, from the densities of
 * saturated solutions); the middle stands for all.
 */
const MILLILITRES_PER_DISSOLVED_GRAM = 0.5;

/** Whether one product of a stock dissolves, and how much of the room for it is used. */
export interface Dissolving {
  readonly product: string;
  readonly gramsPerLitre: number;
  /** The most that a litre of finished solution holds of it at 20 °C. */
  readonly mostGramsPerLitre: number;
  /** 0 to 1, and above 1 where some stays undissolved. */
  readonly fractionUsed: number;
  readonly dissolves: boolean;
}

/**
 * Whether each salt dissolves in so much solution at 20 °C, each by itself. (Together with another that shares an ion,
 * less does.)
 *
 * Tables give grams per litre of added water, but a stock is made up to its volume: a litre of solution holds
 * s / (1 + 0.5 mL/g x s) grams, where s is the table's figure.
 *
 * @param amounts Products and grams in the same tank. Products without a published solubility are left out.
 * @param litres Finished volume, more than zero.
 * @example
 * dissolves([{ product: materialById("potassium-sulfate"), massGrams: 90 }], 1)[0].fractionUsed  // => 0.85...
 */
export function dissolves(amounts: readonly Amount[], litres: number): readonly Dissolving[] {
  return amounts.flatMap(({ product, massGrams }) => {
    const perLitreOfWater = product.solubilityGramsPerLitre;
    if (perLitreOfWater === undefined || perLitreOfWater <= 0) return [];
    const gramsPerLitre = massGrams / litres;
    const mostGramsPerLitre = perLitreOfWater / (1 + (perLitreOfWater * MILLILITRES_PER_DISSOLVED_GRAM) / 1000);
    const fractionUsed = gramsPerLitre / mostGramsPerLitre;
    return [{ product: product.name, gramsPerLitre, mostGramsPerLitre, fractionUsed, dissolves: fractionUsed <= 1 }];
  });
}
