import type { BlendInput } from "../blend/blend-input.ts";
import { explain } from "../blend/explain/explain.ts";
import { reachBlend } from "../blend/reach.ts";
import { dose } from "../dose/dose.ts";
import type { Caution } from "../outcome/caution.ts";
import { answer, type Outcome } from "../outcome/outcome.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import type { Product } from "../product/product.ts";
import { feedCautions, nitrogenFormCautions } from "../solution/cautions.ts";
import { electricalConductivity } from "../solution/conductivity.ts";
import type { Extent } from "../supply/basis.ts";
import { addDelivered } from "../supply/one-product.ts";
import { deliveredRanges } from "../supply/range.ts";
import { type Amount, type Delivered, deliver, deliveredWorking, supplyPerGram } from "../supply/supply.ts";
import type { Wanted } from "../supply/target.ts";
import { weigh } from "../supply/weigh.ts";
import { measuresFor } from "../supply/weigh-measures.ts";
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

/** A target counts as met within a tenth: as near as a level spoon or a drawn line on a can allows (common practice). */
const MET_WITHIN = 0.1;

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
  const measured = measurable(products, exact.value.grams, request.wanted, already, extent, input);
  if (!measured.ok) return measured;
  const amounts = products.map((product, index): Amount => ({ product, massGrams: measured.value[index]! }));
  return answer(
    judged({ ...request, amounts, exactGrams: exact.value.grams, explanation: exact.value.explanation }, input, [
      ...exact.working,
    ]),
  );
}

interface Exact {
  readonly grams: readonly number[];
  /** Why it comes no nearer, in words: worked out only when it is asked for, since many materials are tried for it. */
  readonly explanation: () => readonly string[];
}

function exactAmounts(
  products: readonly Product[],
  wanted: readonly Wanted[],
  already: Delivered,
  extent: Extent,
): Outcome<Exact> {
  const [only] = products;
  if (products.length === 1 && only) {
    const leading = wanted[0]!;
    const dosed = dose({
      product: only,
      purpose: { kind: "target", wanted: leading },
      waterLitres: extent.amount,
      already,
    });
    if (!dosed.ok) return dosed;
    return answer({ grams: [dosed.value.amounts[0]!.massGrams], explanation: () => [] }, [], dosed.working);
  }
  const input: BlendInput = { products, purpose: { kind: "target", wanted, extent }, already, within: 0 };
  const blended = reachBlend(input);
  if (!blended.ok) return blended;
  const { massGrams } = blended.value;
  // Where water and mix bring most of it, none of the products may come nearer: then none is the answer.
  if (massGrams.every((grams) => !(grams > 0))) return answer({ grams: massGrams, explanation: () => [NO_NEARER] });
  return answer({ grams: massGrams, explanation: () => explain(input, blended.value) });
}

const NO_NEARER = "Water and mix bring so much already that none of the products comes nearer: plain water will do.";

/** The amounts in whole steps of what there is to measure with, chosen together. */
function measurable(
  products: readonly Product[],
  grams: readonly number[],
  wanted: readonly Wanted[],
  already: Delivered,
  extent: Extent,
  { measures }: SeasonInput,
): Outcome<readonly number[]> {
  if (!measures) return answer(grams);
  const steps = measuresFor(products, measures);
  if (!steps.ok) return steps;
  const rows = wanted.map(({ nutrient, rate }) => {
    const supply = products.map((product) => supplyPerGram(product, nutrient, extent));
    const low = Math.max(0, rate - (already[nutrient] ?? 0));
    const ideal = supply.reduce((sum, perGram, index) => sum + perGram * grams[index]!, 0);
    return { supply, low, high: low, ideal, scale: rate > 0 ? rate : 1, weight: 1 };
  });
  // One product follows its leading nutrient alone, as its dose does.
  const { best, roundedEach } = weigh({
    rows: products.length === 1 ? rows.slice(0, 1) : rows,
    steps: steps.value.map(({ stepGrams }) => stepGrams),
    idealGrams: grams,
    most: products.map(() => Number.POSITIVE_INFINITY),
    leastIfUsed: products.map(() => 0),
    ceilings: [],
  });
  return answer((best ?? roundedEach).massGrams);
}

interface Weighted extends RecipeRequest, Pick<Exact, "explanation"> {
  readonly amounts: readonly Amount[];
  readonly exactGrams: readonly number[];
}

/** What the amounts come to, how near that is, and what to heed. */
function judged(made: Weighted, input: SeasonInput, working: readonly WorkingLine[]): Recipe {
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
    return [
      `${asked.form} comes to ${((got * asked.rate) / rate).toPrecision(3)} mg/L instead of ${asked.rate.toPrecision(3)}.`,
    ];
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
    cautions: [...feedCautions(delivered, extent, conductivity), ...nitrogenFormCautions(delivered)],
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

function plainWater(request: RecipeRequest, input: SeasonInput): Recipe {
  const names = request.wanted.map(({ nutrient }) => nutrient).join(", ");
  const recipe = judged({ ...request, amounts: [], exactGrams: [], explanation: () => [] }, input, []);
  return {
    ...recipe,
    reached: "met",
    explanation: [`Water and mix already bring the ${names} that is wanted: plain water will do.`],
  };
}
