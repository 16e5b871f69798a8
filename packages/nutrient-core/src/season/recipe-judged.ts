import { term, type WorkingLine } from "../outcome/working.ts";
import { feedCautions, nitrogenFormCautions } from "../solution/cautions.ts";
import { electricalConductivity } from "../solution/conductivity.ts";
import type { Extent } from "../supply/basis.ts";
import { addDelivered } from "../supply/one-product.ts";
import { deliveredRanges } from "../supply/range.ts";
import { type Amount, type Delivered, deliver, deliveredWorking } from "../supply/supply.ts";
import { measuresFor } from "../supply/weigh-measures.ts";
import type { Recipe, RecipeRequest } from "./recipe.ts";
import type { Exact } from "./recipe-amounts.ts";
import type { SeasonInput } from "./season.ts";

/** A target counts as met within a tenth: as near as a level spoon or a drawn line on a can allows (common practice). */
const MET_WITHIN = 0.1;

/** What is in a can, and what it was made for. */
export interface Weighted extends RecipeRequest, Pick<Exact, "explanation"> {
  readonly amounts: readonly Amount[];
  readonly exactGrams: readonly number[];
}

/** What the amounts come to, how near that is, and what to heed. */
export function judged(made: Weighted, input: SeasonInput, working: readonly WorkingLine[]): Recipe {
  const { amounts, wanted, fromMix } = made;
  const extent: Extent = { basis: "litre", amount: input.canLitres };
  const used = amounts.filter(({ massGrams }) => massGrams > 0);
  const added = deliver(used, extent);
  const delivered = addDelivered(added, input.water);
  const conductivity = electricalConductivity(used, input.canLitres);
  const missed = wanted.flatMap(({ nutrient, rate, asked }) => {
    const got = (delivered[nutrient] ?? 0) + (fromMix[nutrient] ?? 0);
    if (Math.abs(got - rate) <= MET_WITHIN * rate) return [];
    // In the form that was asked for: a wanted K2O is missed in K2O.
    const inForm = (amount: number): string => ((amount * asked.rate) / rate).toPrecision(3);
    const mix = fromMix[nutrient] ?? 0;
    // What the mix gives never shows in the can: without it the sentence would contradict the can's own figures.
    const parts = mix > 0 ? ` (can ${inForm(delivered[nutrient] ?? 0)}, mix ${inForm(mix)})` : "";
    return [`${asked.form} comes to ${inForm(got)} mg/L instead of ${inForm(rate)}${parts}.`];
  });
  const measures = input.measures
    ? measuresFor(
        used.map(({ product }) => product),
        input.measures,
      )
    : undefined;
  const ranges = deliveredRanges(
    used.map((amount, index) => (measures?.ok ? { ...amount, measure: measures.value[index]! } : amount)),
    extent,
    { labelRule: input.labelRule },
    input.water,
  );
  const perCan = (rate: number): number => (rate * input.canLitres) / 1000;
  const gramsPerCanRange: Partial<Record<"N" | "P" | "K", readonly [number, number]>> = {};
  for (const nutrient of ["N", "P", "K"] as const) {
    const range = ranges[nutrient];
    const fixed = delivered[nutrient] ?? 0;
    gramsPerCanRange[nutrient] = range ? [perCan(range.low), perCan(range.high)] : [perCan(fixed), perCan(fixed)];
  }
  return {
    amounts,
    exactGrams: made.exactGrams,
    delivered,
    gramsPerCan: Object.fromEntries(Object.entries(delivered).map(([name, rate]) => [name, perCan(rate)])),
    gramsPerCanRange,
    ...(conductivity.known && used.length > 0 ? { ecMilliSiemensPerCm: conductivity.milliSiemensPerCm } : {}),
    reached: missed.length === 0 ? "met" : "closest",
    explanation: missed,
    reasons: made.explanation,
    cautions: [...feedCautions(delivered, extent, conductivity, used), ...nitrogenFormCautions(delivered)],
    working: [
      ...working,
      ...(["N", "P", "K"] as const).flatMap((nutrient) => canWorking(used, nutrient, extent, added, input.water)),
    ],
  };
}

function canWorking(
  used: readonly Amount[],
  nutrient: "N" | "P" | "K",
  extent: Extent,
  added: Delivered,
  water: Delivered,
): WorkingLine[] {
  const rate = added[nutrient] ?? 0;
  if (!(rate > 0)) return [];
  const line = deliveredWorking(used, nutrient, extent, rate);
  const total = rate + (water[nutrient] ?? 0);
  const grams = (total * extent.amount) / 1000;
  return [
    line,
    {
      label: `${nutrient} in a can, with the water's own`,
      expression: `(${term(rate)} mg/L + ${term(water[nutrient] ?? 0)} mg/L) * ${term(extent.amount)} L`,
      value: grams,
      unit: "g",
      source: null,
    },
  ];
}
