import type { Nutrient } from "../element/nutrient.ts";
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

/** How rates are written in sentences. */
export const RATE_WORDS: Readonly<Record<Basis, string>> = { litre: "ppm", squareMetre: "g/m2", cubicMetre: "g/m3" };

/** A limit as its owner wrote it: "K2O 200 ppm", "EC 2 mS/cm", "NH4-N 20 % of N". */
export function limitWords(limit: Limit, basis: Basis): string {
  if (limit.kind === "conductivity") return `EC ${figure(limit.milliSiemensPerCm)} mS/cm`;
  if (limit.kind === "share") return `${limit.nutrient} ${percent(limit.share)} of ${limit.of}`;
  return `${limit.asked.form} ${figure(limit.asked.rate)} ${RATE_WORDS[basis]}`;
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
 * A share as a percentage: two digits below ten, whole above.
 *
 * @example
 * percent(0.1234)  // => "12 %"
 */
export function percent(share: number): string {
  const value = share * 100;
  return `${value >= 10 ? Math.round(value) : Number(value.toPrecision(2))} %`;
}

/**
 * Grams for a sentence, in kilograms from one kilogram up.
 *
 * @example
 * grams(1250)  // => "1.25 kg"
 */
export function grams(mass: number): string {
  return mass >= 1000 ? `${figure(mass / 1000)} kg` : `${figure(mass)} g`;
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
