import type { Basis } from "./basis.ts";

/** A unit in which a target can be written. */
export interface RateUnit {
  /** As it is usually written. */
  readonly shown: string;
  /** Other spellings, lower case without spaces. */
  readonly names: readonly string[];
  readonly basis: Basis;
  /** How many of the basis' own unit (mg/L, g/m2, g/m3) one of these is; for moles, how many millimoles per litre. */
  readonly factor: number;
  readonly perMole?: boolean;
  /** The unit for a unit-aware evaluator. */
  readonly expression: string;
}

const POUND_G = 453.59237;
const OUNCE_G = POUND_G / 16;
const FOOT_M2 = 0.3048 ** 2;
const YARD_M2 = 0.9144 ** 2;
const YARD_M3 = 0.9144 ** 3;
const ACRE_M2 = 4046.8564224;
const US_GALLON_L = 3.785411784;

/** Words and their usual signs, so that "pounds per 1000 square feet" is "lb/1000sqft". */
const SIGNS: readonly (readonly [words: RegExp, sign: string])[] = [
  [/\bper\b/g, "/"],
  [/\s+/g, ""],
  [/(\d),(?=\d{3})/g, "$1"],
  [/^(pounds?|lbs)(?=\/)/, "lb"],
  [/^ounces?(?=\/)/, "oz"],
  [/^(kilograms?|kgs)(?=\/)/, "kg"],
  [/^grams?(?=\/)/, "g"],
  [/sq(uare)?\.?(feet|foot|ft)\.?$/, "sqft"],
  [/sq(uare)?\.?(yards?|yd)\.?$/, "sqyd"],
  [/sq(uare)?\.?(met(er|re)s?|m)$/, "m2"],
  [/cu(bic)?\.?(yards?|yd)\.?$/, "cuyd"],
  [/cu(bic)?\.?(met(er|re)s?|m)$/, "m3"],
  [/(hectares?)$/, "ha"],
  [/acres$/, "acre"],
];

function bareSpelling(text: string): string {
  return SIGNS.reduce((spelling, [words, sign]) => spelling.replace(words, sign), text.toLowerCase());
}

/** Grams spread on so many square metres. */
function onArea(grams: number, squareMetres: number, ...names: readonly string[]): RateUnit {
  return {
    shown: names[0]!,
    names: names.map(bareSpelling),
    basis: "squareMetre",
    factor: grams / squareMetres,
    expression: `${grams} g / (${squareMetres} m^2)`,
  };
}

function inWater(milligrams: number, litres: number, ...names: readonly string[]): RateUnit {
  return {
    shown: names[0]!,
    names: names.map(bareSpelling),
    basis: "litre",
    factor: milligrams / litres,
    expression: `${milligrams} mg / (${litres} L)`,
  };
}

function inMix(grams: number, cubicMetres: number, ...names: readonly string[]): RateUnit {
  return {
    shown: names[0]!,
    names: names.map(bareSpelling),
    basis: "cubicMetre",
    factor: grams / cubicMetres,
    expression: `${grams} g / (${cubicMetres} m^3)`,
  };
}

/** Every unit of a target, by exact definition (pound, foot and acre of 1959; US gallon of 231 cubic inches). */
export const RATE_UNITS: readonly RateUnit[] = [
  inWater(1, 1, "ppm", "mg/l", "mg/litre", "mg/liter"),
  inWater(1000, 1, "g/L", "g/litre", "g/liter"),
  { shown: "mmol/L", names: ["mmol/l", "mm", "mmol"], basis: "litre", factor: 1, perMole: true, expression: "" },
  {
    shown: "umol/L",
    names: ["umol/l", "µmol/l", "μmol/l"],
    basis: "litre",
    factor: 0.001,
    perMole: true,
    expression: "",
  },
  inWater(OUNCE_G * 1000, 100 * US_GALLON_L, "oz/100 US gal", "oz/100gal"),
  inWater(POUND_G * 1000, 100 * US_GALLON_L, "lb/100 US gal", "lb/100gal"),
  onArea(1, 1, "g/m2", "g/sqm", "g/m^2", "g/m²"),
  onArea(1000, 10_000, "kg/ha", "kg/hectare"),
  onArea(1000, 1, "kg/m2", "kg/m²"),
  onArea(POUND_G, ACRE_M2, "lb/acre", "lb/ac", "lbs/acre"),
  onArea(POUND_G, 1000 * FOOT_M2, "lb/1000 sqft", "lb/1000ft2", "lb/1,000sqft"),
  onArea(POUND_G, 100 * FOOT_M2, "lb/100 sqft", "lb/100ft2"),
  onArea(OUNCE_G, 100 * FOOT_M2, "oz/100 sqft", "oz/100ft2"),
  onArea(OUNCE_G, 1000 * FOOT_M2, "oz/1000 sqft", "oz/1000ft2"),
  onArea(OUNCE_G, FOOT_M2, "oz/sq ft", "oz/ft2"),
  onArea(OUNCE_G, YARD_M2, "oz/sq yd", "oz/yd2"),
  inMix(1, 1, "g/m3", "g/m^3", "g/m³", "g/cum"),
  inMix(1000, 1, "kg/m3", "kg/m³", "kg/m^3"),
  inMix(POUND_G, YARD_M3, "lb/cu yd", "lb/yd3"),
  inMix(OUNCE_G, YARD_M3, "oz/cu yd", "oz/yd3"),
];

/** The unit that a written rate means, whatever its case and spacing; undefined when there is none. */
export function rateUnitNamed(text: string): RateUnit | undefined {
  const name = bareSpelling(text);
  return RATE_UNITS.find(({ names }) => names.includes(name));
}
