import type { BlendInput } from "../blend-input.ts";
import type { Adjusted } from "../pose.ts";
import { type Reached, reachBlend } from "../reach.ts";

/** Another blend, to say what would happen; undefined where it has no answer. */
export function tryBlend(input: BlendInput, adjusted: Adjusted = {}): Reached | undefined {
  const tried = reachBlend(input, adjusted);
  return tried.ok ? tried.value : undefined;
}

/** The largest relative miss of a blend, 0 when all is met. */
export function largestMiss({ solution }: Reached): number {
  return Math.max(0, ...solution.relativeMisses);
}

/** Without prices, so that a product that has none can be tried. */
export function withoutPrices(input: BlendInput): BlendInput {
  const { aim, ...rest } = input;
  const products = input.products.map(({ pricePerGram: _, ...product }) => product);
  if (!aim) return { ...rest, products };
  return { ...rest, products, aim: { ...aim, next: aim.next === "cost" ? "nearest" : aim.next } };
}
