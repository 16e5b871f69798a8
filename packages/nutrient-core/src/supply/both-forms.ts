import { elementPerForm, type Nutrient, OXIDES, type OxideName, oxideOf } from "../element/nutrient.ts";
import type { Delivered } from "./supply.ts";

/** Amounts named both ways: each element, and beside it the oxide that labels print. */
export type BothForms = Readonly<Partial<Record<Nutrient | OxideName, number>>>;

/** The oxides that are shown beside their element in amounts delivered. */
const SHOWN: readonly OxideName[] = ["P2O5", "K2O", "CaO", "MgO", "SO3"];

/**
 * The same amounts with the oxides beside the elements, so that an answer says both.
 *
 * @example
 * inBothForms({ K: 83.015 }).K2O  // => 99.99997...
 */
export function inBothForms(delivered: Delivered): BothForms {
  const named: Partial<Record<Nutrient | OxideName, number>> = {};
  for (const [nutrient, amount] of Object.entries(delivered) as [Nutrient, number][]) {
    named[nutrient] = amount;
    const oxide = oxideOf(nutrient);
    if (oxide && SHOWN.includes(oxide) && OXIDES[oxide].element === nutrient)
      named[oxide] = amount / elementPerForm(oxide);
  }
  return named;
}
