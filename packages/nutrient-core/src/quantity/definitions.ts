/**
 * Every measure a grower may write, by its exact legal definition.
 *
 * Inside the library there is one unit per dimension: gram, litre, metre, square metre, day.
 * A name that two countries use for two sizes is never bare here: the US gallon and the
 * imperial gallon have different ids, and `shared` marks the names that need a system word.
 *
 * Sources: international yard and pound agreement of 1959 (yard 0.9144 m, pound 0.45359237 kg);
 * US gallon 231 cubic inches, US bushel 2150.42 cubic inches (NIST Handbook 44, appendix C);
 * imperial gallon 4.54609 L (UK Weights and Measures Act 1985). Everything else is derived.
 */

export type Dimension = "length" | "area" | "volume" | "mass" | "time";

/** The one unit in which each dimension is kept, as a unit-aware evaluator writes it. */
export const KEPT_IN: Readonly<Record<Dimension, string>> = {
  length: "m",
  area: "m^2",
  volume: "L",
  mass: "g",
  time: "day",
};

export type MeasureSystem = "US" | "imperial" | "metric" | "Australian";

export interface UnitDefinition {
  /** Letters and digits only: also its name inside expressions. */
  readonly id: string;
  readonly dimension: Dimension;
  /** How many of the dimension's kept unit one of these is. Exact. */
  readonly factor: number;
  /** As it is said, singular: "US gallon". */
  readonly name: string;
  readonly plural: string;
  /** Names, lower case, that mean this unit and nothing else. */
  readonly names: readonly string[];
  /** Names that need a system word in front; a bare one is read as the US measure, and the answer says so. */
  readonly shared?: { readonly system: MeasureSystem; readonly names: readonly string[] };
}

const FOOT_M = 0.3048;
const INCH_M = FOOT_M / 12;
const YARD_M = 0.9144;
const POUND_G = 453.59237;
const CUBIC_INCH_L = 0.016387064;
const US_GALLON_L = 231 * CUBIC_INCH_L;
const IMPERIAL_GALLON_L = 4.54609;
const US_BUSHEL_L = 2150.42 * CUBIC_INCH_L;

function unit(
  dimension: Dimension,
  id: string,
  factor: number,
  name: string,
  names: readonly string[],
  plural = `${name}s`,
): UnitDefinition {
  return { id, dimension, factor, name, plural, names };
}

function sharedUnit(
  system: MeasureSystem,
  dimension: Dimension,
  factor: number,
  word: string,
  names: readonly string[],
  plural = `${word}s`,
): UnitDefinition {
  const id = `${system}${word}`.replace(/[^A-Za-z]/g, "");
  return {
    id,
    dimension,
    factor,
    name: `${system} ${word}`,
    plural: `${system} ${plural}`,
    names: [],
    shared: { system, names: [word, plural, ...names] },
  };
}

const LENGTHS = [
  unit("length", "millimetre", 0.001, "millimetre", ["mm", "millimeter", "millimeters"]),
  unit("length", "centimetre", 0.01, "centimetre", ["cm", "centimeter", "centimeters"]),
  unit("length", "metre", 1, "metre", ["m", "meter", "meters"]),
  unit("length", "kilometre", 1000, "kilometre", ["km", "kilometer", "kilometers"]),
  unit("length", "inch", INCH_M, "inch", ["in", '"', "″"], "inches"),
  unit("length", "foot", FOOT_M, "foot", ["ft", "'", "′"], "feet"),
  unit("length", "yard", YARD_M, "yard", ["yd", "yds"]),
] as const;

const AREAS = [
  unit("area", "squaremillimetre", 1e-6, "square millimetre", ["mm2", "mm^2", "mm²", "sq mm"]),
  unit("area", "squarecentimetre", 1e-4, "square centimetre", ["cm2", "cm^2", "cm²", "sq cm"]),
  unit("area", "squaremetre", 1, "square metre", ["m2", "m^2", "m²", "sqm", "sq m", "square meter", "square meters"]),
  unit("area", "are", 100, "are", []),
  unit("area", "hectare", 10_000, "hectare", ["ha"]),
  unit("area", "squareinch", INCH_M ** 2, "square inch", ["in2", "in^2", "in²", "sqin", "sq in"], "square inches"),
  unit("area", "squarefoot", FOOT_M ** 2, "square foot", ["ft2", "ft^2", "ft²", "sqft", "sq ft"], "square feet"),
  unit("area", "squareyard", YARD_M ** 2, "square yard", ["yd2", "yd^2", "yd²", "sqyd", "sq yd", "sq yds"]),
  // 4,840 square yards, by definition.
  unit("area", "acre", 4046.8564224, "acre", ["ac"]),
] as const;

const VOLUMES = [
  unit("volume", "microlitre", 1e-6, "microlitre", ["ul", "µl", "μl"]),
  unit("volume", "millilitre", 0.001, "millilitre", ["ml", "milliliter", "milliliters", "cc", "cm3", "cm^3", "cm³"]),
  unit("volume", "centilitre", 0.01, "centilitre", ["cl"]),
  unit("volume", "decilitre", 0.1, "decilitre", ["dl"]),
  unit("volume", "litre", 1, "litre", ["l", "liter", "liters", "dm3", "dm^3", "dm³"]),
  unit("volume", "hectolitre", 100, "hectolitre", ["hl"]),
  unit("volume", "kilolitre", 1000, "kilolitre", ["kl"]),
  unit("volume", "cubicmetre", 1000, "cubic metre", ["m3", "m^3", "m³", "cubic meter", "cubic meters", "cu m", "cum"]),
  unit("volume", "cubicinch", CUBIC_INCH_L, "cubic inch", ["in3", "in^3", "in³", "cu in", "cuin"], "cubic inches"),
  unit("volume", "cubicfoot", CUBIC_INCH_L * 1728, "cubic foot", ["ft3", "ft^3", "ft³", "cu ft", "cuft"], "cubic feet"),
  unit("volume", "cubicyard", CUBIC_INCH_L * 46656, "cubic yard", ["yd3", "yd^3", "yd³", "cu yd", "cuyd", "cu yds"]),
  sharedUnit("US", "volume", US_GALLON_L, "gallon", ["gal", "gals"]),
  sharedUnit("US", "volume", US_GALLON_L / 4, "quart", ["qt", "qts", "liquid quart", "liquid quarts"]),
  sharedUnit("US", "volume", US_GALLON_L / 8, "pint", ["pt", "pts", "liquid pint", "liquid pints"]),
  sharedUnit("US", "volume", US_GALLON_L / 16, "cup", []),
  sharedUnit("US", "volume", US_GALLON_L / 128, "fluid ounce", ["fl oz", "floz"]),
  sharedUnit("US", "volume", US_GALLON_L / 256, "tablespoon", ["tbsp", "tbsps", "tbs"]),
  sharedUnit("US", "volume", US_GALLON_L / 768, "teaspoon", ["tsp", "tsps"]),
  // Dry measures: a US dry quart is 16 % larger than the liquid one.
  unit("volume", "dryquart", US_BUSHEL_L / 32, "US dry quart", ["dry quart", "dry quarts", "dry qt", "us dry qt"]),
  unit("volume", "drypint", US_BUSHEL_L / 64, "US dry pint", ["dry pint", "dry pints", "dry pt", "us dry pt"]),
  unit("volume", "drygallon", US_BUSHEL_L / 8, "US dry gallon", ["dry gallon", "dry gallons", "dry gal"]),
  unit("volume", "peck", US_BUSHEL_L / 4, "US peck", ["peck", "pecks"]),
  sharedUnit("US", "volume", US_BUSHEL_L, "bushel", ["bu"]),
  sharedUnit("imperial", "volume", IMPERIAL_GALLON_L * 8, "bushel", ["bu"]),
  sharedUnit("imperial", "volume", IMPERIAL_GALLON_L, "gallon", ["gal", "gals"]),
  sharedUnit("imperial", "volume", IMPERIAL_GALLON_L / 4, "quart", ["qt", "qts"]),
  sharedUnit("imperial", "volume", IMPERIAL_GALLON_L / 8, "pint", ["pt", "pts"]),
  sharedUnit("imperial", "volume", IMPERIAL_GALLON_L / 16, "cup", []),
  sharedUnit("imperial", "volume", IMPERIAL_GALLON_L / 160, "fluid ounce", ["fl oz", "floz"]),
  // The older kitchen measures: five eighths of an imperial fluid ounce, and a third of that.
  sharedUnit("imperial", "volume", IMPERIAL_GALLON_L / 256, "tablespoon", ["tbsp", "tbsps", "tbs"]),
  sharedUnit("imperial", "volume", IMPERIAL_GALLON_L / 768, "teaspoon", ["tsp", "tsps"]),
  sharedUnit("metric", "volume", 0.25, "cup", []),
  sharedUnit("metric", "volume", 0.015, "tablespoon", ["tbsp", "tbsps", "tbs"]),
  sharedUnit("metric", "volume", 0.005, "teaspoon", ["tsp", "tsps"]),
  sharedUnit("Australian", "volume", 0.02, "tablespoon", ["tbsp", "tbsps", "tbs"]),
] as const;

const MASSES = [
  unit("mass", "microgram", 1e-6, "microgram", ["ug", "µg", "μg"]),
  unit("mass", "milligram", 0.001, "milligram", ["mg"]),
  unit("mass", "gram", 1, "gram", ["g", "gm", "gms"]),
  unit("mass", "kilogram", 1000, "kilogram", ["kg", "kgs", "kilo", "kilos"]),
  unit("mass", "tonne", 1_000_000, "tonne", ["t", "metric ton", "metric tons"]),
  unit("mass", "grain", POUND_G / 7000, "grain", ["gr"]),
  unit("mass", "ounce", POUND_G / 16, "ounce", ["oz", "oz av"]),
  unit("mass", "pound", POUND_G, "pound", ["lb", "lbs"]),
  unit("mass", "stone", POUND_G * 14, "stone", [], "stone"),
  sharedUnit("US", "mass", POUND_G * 100, "hundredweight", ["cwt"], "hundredweight"),
  sharedUnit("imperial", "mass", POUND_G * 112, "hundredweight", ["cwt"], "hundredweight"),
  sharedUnit("US", "mass", POUND_G * 2000, "ton", ["short ton", "short tons"]),
  sharedUnit("imperial", "mass", POUND_G * 2240, "ton", ["long ton", "long tons"]),
] as const;

const TIMES = [unit("time", "day", 1, "day", ["d"]), unit("time", "week", 7, "week", ["wk"])] as const;

/** All measures, each by its exact definition. */
export const UNITS: readonly UnitDefinition[] = [...LENGTHS, ...AREAS, ...VOLUMES, ...MASSES, ...TIMES];
