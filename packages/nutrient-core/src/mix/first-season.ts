import { percentOf } from "../element/content.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { compositionOf } from "../product/composition.ts";
import type { Product } from "../product/product.ts";
import { type Delivered, deliver, deliveredWorking } from "../supply/supply.ts";
import { ingredientFacts } from "./ingredient/facts.ts";
import type { MixedIngredient } from "./weight.ts";

/**
 * Compost as a mean of more than 1,600 samples, percent of dry mass. Source: calrecycle-compost-nutrients.
 * Of its nitrogen 5 to 10 % is set free in the first year. Source: uc-orchard-compost-nitrogen.
 */
const AVERAGE_COMPOST: Product = {
  id: "average-compost",
  name: "compost (mean of many)",
  origin: "material",
  state: "solid",
  composition: compositionOf([percentOf("N", 1.53), percentOf("P2O5", 1.34), percentOf("K2O", 1.36)]),
  printed: [percentOf("N", 1.53), percentOf("P2O5", 1.34), percentOf("K2O", 1.36)],
  firstSeasonNitrogenShare: [0.05, 0.1],
  hazards: [],
  source: "calrecycle-compost-nutrients",
};

/** What the compost in a mix brings, per cubic metre of the filled space: an offset for blends and seasons. */
export interface FirstSeason {
  /** All of it, usable or not. */
  readonly totalGramsPerCubicMetre: Delivered;
  /** Nitrogen that a crop can use in the first season: lowest and highest. */
  readonly firstSeasonNitrogenGramsPerCubicMetre: readonly [number, number];
}

/**
 * Nutrients that the compost in a mix brings with it; undefined for a mix without compost.
 *
 * A bag of compost can hold half or twice the mean; its label or a test goes before it. How much of the phosphorus
 * and potassium a crop gets at in the first season was not found for composts and is not claimed. Coir brings
 * potassium and sodium too, by its maker's washing: published values span more than fiftyfold, so none is given.
 *
 * @param ingredients Loose litres of each; only composts count.
 * @param fillVolumeLitres More than 0.
 */
export function mixFirstSeason(
  ingredients: readonly MixedIngredient[],
  fillVolumeLitres: number,
): { readonly value: FirstSeason; readonly working: readonly WorkingLine[] } | undefined {
  const composts = ingredients.flatMap((ingredient) => {
    const facts = ingredientFacts(ingredient.name);
    const published = facts?.isCompost ? facts.dryKilogramsPerLitre : undefined;
    const density = ingredient.dryKilogramsPerLitre ?? (published && (published.low + published.high) / 2);
    return facts?.isCompost && density !== undefined ? [{ litres: ingredient.looseVolumeLitres, density }] : [];
  });
  if (composts.length === 0) return undefined;
  const massGrams = composts.reduce((sum, { litres, density }) => sum + litres * density * 1000, 0);
  const extent = { basis: "cubicMetre", amount: fillVolumeLitres / 1000 } as const;
  const amounts = [{ product: AVERAGE_COMPOST, massGrams }];
  const total = deliver(amounts, extent);
  const nitrogen = total.N ?? 0;
  const [low, high] = AVERAGE_COMPOST.firstSeasonNitrogenShare!;
  const first: readonly [number, number] = [nitrogen * low, nitrogen * high];
  return {
    value: { totalGramsPerCubicMetre: total, firstSeasonNitrogenGramsPerCubicMetre: first },
    working: [
      {
        label: "dry compost in the mix",
        expression: composts.map(({ litres, density }) => `${term(litres)} L * ${term(density)} kg/L`).join(" + "),
        value: massGrams,
        unit: "g",
        source: "benha-compost-properties",
      },
      {
        ...deliveredWorking(amounts, "N", extent, nitrogen),
        label: "nitrogen in the compost",
        source: AVERAGE_COMPOST.source,
      },
      {
        label: "nitrogen of it that is free in the first season, at least",
        expression: `${term(nitrogen)} g/m^3 * ${term(low)}`,
        value: first[0],
        unit: "g/m^3",
        source: "uc-orchard-compost-nitrogen",
      },
      {
        label: "nitrogen of it that is free in the first season, at most",
        expression: `${term(nitrogen)} g/m^3 * ${term(high)}`,
        value: first[1],
        unit: "g/m^3",
        source: "uc-orchard-compost-nitrogen",
      },
    ],
  };
}
