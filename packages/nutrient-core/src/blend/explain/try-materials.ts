import { MATERIALS } from "../../product/materials.ts";
import type { Product } from "../../product/product.ts";
import type { BlendInput } from "../blend-input.ts";
import type { Reached } from "../reach.ts";
import { grams, inSentence, percent } from "../words.ts";
import { tryBlend, withoutPrices } from "./trial.ts";

/** A generic material that brings a blend closer to its targets. */
export interface Helper {
  readonly material: Product;
  readonly massGrams: number;
  /** Whether every target is met with it. */
  readonly meets: boolean;
  /** How much of the miss goes away, 0 to 1. */
  readonly cut: number;
}

/** A cut smaller than this is not worth buying a bag for. */
const WORTH_BUYING = 0.05;

/**
 * Tries every generic material beside the products, and names the one that meets the targets with the least of it,
 * or else cuts the miss most.
 *
 * Not proposed: what leaves a residue or has no known solubility, for water; liquids, for beds, mixes and batches; and
 * strong acids and lyes, which are not bought to mend a recipe.
 */
export function materialThatHelps(input: BlendInput, reached: Reached): Helper | undefined {
  const unpriced = withoutPrices(input);
  const helpers = MATERIALS.filter((material) => isCandidate(material, input, reached)).flatMap((material) => {
    const helper = tryMaterial(material, unpriced, reached);
    return helper ? [helper] : [];
  });
  const meeting = helpers.filter(({ meets }) => meets).sort((a, b) => a.massGrams - b.massGrams);
  return meeting[0] ?? helpers.sort((a, b) => b.cut - a.cut || a.massGrams - b.massGrams)[0];
}

function isCandidate(material: Product, { products }: BlendInput, { rows, extent }: Reached): boolean {
  const { id, formula, hazards, state } = material;
  if (products.some((one) => one.id === id || (formula !== undefined && one.formula === formula))) return false;
  if (hazards.includes("acid") || hazards.includes("caustic")) return false;
  const suits =
    extent.basis === "litre"
      ? material.leavesResidue !== true && material.solubilityGramsPerLitre !== undefined
      : state !== "liquid";
  return suits && rows.some(({ nutrient }) => (material.composition[nutrient] ?? 0) > 0);
}

function tryMaterial(material: Product, input: BlendInput, { solution }: Reached): Helper | undefined {
  const tried = tryBlend({ ...input, products: [...input.products, material] });
  if (!tried) return undefined;
  const massGrams = tried.massGrams.at(-1)!;
  const left = solution.objective > 0 ? tried.solution.objective / solution.objective : 1;
  // Least squares measures a sum of squares: its root is what the misses shrink by.
  const cut = 1 - (solution.aim.miss === "squares" ? Math.sqrt(left) : left);
  const meets = tried.solution.status === "met";
  if (!(massGrams > 0) || (!meets && cut < WORTH_BUYING)) return undefined;
  return { material, massGrams, meets, cut };
}

/** The proposal as a sentence. */
export function materialWords({ material, massGrams, meets, cut }: Helper): string {
  const name = `${grams(massGrams)} of ${inSentence(material.name)} (${material.id})`;
  if (!meets) return `Of the generic materials, ${name} would come closest: ${percent(cut)} less of a miss.`;
  return `Adding ${name} would meet every target.`;
}
