import { elementPerForm, type Nutrient } from "../element/nutrient.ts";
import { materialById } from "./materials.ts";
import { fractionOf, type Product } from "./product.ts";

/**
 * Whose rule says how far a product may fall short of its label: the model table of the US states, or the
 * European rule of 2003, which national schemes still copy (it was repealed in 2022).
 */
export type LabelRule = "us" | "eu";

/** How far below its label a product may be by law. Both rules look at a shortfall only: a label is a minimum. */
export interface LabelTolerance {
  /** Grams of the nutrient per gram of product, 0 to what is printed. */
  readonly shortfall: number;
  readonly source: string;
}

/**
 * Investigational allowances in percentage points below the guarantee, for total nitrogen, available phosphate (P2O5)
 * and soluble potash (K2O), by the percent guaranteed; straight lines between the rows, the end rows beyond them.
 * Florida Statutes 2014, 576.061(1)(b): seen. The newer table ends at 52 % P2O5 and 62 % K2O; the last row goes on here.
 */
export const US_ALLOWANCE_TABLE: readonly (readonly [guarantee: number, n: number, p2o5: number, k2o: number])[] = [
  [4, 0.49, 0.67, 0.41],
  [5, 0.51, 0.67, 0.43],
  [6, 0.52, 0.67, 0.47],
  [7, 0.54, 0.68, 0.53],
  [8, 0.55, 0.68, 0.6],
  [9, 0.57, 0.68, 0.65],
  [10, 0.58, 0.69, 0.7],
  [12, 0.61, 0.69, 0.79],
  [14, 0.63, 0.7, 0.87],
  [16, 0.67, 0.7, 0.94],
  [18, 0.7, 0.71, 1.01],
  [20, 0.73, 0.72, 1.08],
  [22, 0.75, 0.72, 1.15],
  [24, 0.78, 0.73, 1.21],
  [26, 0.81, 0.73, 1.27],
  [28, 0.83, 0.74, 1.33],
  [30, 0.86, 0.75, 1.39],
  [32, 0.88, 0.76, 1.44],
];

const US_NPK = "florida-576-061";
const US_OTHERS = "new-hampshire-agr-1105";
const EU = "eu-2003-2003-annex-2";

/** Points and share of the guarantee, at most one point (New Hampshire Agr 1105.04, Table 1105-2: seen). */
const US_SECONDARY: Readonly<Partial<Record<Nutrient, readonly [points: number, share: number]>>> = {
  Ca: [0.2, 0.05],
  Mg: [0.2, 0.05],
  S: [0.2, 0.05],
  B: [0.003, 0.15],
  Co: [0.0001, 0.3],
  Mo: [0.0001, 0.3],
  Cl: [0.005, 0.1],
  Cu: [0.005, 0.1],
  Fe: [0.005, 0.1],
  Mn: [0.005, 0.1],
  Na: [0.005, 0.1],
  Zn: [0.005, 0.1],
};

/** Points for the forms of nitrogen, at most half of what is guaranteed (Florida 576.061(1)(c): seen). */
const US_NITROGEN_FORMS: Readonly<Partial<Record<Nutrient, number>>> = {
  "NO3-N": 0.4,
  "NH4-N": 0.4,
  "urea-N": 0.4,
  "organic-N": 0.3,
};

/** Points for single materials (Regulation (EC) 2003/2003, Annex II, 1.1 to 1.3: seen). */
const EU_STRAIGHTS: Readonly<Record<string, number>> = {
  "calcium-nitrate": 0.4,
  "calcium-nitrate-tetrahydrate": 0.4,
  "sodium-nitrate": 0.4,
  "ammonium-sulfate": 0.3,
  "ammonium-nitrate": 0.6,
  urea: 0.4,
  "urea-ammonium-nitrate-32": 0.6,
  "urea-ammonium-nitrate-28": 0.6,
  "single-superphosphate": 0.9,
  "triple-superphosphate": 1.3,
  "potassium-chloride": 0.5,
  "potassium-sulfate": 0.5,
  "potassium-magnesium-sulfate": 1.5,
};
/** A straight whose kind is not known has the widest figure that its kind of straight can have. */
const EU_WIDEST_STRAIGHT = { N: 0.8, P: 1.3, K: 1.5 } as const;
const EU_COMPOUND = 1.1;
/** A quarter of what is declared, at most so many points (Annex II, 3: seen). */
const EU_SECONDARY: Readonly<Partial<Record<Nutrient, number>>> = { Ca: 0.64, Mg: 0.55, Na: 0.67, S: 0.36 };
const EU_TRACE: readonly Nutrient[] = ["B", "Co", "Cu", "Fe", "Mn", "Mo", "Zn"];
const PRIMARY = ["N", "P", "K"] as const;
/** What labels print for the primary nutrients. */
const PRINTED = { N: "N", P: "P2O5", K: "K2O" } as const;

/**
 * Whether a product has no label that anybody answers for: manures and ash, whose figures are averages of heaps.
 *
 * @example
 * isUnlabelled(materialById("wood-ash"))  // => true
 */
export function isUnlabelled({ id, hazards }: Product): boolean {
  return hazards.includes("pathogens") || id === "wood-ash" || materialById(id)?.group === "manures";
}

/**
 * How far may a product lawfully fall short of its label in one nutrient?
 *
 * @param product A labelled product; a pure substance named by its formula has no label, hence no tolerance, and a manure
 *   or an ash has none either.
 * @param nutrient An element or a form of nitrogen.
 * @param rule Whose rule; see {@link LabelRule}.
 * @returns The shortfall as a mass fraction of the product, never more than it holds, and its source; undefined where
 *   the product holds none of it or no rule is known.
 * @example
 * usAllowancePoints("N", 20)  // => 0.73
 */
export function labelTolerance(product: Product, nutrient: Nutrient, rule: LabelRule): LabelTolerance | undefined {
  const fraction = fractionOf(product, nutrient);
  if (!(fraction > 0) || product.origin === "formula" || isUnlabelled(product)) return undefined;
  const found = rule === "us" ? usTolerance(nutrient, fraction) : euTolerance(product, nutrient, fraction);
  return found && { shortfall: Math.min(found.shortfall, fraction), source: found.source };
}

/**
 * The US allowance for a primary nutrient, in percentage points.
 *
 * @param form N, P2O5 or K2O.
 * @param guaranteed Percent by mass, from 0 up.
 * @example
 * usAllowancePoints("K2O", 11)  // => 0.745
 */
export function usAllowancePoints(form: "N" | "P2O5" | "K2O", guaranteed: number): number {
  const column = form === "N" ? 1 : form === "P2O5" ? 2 : 3;
  const above = US_ALLOWANCE_TABLE.findIndex(([guarantee]) => guarantee >= guaranteed);
  if (above === 0) return US_ALLOWANCE_TABLE[0]![column];
  const next = US_ALLOWANCE_TABLE[above];
  if (!next) return US_ALLOWANCE_TABLE.at(-1)![column];
  const before = US_ALLOWANCE_TABLE[above - 1]!;
  const along = (guaranteed - before[0]) / (next[0] - before[0]);
  return before[column] + along * (next[column] - before[column]);
}

function usTolerance(nutrient: Nutrient, fraction: number): LabelTolerance | undefined {
  if (nutrient === "N" || nutrient === "P" || nutrient === "K") {
    const form = PRINTED[nutrient];
    const perForm = elementPerForm(form);
    return { shortfall: (usAllowancePoints(form, (fraction / perForm) * 100) / 100) * perForm, source: US_NPK };
  }
  const form = US_NITROGEN_FORMS[nutrient];
  if (form !== undefined) return { shortfall: Math.min(form / 100, fraction / 2), source: US_NPK };
  const secondary = US_SECONDARY[nutrient];
  if (!secondary) return undefined;
  const [points, share] = secondary;
  return { shortfall: Math.min(0.01, points / 100 + share * fraction), source: US_OTHERS };
}

function euTolerance(product: Product, nutrient: Nutrient, fraction: number): LabelTolerance | undefined {
  if (nutrient === "N" || nutrient === "P" || nutrient === "K") {
    return { shortfall: (euPoints(product, nutrient) / 100) * elementPerForm(PRINTED[nutrient]), source: EU };
  }
  if (nutrient.endsWith("-N")) {
    return { shortfall: Math.min(0.02, fractionOf(product, "N") / 10), source: EU };
  }
  const most = EU_SECONDARY[nutrient];
  if (most !== undefined) return { shortfall: Math.min(most / 100, fraction / 4), source: EU };
  if (nutrient === "Cl") return { shortfall: 0.002, source: EU };
  if (!EU_TRACE.includes(nutrient)) return undefined;
  return { shortfall: fraction > 0.02 ? 0.004 : fraction / 5, source: EU };
}

function euPoints(product: Product, nutrient: "N" | "P" | "K"): number {
  const named = EU_STRAIGHTS[product.id];
  if (named !== undefined) return named;
  const primaries = PRIMARY.filter((one) => fractionOf(product, one) > 0);
  return primaries.length > 1 ? EU_COMPOUND : EU_WIDEST_STRAIGHT[nutrient];
}
