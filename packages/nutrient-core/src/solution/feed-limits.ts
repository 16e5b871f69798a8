import { ATOMIC_WEIGHT } from "../element/atomic-weight.ts";
import type { Nutrient } from "../element/nutrient.ts";

/** The highest figure that a published recipe or recommendation gives, of the element. */
export interface Strongest {
  readonly amount: number;
  readonly source: string;
}

/** Such figures by nutrient. */
export type StrongestOf = Readonly<Partial<Record<Nutrient, Strongest>>>;

/**
 * Strongest published feeds, mg/L. The highest are standard feeds for lettuce, tomato and aubergine on substrates, and
 * a tomato programme (both from memory); what was read is lower: N 210, K 235, P 31 in solution 1 of Circular 347, and
 * N 210 as the best of a pepper seedling trial.
 */
export const STRONGEST_FEED: StrongestOf = {
  N: { amount: 284, source: "sonneveld-straver-1994" },
  P: { amount: 62, source: "sonneveld-straver-1994" },
  K: { amount: 430, source: "sonneveld-straver-1994" },
  Ca: { amount: 216, source: "sonneveld-straver-1994" },
  Mg: { amount: 61, source: "sonneveld-straver-1994" },
  S: { amount: 141, source: "sonneveld-straver-1994" },
};

/** Trace elements in the strongest published feeds, mg/L: iron was read, the others are from memory. */
export const STRONGEST_TRACE_FEED: StrongestOf = {
  Fe: { amount: 3, source: "circular-347-solution-1" },
  Mn: { amount: 0.8, source: "uf-hs796" },
  Zn: { amount: 0.33, source: "sonneveld-straver-1994" },
  Cu: { amount: 0.2, source: "uf-hs796" },
  Mo: { amount: 0.05, source: "uf-hs796" },
};

/**
 * What a whole season is given at the most, g/m2: 224 kg/ha N for pepper, 250 kg/ha P2O5 for tomato, the highest
 * uptake of potassium by pepper (320 lb/acre K2O).
 */
export const WHOLE_SEASON: StrongestOf = {
  N: { amount: 22.4, source: "florida-pepper-drip-2006" },
  P: { amount: 10.9, source: "tnau-tomato-fertigation" },
  K: { amount: 29.8, source: "uc-pepper-fertility" },
};

/** Trace elements in one dressing, g/m2: 10 kg/ha of a metal, a quarter of a kilogram of molybdenum. Common practice. */
export const TRACE_DRESSING: StrongestOf = {
  Mn: { amount: 1, source: "common-practice" },
  Zn: { amount: 1, source: "common-practice" },
  Cu: { amount: 1, source: "common-practice" },
  Mo: { amount: 0.025, source: "common-practice" },
};

/** So many times the strongest published feed is far over it; three times is where roots burn. A choice of ours. */
export const FAR_OVER = 1.5;
export const WAY_OVER = 3;
/** Trace elements have more room below harm than above need, boron not. A choice of ours. */
export const TRACE_FAR_OVER = 3;

/** mS/cm: above 3.0 water is a severe problem to irrigate with; at 5.1 in the soil half of a pepper crop is lost. */
export const EC_HIGH = { amount: 3, source: "fao-29" } as const;
export const EC_SEVERE = { amount: 5.1, source: "fao-pepper" } as const;

/** Boron: pepper stands 1 to 2 mg/L in the soil's water; beds are given 0.05 to 0.2 g/m2 (0.5 to 2 kg/ha). */
export const BORON_FEED_PPM = 1;
export const BORON_DRESSING_GRAMS_PER_SQUARE_METRE = 0.2;

/** Ammonium: pepper yields fall sharply above 2 mmol/L (28 mg/L N), and where it is over half of the nitrogen. */
export const AMMONIUM_PPM = 28;
export const AMMONIUM_SHARE = 0.5;
export const AMMONIUM_SOURCES: readonly string[] = ["bar-tal-2001", "marti-mills-1991"];

/** The limit for nitrate in drinking water, mg/L of N. */
export const DRINKING_WATER_NITROGEN_PPM = 10;

/**
 * mg/L in irrigation water. Chloride: none to heed below 4 me/L, severe above 10; sodium on wetted leaves: 3 me/L.
 * (Reproductions print these rows as mg/L, which would reject nearly every tap water: the original has me/L, from
 * memory.)
 */
export const CHLORIDE_NOTE_PPM: number = 4 * ATOMIC_WEIGHT.Cl;
export const CHLORIDE_SEVERE_PPM: number = 10 * ATOMIC_WEIGHT.Cl;
export const SODIUM_PPM: number = 3 * ATOMIC_WEIGHT.Na;

/** Grams in a pound over square metres in 100 square feet. */
const POUND_PER_100_SQUARE_FEET = 453.59237 / (100 * 0.3048 ** 2);
/** g/m2 of calcium carbonate: from 11 lb/100 sq ft in two dressings, from 21 in three (psu-home-garden-lime). */
export const LIME_IN_ONE_GO: number = 11 * POUND_PER_100_SQUARE_FEET;
export const LIME_IN_TWO_GOES: number = 21 * POUND_PER_100_SQUARE_FEET;

/** g/m2 of sulfur for a clay, from pH 7.0-7.5 to 6.0-6.5 in the top 15 cm (rhs-acidifying-soil). */
export const SULFUR_AT_MOST = 270;
