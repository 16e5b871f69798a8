import type { Caution } from "../outcome/caution.ts";
import { answer, type Outcome } from "../outcome/outcome.ts";
import type { WorkingLine } from "../outcome/working.ts";
import type { Product } from "../product/product.ts";
import type { Extent } from "../supply/basis.ts";
import { addDelivered } from "../supply/one-product.ts";
import type { Amount, Delivered } from "../supply/supply.ts";
import type { Wanted } from "../supply/target.ts";
import { exactAmounts, measurable } from "./recipe-amounts.ts";
import { judged } from "./recipe-judged.ts";
import type { SeasonInput } from "./season.ts";

/** What one can is to hold. */
export interface RecipeRequest {
  readonly products: readonly Product[];
  /** mg per litre of feed. */
  readonly wanted: readonly Wanted[];
  /** Taken off what is wanted, mg per litre of feed: from the mix. The water's own is taken off beside it. */
  readonly fromMix: Delivered;
}

/** One can: what goes in, and what it delivers. */
export interface Recipe {
  readonly amounts: readonly Amount[];
  /** Before it was made weighable. */
  readonly exactGrams: readonly number[];
  /** mg per litre of feed, the water's own included. */
  readonly delivered: Delivered;
  /** Grams of each element in one can, the water's own included. */
  readonly gramsPerCan: Delivered;
  /** Least and most grams in one can of N, P and K, by label, scale and filling. */
  readonly gramsPerCanRange: Readonly<Partial<Record<"N" | "P" | "K", readonly [number, number]>>>;
  readonly ecMilliSiemensPerCm?: number;
  readonly reached: "met" | "closest";
  /** How far off it is; empty where it is met. */
  readonly explanation: readonly string[];
  /** Why it comes no nearer, and what would help. */
  readonly reasons: () => readonly string[];
  /** Of the feed itself; what its products can do is said once for the season. */
  readonly cautions: readonly Caution[];
  readonly working: readonly WorkingLine[];
}

/**
 * What goes into one can for these rates: a dose of one product, a blend of several, in amounts that can be measured.
 *
 * One product is dosed by the nutrient that is named first; what else it holds comes along.
 */
export function recipeFor(request: RecipeRequest, input: SeasonInput): Outcome<Recipe> {
  const extent: Extent = { basis: "litre", amount: input.canLitres };
  const already = addDelivered(input.water, request.fromMix);
  const open = request.wanted.filter(({ nutrient, rate }) => rate - (already[nutrient] ?? 0) > 0);
  if (open.length === 0) return answer(plainWater(request, input));
  // The season buys what it needs: what stands on the shelf today does not limit a can.
  const products = request.products.map(({ stockGrams: _, ...product }): Product => product);
  const exact = exactAmounts(products, request.wanted, already, extent);
  if (!exact.ok) return exact;
  const measured = measurable(products, exact.value.grams, request.wanted, already, extent, input.measures);
  if (!measured.ok) return measured;
  const amounts = products.map((product, index): Amount => ({ product, massGrams: measured.value[index]! }));
  return answer(
    judged({ ...request, amounts, exactGrams: exact.value.grams, explanation: exact.value.explanation }, input, [
      ...exact.working,
    ]),
  );
}

function plainWater(request: RecipeRequest, input: SeasonInput): Recipe {
  const names = request.wanted.map(({ nutrient }) => nutrient).join(", ");
  const recipe = judged({ ...request, amounts: [], exactGrams: [], explanation: () => [] }, input, []);
  return {
    ...recipe,
    reached: "met",
    explanation: [`Water and mix already bring the ${names} that is wanted: plain water will do.`],
  };
}
