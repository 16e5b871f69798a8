import { NUTRIENTS, type Nutrient } from "../element/nutrient.ts";
import { type LabelRule, labelTolerance } from "../product/label-tolerance.ts";
import { fractionOf, type Product } from "../product/product.ts";
import type { Extent } from "./basis.ts";
import { type Delivered, supplyPerGram } from "./supply.ts";
import { type Measure, SPOON_SPREAD } from "./weigh-measures.ts";

/** Why what is delivered can differ from what was worked out. */
export type RangeCause = "label" | "scale" | "spoons" | "syringe" | "scoop" | "density" | "filling";

/** The least and the most that can be delivered of one nutrient, every cause at its worst at once. */
export interface DeliveredRange {
  readonly low: number;
  readonly high: number;
  /** The one cause that moves this nutrient most by itself; undefined where nothing moves it. */
  readonly mainCause?: RangeCause;
  /** The product whose label or measuring it is. */
  readonly mainProduct?: string;
  /** How far that cause alone moves it, in the rate's own unit. */
  readonly mainEffect?: number;
}

export type DeliveredRanges = Readonly<Partial<Record<Nutrient, DeliveredRange>>>;

/** One product's amount, and how it was measured where that is known. */
export interface MeasuredAmount {
  readonly product: Product;
  readonly massGrams: number;
  readonly measure?: Measure;
}

/** How carefully the rest was done. */
export interface Care {
  readonly labelRule: LabelRule;
  /** How far the can or tank may be filled wrongly, as a share; {@link CAN_SPREAD} by habit. Water only. */
  readonly fillingShare?: number;
}

/** A can is filled to its mark within two hundredths (common practice, no source). */
export const CAN_SPREAD = 0.02;

interface Shift {
  readonly cause: RangeCause;
  readonly product?: string;
  /** How far down and up it moves the rate by itself, both from 0 up. */
  readonly down: number;
  readonly up: number;
}

/**
 * Between which limits lies what is really delivered?
 *
 * A label is a legal minimum with a tolerance below it: more may be in the bag, but no rule says how much, so the
 * label widens the range downwards only. Scale, spoon, syringe and can widen it both ways. Everything is taken at its
 * worst at once; real errors partly cancel.
 *
 * @param amounts Grams of each product, with its measure (half a step of a scale or syringe, a tenth of a spoon).
 * @param extent What they are spread over. Only water has a filling error.
 * @param care Whose label rule, and the care in filling.
 * @param already Rates already there: they are taken as known.
 * @returns Low, high and the main cause, for every nutrient that any product holds.
 * @example
 * deliveredRanges([], { basis: "litre", amount: 9 }, { labelRule: "us" })  // => {}
 */
export function deliveredRanges(
  amounts: readonly MeasuredAmount[],
  extent: Extent,
  care: Care,
  already: Delivered = {},
): DeliveredRanges {
  const filling = extent.basis === "litre" ? (care.fillingShare ?? CAN_SPREAD) : 0;
  const used = amounts.filter(({ massGrams }) => massGrams > 0);
  const ranges: Partial<Record<Nutrient, DeliveredRange>> = {};
  for (const nutrient of NUTRIENTS) {
    if (!used.some(({ product }) => fractionOf(product, nutrient) > 0)) continue;
    let low = 0;
    let high = 0;
    let exact = 0;
    const shifts: Shift[] = [];
    for (const { product, massGrams, measure } of used) {
      const perGram = supplyPerGram(product, nutrient, extent);
      if (!(perGram > 0)) continue;
      const [least, most] = massRange(product, massGrams, measure);
      const leastPerGram = perGram * (1 - shortfallShare(product, nutrient, care.labelRule));
      exact += massGrams * perGram;
      low += least * leastPerGram;
      high += most * perGram;
      shifts.push(...shiftsOf({ product, massGrams, ...(measure ? { measure } : {}) }, perGram, leastPerGram));
    }
    if (filling > 0) {
      shifts.push({ cause: "filling", down: exact - exact / (1 + filling), up: exact / (1 - filling) - exact });
    }
    const there = already[nutrient] ?? 0;
    const main = shifts.reduce<Shift | undefined>((most, one) => (size(one) > size(most) ? one : most), undefined);
    ranges[nutrient] = {
      low: there + low / (1 + filling),
      high: there + high / (1 - filling),
      ...(main ? { mainCause: main.cause, mainEffect: size(main) } : {}),
      ...(main?.product === undefined ? {} : { mainProduct: main.product }),
    };
  }
  return ranges;
}

const size = (shift: Shift | undefined): number => (shift ? Math.max(shift.down, shift.up) : 0);

function shortfallShare(product: Product, nutrient: Nutrient, rule: LabelRule): number {
  const tolerance = labelTolerance(product, nutrient, rule);
  return tolerance ? tolerance.shortfall / fractionOf(product, nutrient) : 0;
}

/** The least and most grams that a measured amount can really be. */
function massRange(product: Product, massGrams: number, measure: Measure | undefined): readonly [number, number] {
  const spread = measureSpread(massGrams, measure);
  const [thin, dense] = densitySpread(product, measure);
  return [Math.max(0, massGrams - spread) * thin, (massGrams + spread) * dense];
}

/** Half a step of a scale or syringe; a tenth of what spoons and scoops hold. */
function measureSpread(massGrams: number, measure: Measure | undefined): number {
  if (!measure) return 0;
  return measure.kind === "spoons" || measure.kind === "scoop" ? SPOON_SPREAD * massGrams : measure.stepGrams / 2;
}

/** How much less and more a measured volume can weigh, as factors, by the published range of the density. */
function densitySpread(product: Product, measure: Measure | undefined): readonly [number, number] {
  const density = product.densityKilogramsPerLitre;
  if (measure?.stepMillilitres === undefined || !density || !product.densityRange) return [1, 1];
  return [product.densityRange[0] / density, product.densityRange[1] / density];
}

function shiftsOf(amount: MeasuredAmount, perGram: number, leastPerGram: number): Shift[] {
  const { product, massGrams, measure } = amount;
  const shifts: Shift[] = [{ cause: "label", product: product.id, down: massGrams * (perGram - leastPerGram), up: 0 }];
  if (!measure) return shifts;
  const spread = measureSpread(massGrams, measure) * perGram;
  shifts.push({ cause: measure.kind, product: product.id, down: spread, up: spread });
  const [thin, dense] = densitySpread(product, measure);
  shifts.push({
    cause: "density",
    product: product.id,
    down: massGrams * perGram * (1 - thin),
    up: massGrams * perGram * (dense - 1),
  });
  return shifts;
}
