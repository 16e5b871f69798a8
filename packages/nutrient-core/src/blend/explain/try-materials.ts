import type { Nutrient } from "../../element/nutrient.ts";
import { MATERIALS } from "../../product/materials.ts";
import { fractionOf, type Product } from "../../product/product.ts";
import type { UnitHabit } from "../../quantity/present.ts";
import type { BlendInput } from "../blend-input.ts";
import type { Reached } from "../reach.ts";
import { grams, inSentence, listed, nutrientName, percent } from "../words.ts";
import { tryBlend, withoutPrices } from "./trial.ts";

/** A generic material that brings a blend closer to its targets. */
export interface Helper {
  readonly material: Product;
  readonly massGrams: number;
  /** Whether every target is met with it. */
  readonly meets: boolean;
  /** How much of the miss goes away, 0 to 1. */
  readonly cut: number;
  /** What it brings besides that nobody asked for, of what a grower would mind. */
  readonly unasked: readonly Nutrient[];
}

/** A cut smaller than this is not worth buying a bag for. */
const WORTH_BUYING = 0.15;
/** What can do harm or upset a feed when it comes along unasked, where a product holds at least so much of it. */
const MINDED = ["N", "P", "K", "Cl", "Na"] as const;
const MINDED_FROM = 0.02;

/**
 * Tries every generic material beside the products.
 *
 * Not tried: what leaves a residue or has no known solubility, for water; liquids, for beds, mixes and batches;
 * manures, for batches; and strong acids and lyes, which are not bought to mend a recipe.
 *
 * @returns First the material that meets the targets with the least of it, or else cuts the miss most; then, where
 *   that one brings something unasked, the best that does not.
 */
export function materialsThatHelp(input: BlendInput, reached: Reached): Helper[] {
  const unpriced = withoutPrices(input);
  const helpers = MATERIALS.filter((material) => isCandidate(material, input, reached)).flatMap((material) => {
    const helper = tryMaterial(material, unpriced, reached);
    return helper ? [helper] : [];
  });
  const best = bestOf(helpers);
  if (!best) return [];
  const clean = best.unasked.length > 0 ? bestOf(helpers.filter(({ unasked }) => unasked.length === 0)) : undefined;
  return clean && clean.meets === best.meets ? [best, clean] : [best];
}

function bestOf(helpers: readonly Helper[]): Helper | undefined {
  const meeting = helpers.filter(({ meets }) => meets).sort((a, b) => a.massGrams - b.massGrams);
  return meeting[0] ?? [...helpers].sort((a, b) => b.cut - a.cut || a.massGrams - b.massGrams)[0];
}

function isCandidate(material: Product, { products, purpose }: BlendInput, { rows, extent }: Reached): boolean {
  const { id, formula, hazards, state } = material;
  if (products.some((one) => one.id === id || (formula !== undefined && one.formula === formula))) return false;
  if (hazards.includes("acid") || hazards.includes("caustic")) return false;
  // Manure may go on a bed; nobody mixes it into a bag of feed.
  if (purpose.kind !== "target" && hazards.includes("pathogens")) return false;
  const suits =
    extent.basis === "litre"
      ? material.leavesResidue !== true && material.solubilityGramsPerLitre !== undefined
      : state !== "liquid";
  return suits && rows.some(({ nutrient }) => fractionOf(material, nutrient) > 0);
}

function tryMaterial(material: Product, input: BlendInput, reached: Reached): Helper | undefined {
  const { solution, rows, conductivityCorrection } = reached;
  // One more product moves the line of the conductivity little.
  const tried = tryBlend({ ...input, products: [...input.products, material] }, { conductivityCorrection });
  if (!tried) return undefined;
  const massGrams = tried.massGrams.at(-1)!;
  const left = solution.objective > 0 ? tried.solution.objective / solution.objective : 1;
  // Least squares measures a sum of squares: its root is what the misses shrink by.
  const cut = 1 - (solution.aim.miss === "squares" ? Math.sqrt(left) : left);
  const meets = tried.solution.status === "met";
  if (!(massGrams > 0) || (!meets && cut < WORTH_BUYING)) return undefined;
  const asked = rows.map(({ nutrient }) => nutrient);
  const unasked = MINDED.filter((one) => fractionOf(material, one) >= MINDED_FROM && !asked.includes(one));
  return { material, massGrams, meets, cut, unasked };
}

/** The proposals as a sentence. */
export function materialWords([best, clean]: readonly Helper[], habit?: UnitHabit): string[] {
  if (!best) return [];
  const does = best.meets ? "would meet every target" : `would bring it ${percent(best.cut)} closer to what was asked`;
  const first = `Adding ${amountOf(best, habit)} and weighing the rest anew ${does}`;
  if (best.unasked.length === 0) return [`${first}.`];
  const besides = `it brings ${listed(best.unasked.map(nutrientName))} too`;
  if (!clean) return [`${first}, but ${besides}.`];
  const none = best.unasked.length > 1 ? "none of that" : `no ${nutrientName(best.unasked[0]!)}`;
  const instead = best.meets ? `would bring ${none}` : `would bring it ${percent(clean.cut)} closer, and ${none}`;
  return [`${first}, but ${besides}; ${amountOf(clean, habit)} instead ${instead}.`];
}

function amountOf({ material, massGrams }: Helper, habit: UnitHabit | undefined): string {
  const name = inSentence(material.name);
  // A material that is called by its id is not called twice.
  return `${grams(massGrams, habit)} of ${name}${name.replaceAll(" ", "-") === material.id ? "" : ` (${material.id})`}`;
}
