import { MATERIALS } from "../product/materials.ts";
import type { Product } from "../product/product.ts";
import type { BlendInput } from "./blend.ts";
import type { ReachedBlend } from "./engine/solution.ts";
import { solveBlend } from "./engine/solve.ts";
import { type PosedBlend, poseBlend } from "./pose.ts";

/** A generic material that brings a blend closer to its targets. */
export interface Helper {
  readonly material: Product;
  readonly massGrams: number;
  /** Whether every target is met with it. */
  readonly meets: boolean;
  /** How much of the miss goes away, 0 to 1. */
  readonly cut: number;
}

/**
 * Tries every generic material beside the products, and names the one that meets the targets with the least of it,
 * or else cuts the miss most. Liquids for drinking systems and materials that leave a residue are not proposed for water.
 */
export function materialThatHelps(input: BlendInput, posed: PosedBlend, solution: ReachedBlend): Helper | undefined {
  const helpers: Helper[] = [];
  for (const material of MATERIALS) {
    if (
      input.products.some(
        ({ id, formula }) => id === material.id || (formula !== undefined && formula === material.formula),
      )
    )
      continue;
    if (posed.extent.basis === "litre" && (material.leavesResidue || material.solubilityGramsPerLitre === undefined))
      continue;
    if (!posed.rows.some(({ nutrient }) => (material.composition[nutrient] ?? 0) > 0)) continue;
    const helper = tryMaterial(material, input, solution);
    if (helper) helpers.push(helper);
  }
  const meeting = helpers.filter(({ meets }) => meets).sort((a, b) => a.massGrams - b.massGrams);
  return meeting[0] ?? helpers.sort((a, b) => b.cut - a.cut || a.massGrams - b.massGrams)[0];
}

function tryMaterial(material: Product, input: BlendInput, solution: ReachedBlend): Helper | undefined {
  const { pricePerGram: _, ...unpriced } = material;
  const posed = poseBlend({ ...input, products: [...input.products, unpriced] });
  if (!posed.ok) return undefined;
  const tried = solveBlend(posed.value.problem);
  if (tried.status === "infeasible") return undefined;
  const massGrams = tried.masses.at(-1)!;
  const cut = solution.objective > 0 ? 1 - tried.objective / solution.objective : 0;
  if (!(massGrams > 0) || (tried.status !== "met" && cut < 0.01)) return undefined;
  return { material, massGrams, meets: tried.status === "met", cut };
}
