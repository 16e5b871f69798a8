import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Product } from "../product/product.ts";
import { conductivityPerGram, ionicStrengthNear } from "../solution/linear-conductivity.ts";
import type { Extent } from "../supply/basis.ts";
import { type Delivered, supplyMatrix } from "../supply/supply.ts";
import type { BlendInput, Limit } from "./blend-input.ts";
import type { LinearLimit } from "./engine/problem.ts";
import { limitWords, rateWords } from "./words.ts";

/**
 * Limits as ceilings on sums of grams, in their own order.
 *
 * A share is `n - share * of <= 0` with what is there already on both sides, so that it stays linear. The conductivity is
 * a straight line that touches the full model near the limit; `correction` scales it to what the full model says.
 *
 * @param already Rates already there, which count towards every limit but the conductivity.
 */
export function ceilingsOf(
  limits: readonly Limit[],
  products: readonly Product[],
  extent: Extent,
  already: Delivered,
  correction: number,
): LinearLimit[] {
  return limits.map((limit) => {
    if (limit.kind === "conductivity") {
      const strength = ionicStrengthNear(limit.milliSiemensPerCm);
      return {
        coefficients: products.map((product) => correction * conductivityPerGram(product, extent.amount, strength)),
        limit: limit.milliSiemensPerCm,
      };
    }
    const [own] = supplyMatrix(products, [limit.nutrient], extent) as [number[]];
    const there = already[limit.nutrient] ?? 0;
    if (limit.kind === "nutrient") return { coefficients: own, limit: limit.rate - there };
    const [whole] = supplyMatrix(products, [limit.of], extent) as [number[]];
    return {
      coefficients: own.map((part, j) => part - limit.share * whole[j]!),
      limit: limit.share * (already[limit.of] ?? 0) - there,
    };
  });
}

/** Stops at a limit that the water or the bed has passed before anything is added: no product takes away. */
export function notYetPassed({ limits = [], already, purpose }: BlendInput): Outcome<true> {
  if (purpose.kind !== "target") return answer(true);
  const passed = limits.find((limit) => limit.kind === "nutrient" && (already[limit.nutrient] ?? 0) > limit.rate);
  if (passed?.kind !== "nutrient") return answer(true);
  return unusable({
    code: "limit-already-passed",
    path: "limit",
    message: `There is more ${passed.nutrient} already than the limit allows, and no product takes any away.`,
    expected: `a limit above what is there, ${rateWords(already[passed.nutrient]!, purpose.extent.basis)} of ${passed.nutrient}`,
    received: limitWords(passed, purpose.extent.basis),
    hint: "use other water (rain water, for part of it), or raise the limit",
  });
}
