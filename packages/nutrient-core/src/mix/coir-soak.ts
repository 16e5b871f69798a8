import { term, type WorkingLine } from "../outcome/working.ts";
import { ingredientFacts } from "./ingredient/facts.ts";
import type { CoirSoak } from "./mix-result.ts";
import type { MixedIngredient } from "./weight.ts";

/** 7 kg of calcium nitrate in 1000 L of water for 5 m3 of coir. Source: coir-buffering-note, one supplier. */
const CALCIUM_NITRATE_GRAMS_PER_LITRE_OF_COIR = 7000 / 5000;
const WATER_LITRES_PER_LITRE_OF_COIR = 1000 / 5000;

/**
 * What a calcium soak of the mix's coir takes, where it was sold neither washed nor buffered; undefined without coir.
 *
 * Calcium takes the places that sodium and potassium hold, and they drain away. A test of the coir goes before it.
 *
 * @param ingredients Loose litres of each; only coir counts.
 */
export function coirSoak(
  ingredients: readonly MixedIngredient[],
): { readonly value: CoirSoak; readonly working: readonly WorkingLine[] } | undefined {
  const litres = ingredients
    .filter(({ name }) => ingredientFacts(name)?.kind === "coir")
    .reduce((sum, { looseVolumeLitres }) => sum + looseVolumeLitres, 0);
  if (litres === 0) return undefined;
  const source = "coir-buffering-note";
  const value: CoirSoak = {
    calciumNitrateGrams: litres * CALCIUM_NITRATE_GRAMS_PER_LITRE_OF_COIR,
    waterLitres: litres * WATER_LITRES_PER_LITRE_OF_COIR,
  };
  return {
    value,
    working: [
      {
        label: "calcium nitrate to soak the coir",
        expression: `${term(litres)} L * 7 kg / (5 m^3)`,
        value: value.calciumNitrateGrams,
        unit: "g",
        source,
      },
      {
        label: "water to soak the coir",
        expression: `${term(litres)} L * 1000 L / (5 m^3)`,
        value: value.waterLitres,
        unit: "L",
        source,
      },
    ],
  };
}
