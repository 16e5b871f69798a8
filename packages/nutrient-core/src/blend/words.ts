import type { Nutrient } from "../element/nutrient.ts";
import { present, presentIn, type UnitHabit } from "../quantity/present.ts";
import type { Basis } from "../supply/basis.ts";
import type { Limit } from "./blend-input.ts";

const NAMES: Readonly<Partial<Record<Nutrient, string>>> = {
  N: "nitrogen",
  P: "phosphorus",
  K: "potassium",
  Ca: "calcium",
  Mg: "magnesium",
  S: "sulfur",
  Fe: "iron",
  Mn: "manganese",
  Zn: "zinc",
  Cu: "copper",
  B: "boron",
  Mo: "molybdenum",
  Ni: "nickel",
  Cl: "chloride",
  Na: "sodium",
  Si: "silicon",
  Co: "cobalt",
  Se: "selenium",
  "NO3-N": "nitrate nitrogen",
  "NH4-N": "ammonium nitrogen",
  "urea-N": "urea nitrogen",
  "organic-N": "organic nitrogen",
};

/**
 * A nutrient's English name, for sentences.
 *
 * @example
 * nutrientName("NH4-N")  // => "ammonium nitrogen"
 */
export function nutrientName(nutrient: Nutrient): string {
  return NAMES[nutrient] ?? nutrient;
}

const METRIC_RATES: Readonly<Record<Basis, string>> = { litre: "ppm", squareMetre: "g/m2", cubicMetre: "g/m3" };

/**
 * A rate as growers of one habit say it, from the basis' own unit; parts per million are said alike everywhere.
 *
 * @example
 * rateWords(10, "squareMetre", "us")  // => "2.05 lb/1000 sq ft"
 */
export function rateWords(rate: number, basis: Basis, habit: UnitHabit = "metric"): string {
  if (habit === "metric" || basis === "litre") return `${figure(rate)} ${METRIC_RATES[basis]}`;
  const pounds = presentIn(rate, "pound");
  if (basis === "squareMetre") return `${figure((pounds * 1000) / presentIn(1, "squarefoot"))} lb/1000 sq ft`;
  // A cubic metre is a thousand of the kept litres.
  return `${figure(pounds / presentIn(1000, "cubicyard"))} lb/cu yd`;
}

/** A limit as its owner wrote it: "K2O 200 ppm", "EC 2 mS/cm", "NH4-N 20 % of N". */
export function limitWords(limit: Limit, basis: Basis, habit: UnitHabit = "metric"): string {
  if (limit.kind === "conductivity") return `EC ${figure(limit.milliSiemensPerCm)} mS/cm`;
  if (limit.kind === "share") return `${limit.nutrient} ${percent(limit.share)} of ${limit.of}`;
  return `${limit.asked.form} ${rateWords(limit.asked.rate, basis, habit)}`;
}

/**
 * A number for a sentence: three digits, no exponent.
 *
 * @example
 * figure(0.012345)  // => "0.0123"
 */
export function figure(value: number): string {
  if (Math.abs(value) >= 100) return String(Math.round(value));
  return value === 0 ? "0" : String(Number(value.toFixed(Math.min(12, 2 - Math.floor(Math.log10(Math.abs(value)))))));
}

/**
 * A share as a percentage: whole from ten upwards, two digits down to one, and one digit below that.
 *
 * @example
 * percent(0.1234)  // => "12 %"
 */
export function percent(share: number): string {
  const value = share * 100;
  return `${value >= 10 ? Math.round(value) : Number(value.toPrecision(value >= 1 ? 2 : 1))} %`;
}

/**
 * How many times as much, to one decimal place.
 *
 * @example
 * timesWords(2.5622)  // => "2.6 times"
 */
export function timesWords(factor: number): string {
  if (factor.toFixed(1) === "2.0") return "twice";
  return `${factor >= 10 ? Math.round(factor) : Number(factor.toFixed(1))} times`;
}

/**
 * Grams for a sentence, in kilograms from one kilogram up; a grower of US habit hears ounces or pounds before them.
 *
 * @example
 * grams(1250)  // => "1.25 kg"
 */
export function grams(mass: number, habit: UnitHabit = "metric"): string {
  const weight = mass >= 1000 ? `${figure(mass / 1000)} kg` : `${figure(mass)} g`;
  if (habit === "metric") return weight;
  const { value, unit } = present(mass, "mass", habit);
  return `${figure(value)} ${unit} (${weight})`;
}

/** Names as a sentence lists them: `a`, `a and b`, `a, b and c`. */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? "") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

/** The first letter large, as at the start of a sentence. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A product's name inside a sentence: "Potassium nitrate" loses its capital, "KNO3" and "MAP feed" keep theirs. */
export function inSentence(name: string): string {
  return /^[A-Z][a-z]/.test(name) && !/\d/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}
