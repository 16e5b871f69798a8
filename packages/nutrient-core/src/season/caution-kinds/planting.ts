import { inShort, plantingLabel } from "../planting-label.ts";
import type { Planting } from "../season.ts";

/** The planting that a caution is about: its name as events carry it, and all its places for the sentence. */
export type OfPlanting = { readonly planting: string; readonly called: string };

/** The same for several plantings, in one order. */
export type OfPlantings = { readonly plantings: readonly string[]; readonly called: readonly string[] };

/** The facts that name a planting. */
export function ofPlanting(planting: Planting): OfPlanting {
  return { planting: planting.name, called: plantingLabel(planting) };
}

/** The facts that name several plantings. */
export function ofPlantings(plantings: readonly Planting[]): OfPlantings {
  return { plantings: plantings.map(({ name }) => name), called: plantings.map(plantingLabel) };
}

/** How a sentence names plantings: more than a few are counted, the facts hold them all. */
export function named(called: readonly string[]): string {
  return inShort(called, ", ");
}
