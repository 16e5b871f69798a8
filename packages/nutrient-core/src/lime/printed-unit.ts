import type { Reading } from "./table.ts";

/** A rate's unit as a table prints it, by the exact pound, foot and acre (nist-handbook-44). */
export interface PrintedUnit {
  readonly words: string;
  /** g/m2 in one of it. */
  readonly gramsPerSquareMetre: number;
  /** The same as an expression, to be multiplied by the printed number. */
  readonly expression: string;
}

const POUND_GRAMS = 453.59237;
const SQUARE_FOOT_SQUARE_METRES = 0.09290304;
const ACRE_SQUARE_METRES = 4046.8564224;

export const POUNDS_PER_100_SQUARE_FEET: PrintedUnit = {
  words: "lb/100 sq ft",
  gramsPerSquareMetre: POUND_GRAMS / (100 * SQUARE_FOOT_SQUARE_METRES),
  expression: `${POUND_GRAMS} g / (100 * ${SQUARE_FOOT_SQUARE_METRES} m^2)`,
};
export const POUNDS_PER_1000_SQUARE_FEET: PrintedUnit = {
  words: "lb/1000 sq ft",
  gramsPerSquareMetre: POUND_GRAMS / (1000 * SQUARE_FOOT_SQUARE_METRES),
  expression: `${POUND_GRAMS} g / (1000 * ${SQUARE_FOOT_SQUARE_METRES} m^2)`,
};
export const POUNDS_PER_ACRE: PrintedUnit = {
  words: "lb/acre",
  gramsPerSquareMetre: POUND_GRAMS / ACRE_SQUARE_METRES,
  expression: `${POUND_GRAMS} g / (${ACRE_SQUARE_METRES} m^2)`,
};
/** The short ton of 2,000 pounds. */
export const US_TONS_PER_ACRE: PrintedUnit = {
  words: "US tons an acre",
  gramsPerSquareMetre: (2000 * POUND_GRAMS) / ACRE_SQUARE_METRES,
  expression: `2000 * ${POUND_GRAMS} g / (${ACRE_SQUARE_METRES} m^2)`,
};
export const KILOGRAMS_PER_HECTARE: PrintedUnit = {
  words: "kg/ha",
  gramsPerSquareMetre: 0.1,
  expression: "1000 g / (10000 m^2)",
};
export const GRAMS_PER_SQUARE_METRE: PrintedUnit = {
  words: "g/m2",
  gramsPerSquareMetre: 1,
  expression: "1 g / (1 m^2)",
};

/** What was read from a table, in g/m2, as an expression. */
export const inUnit = ({ expression }: Reading, unit: PrintedUnit): string => `${expression} * ${unit.expression}`;
