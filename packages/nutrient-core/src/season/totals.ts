import type { Delivered } from "../supply/supply.ts";
import type { HarvestedEntry } from "./log.ts";
import type { ProductTotal, SeasonEvent, SeasonTotals } from "./season-plan.ts";

/** Sums the feeds of a season; each figure is the sum of the same figure of the events, and nothing else. */
export function totalsOf(
  events: readonly SeasonEvent[],
  plants: number,
  harvested: readonly HarvestedEntry[],
): SeasonTotals {
  const products = new Map<string, { name: string; given: number; planned: number; cost: number | undefined }>();
  const nutrients: Record<string, number> = {};
  let [cans, waterLitres] = [0, 0];
  for (const event of events) {
    cans += event.cans;
    waterLitres += event.cans * event.canLitres;
    for (const [nutrient, grams] of Object.entries(event.nutrientGrams)) {
      nutrients[nutrient] = (nutrients[nutrient] ?? 0) + grams;
    }
    for (const { product, name, massGrams, cost } of event.amounts) {
      const sum = products.get(product) ?? { name, given: 0, planned: 0, cost: 0 };
      if (event.status === "planned") sum.planned += massGrams;
      else sum.given += massGrams;
      sum.cost = sum.cost === undefined || cost === undefined ? undefined : sum.cost + cost;
      products.set(product, sum);
    }
  }
  const lines = [...products].map(([product, { name, given, planned, cost }]): ProductTotal => {
    const total = { product, name, givenGrams: given, plannedGrams: planned, massGrams: given + planned };
    return cost === undefined ? total : { ...total, cost };
  });
  const cost = lines.every((line) => line.cost !== undefined)
    ? lines.reduce((sum, line) => sum + line.cost!, 0)
    : undefined;
  return {
    feeds: events.length,
    cans,
    waterLitres,
    products: lines,
    nutrientGrams: nutrients as Delivered,
    ...(cost === undefined
      ? {}
      : { cost, costPerPlant: cost / plants, ...(cans > 0 ? { costPerCan: cost / cans } : {}) }),
    harvestedGrams: harvested.reduce((sum, { massGrams }) => sum + massGrams, 0),
  };
}
