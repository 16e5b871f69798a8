/**
 * Compositions of common materials for the engine's tests and benchmark, percent by mass, elements.
 *
 * Pure salts from their formulas (atomic masses of CIAAW), nitrogen forms and mixed materials from published analyses:
 * Cornell University, Northeast Region Certified Crop Adviser study material, Competency Area 4; USDA NRCS New Mexico,
 * Agronomy Technical Note 76, 2000; IFDC/UNIDO Fertilizer Manual (some from memory). P and K of printed oxide analyses
 * with 0.4364 and 0.8301. Rounded to two places: these make realistic test problems, they are no reference.
 */
export const MATERIALS: readonly { readonly id: string; readonly percent: Readonly<Record<string, number>> }[] = [
  { id: "ammonium-nitrate", percent: { N: 35, nitrate: 17, ammonium: 17 } },
  { id: "ammonium-sulfate", percent: { N: 21.2, ammonium: 21, S: 24.26 } },
  { id: "calcium-nitrate-double-salt", percent: { N: 15.55, nitrate: 14.4, ammonium: 1.1, Ca: 18.54 } },
  { id: "calcium-nitrate-tetrahydrate", percent: { N: 11.86, nitrate: 11.9, Ca: 16.97 } },
  { id: "potassium-nitrate", percent: { N: 13.85, nitrate: 13, K: 38.67 } },
  { id: "magnesium-nitrate-hexahydrate", percent: { N: 10.93, nitrate: 11, Mg: 9.48 } },
  { id: "sodium-nitrate", percent: { N: 16.48, nitrate: 16, Na: 27.05 } },
  { id: "urea", percent: { N: 46.65, urea: 46 } },
  { id: "uan-32", percent: { N: 32, nitrate: 8, ammonium: 8, urea: 16 } },
  { id: "uan-28", percent: { N: 28, nitrate: 7, ammonium: 7, urea: 14 } },
  { id: "ammonium-polyphosphate-10-34-0", percent: { N: 10, ammonium: 10, P: 14.84 } },
  { id: "map", percent: { N: 12.18, ammonium: 12, P: 26.93 } },
  { id: "map-granular", percent: { N: 11, ammonium: 11, P: 22.69 } },
  { id: "dap", percent: { N: 21.21, ammonium: 18, P: 23.45 } },
  { id: "mkp", percent: { P: 22.76, K: 28.73 } },
  { id: "dipotassium-phosphate", percent: { P: 17.78, K: 44.9 } },
  { id: "phosphoric-acid-75", percent: { P: 23.7 } },
  { id: "phosphoric-acid-85", percent: { P: 26.88 } },
  { id: "triple-superphosphate", percent: { P: 24.58, Ca: 15.9 } },
  { id: "single-superphosphate", percent: { P: 7.86, Ca: 20, S: 11 } },
  { id: "potassium-sulfate", percent: { K: 44.88, S: 18.4 } },
  { id: "potassium-chloride", percent: { K: 52.45, Cl: 47.55 } },
  { id: "potassium-magnesium-sulfate", percent: { K: 18.84, Mg: 11.71, S: 23.18 } },
  { id: "magnesium-sulfate-heptahydrate", percent: { Mg: 9.86, S: 13.01 } },
  { id: "magnesium-sulfate-monohydrate", percent: { Mg: 17.56, S: 23.17 } },
  { id: "gypsum", percent: { Ca: 23.28, S: 18.62 } },
  { id: "calcium-chloride-dihydrate", percent: { Ca: 27.26, Cl: 48.23 } },
  { id: "calcium-chloride-anhydrous", percent: { Ca: 36.11, Cl: 63.89 } },
  { id: "calcitic-lime", percent: { Ca: 40.04 } },
  { id: "dolomitic-lime", percent: { Ca: 21.73, Mg: 13.18 } },
  { id: "hydrated-lime", percent: { Ca: 54.09 } },
  { id: "elemental-sulfur", percent: { S: 100 } },
  { id: "iron-sulfate-heptahydrate", percent: { S: 11.53, Fe: 20.09 } },
  { id: "iron-chelate-edta", percent: { N: 6.65, Fe: 13.26, Na: 5.46 } },
  { id: "iron-chelate-dtpa", percent: { Fe: 11 } },
  { id: "iron-chelate-eddha", percent: { N: 6.44, Fe: 12.83, Na: 5.28 } },
  { id: "manganese-sulfate-monohydrate", percent: { S: 18.97, Mn: 32.51 } },
  { id: "zinc-sulfate-monohydrate", percent: { S: 17.87, Zn: 36.43 } },
  { id: "zinc-sulfate-heptahydrate", percent: { S: 11.15, Zn: 22.74 } },
  { id: "copper-sulfate-pentahydrate", percent: { S: 12.84, Cu: 25.45 } },
  { id: "borax", percent: { B: 11.34, Na: 12.06 } },
  { id: "boric-acid", percent: { B: 17.48 } },
  { id: "sodium-molybdate", percent: { Mo: 39.66, Na: 19 } },
  { id: "ammonium-molybdate", percent: { N: 6.8, Mo: 54.34 } },
  { id: "blood-meal", percent: { N: 12.5, P: 0.65, K: 0.5 } },
  { id: "bone-meal-steamed", percent: { N: 2, P: 11.78, Ca: 23 } },
  { id: "bone-meal-raw", percent: { N: 4, P: 9.6, Ca: 20 } },
  { id: "fish-meal", percent: { N: 9, P: 3.05 } },
  { id: "fish-emulsion", percent: { N: 5, P: 0.87, K: 1.66 } },
  { id: "feather-meal", percent: { N: 12 } },
  { id: "alfalfa-meal", percent: { N: 2.5, P: 0.22, K: 1.66 } },
  { id: "soybean-meal", percent: { N: 7, P: 0.65, K: 1.91 } },
  { id: "cottonseed-meal", percent: { N: 6, P: 1.09, K: 1.66 } },
  { id: "kelp-meal", percent: { N: 1, P: 0.22, K: 7.47 } },
  { id: "seaweed-liquid", percent: { N: 0.1, P: 0.04, K: 1.25 } },
  { id: "poultry-manure-pellets", percent: { N: 4, P: 1.31, K: 2.08, Ca: 8 } },
  { id: "cattle-manure-composted", percent: { N: 1, P: 0.44, K: 0.83 } },
  { id: "worm-castings", percent: { N: 1, P: 0.22, K: 0.42 } },
  { id: "wood-ash", percent: { P: 0.87, K: 4.98, Ca: 25, Mg: 1 } },
  { id: "rock-phosphate", percent: { P: 1.31, Ca: 32 } },
  { id: "greensand", percent: { K: 2.49 } },
];

/** Rows of test problems: single nutrients first, then sums and differences as a caller may write them. */
export const NUTRIENTS: readonly Readonly<Record<string, number>>[] = [
  { N: 1 },
  { P: 1 },
  { K: 1 },
  { Ca: 1 },
  { Mg: 1 },
  { S: 1 },
  { Fe: 1 },
  { Mn: 1 },
  { B: 1 },
  { Zn: 1 },
  { Cu: 1 },
  { Mo: 1 },
  { Cl: 1 },
  { Na: 1 },
  { ammonium: 1 },
  { nitrate: 1 },
  { urea: 1 },
  { K: 1, N: -1.5 },
  { Ca: 1, Mg: 1 },
  { K: 1, Ca: 1, Mg: 1 },
];

/**
 * Strong common feeds, mg per litre, for the first 17 rows: rounded middles of published nutrient solutions for fruiting
 * vegetables (common practice, no single source); only their order of size matters here.
 */
export const COMMON_LEVELS: readonly number[] = [
  190, 45, 280, 160, 45, 65, 2, 0.6, 0.4, 0.3, 0.06, 0.05, 30, 20, 15, 170, 10,
];

/** What one gram of a material in one litre adds to a row, mg per litre. */
export function ppmPerGram(percent: Readonly<Record<string, number>>, row: Readonly<Record<string, number>>): number {
  let sum = 0;
  for (const [nutrient, factor] of Object.entries(row)) sum += factor * (percent[nutrient] ?? 0) * 10;
  return sum;
}
