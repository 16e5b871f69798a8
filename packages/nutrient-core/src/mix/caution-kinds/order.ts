import type { CautionKind } from "../../outcome/caution.ts";
import { shown } from "../../outcome/sentence.ts";

export const noPackKnown: CautionKind<{ readonly ingredients: readonly string[] }> = {
  code: "no-pack-known",
  severity: "note",
  source: "common-practice",
  sentence: ({ ingredients }) =>
    `No pack is known for ${ingredients.join(", ")}: litres only. Give sizes and prices with --pack "${ingredients[0]} 50 L 6.50", or on the shelf.`,
};

export const priceMissing: CautionKind<{ readonly ingredients: readonly string[] }> = {
  code: "price-missing",
  severity: "note",
  source: "common-practice",
  sentence: ({ ingredients }) =>
    `Not every pack of ${ingredients.join(", ")} has a price: it is bought with the least left over, and the cost is not known.`,
};

export const brickYield: CautionKind<{
  readonly packs: readonly string[];
  readonly litresPerKilogram: number;
  readonly lowLitresPerKilogram: number;
  readonly highLitresPerKilogram: number;
}> = {
  code: "brick-yield",
  severity: "caution",
  source: "hortscience-coir-1996",
  sentence: ({ packs, litresPerKilogram, lowLitresPerKilogram, highLitresPerKilogram }) =>
    `${packs.join("; ")}: ${shown(litresPerKilogram)} L from a kilogram is not what published densities allow (${shown(lowLitresPerKilogram)} to ${shown(highLitresPerKilogram)} L). Swell one in a bucket and measure.`,
};
