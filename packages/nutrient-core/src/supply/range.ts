import { NUTRIENTS, type Nutrient } from "../element/nutrient.ts";
import { type Caution, type CautionKind, raise } from "../outcome/caution.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { isUnlabelled, type LabelRule, labelTolerance } from "../product/label-tolerance.ts";
import { fractionOf, type Product } from "../product/product.ts";
import { BASIS, type Extent } from "./basis.ts";
import type { Delivered } from "./supply.ts";
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

const ANALYSIS_VARIES: CautionKind<{ readonly products: readonly string[] }> = {
  code: "analysis-varies",
  severity: "note",
  source: "common-practice",
  sentence: ({ products }) =>
    `${products.join(", ").replace(/^./, (letter) => letter.toUpperCase())}: no label stands behind these figures, and heaps differ by half and more. Take them as a rough guide, and have a sample tested where it matters.`,
};

/** What to heed about amounts for which no range can be given. */
export function rangeCautions(products: readonly Product[]): Caution[] {
  const names = products.filter(isUnlabelled).map(({ name }) => name);
  return names.length > 0 ? [raise(ANALYSIS_VARIES, { products: names })] : [];
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
 * @returns Low, high and the main cause, for every nutrient that any product holds; none for those that a manure or an
 *   ash brings, whose analysis nobody answers for.
 * @example
 * deliveredRanges([], { basis: "litre", amount: 9 }, { labelRule: "us" })  // => {}
 */
export function deliveredRanges(
  amounts: readonly MeasuredAmount[],
  extent: Extent,
  care: Care,
  already: Delivered = {},
): DeliveredRanges {
  const filling = fillingOf(extent, care);
  const ranges: Partial<Record<Nutrient, DeliveredRange>> = {};
  for (const nutrient of NUTRIENTS) {
    const ends = endsOf(nutrient, amounts, care);
    // What an unlabelled product holds is known to no limits, so neither is what it brings.
    if (ends.length === 0 || ends.some(({ amount }) => isUnlabelled(amount.product))) continue;
    const { perGram } = BASIS[extent.basis];
    const rate = (pick: (end: Ends) => number): number =>
      (ends.reduce((sum, end) => sum + pick(end), 0) * perGram) / extent.amount;
    const exact = rate(({ massGrams, fraction }) => massGrams * fraction);
    const shifts: Shift[] = ends.flatMap((end) => shiftsOf(end, perGram / extent.amount));
    if (filling > 0) {
      shifts.push({ cause: "filling", down: exact - exact / (1 + filling), up: exact / (1 - filling) - exact });
    }
    const there = already[nutrient] ?? 0;
    const main = shifts.reduce<Shift | undefined>((most, one) => (size(one) > size(most) ? one : most), undefined);
    ranges[nutrient] = {
      low: there + rate(({ leastGrams, leastFraction }) => leastGrams * leastFraction) / (1 + filling),
      high: there + rate(({ mostGrams, fraction }) => mostGrams * fraction) / (1 - filling),
      ...(main ? { mainCause: main.cause, mainEffect: size(main) } : {}),
      ...(main?.product === undefined ? {} : { mainProduct: main.product }),
    };
  }
  return ranges;
}

/**
 * The working of {@link deliveredRanges} for one nutrient: `(9.5 g * 0.1927) / (10 L * 1.02)` at the least, and the same
 * at the most.
 */
export function rangeWorking(
  nutrient: Nutrient,
  amounts: readonly MeasuredAmount[],
  extent: Extent,
  care: Care,
  already: Delivered = {},
): WorkingLine[] {
  const range = deliveredRanges(amounts, extent, care, already)[nutrient];
  if (!range) return [];
  const { extentUnit, rateUnit } = BASIS[extent.basis];
  const filling = fillingOf(extent, care);
  const there = already[nutrient] ?? 0;
  const ends = endsOf(nutrient, amounts, care);
  const line = (label: string, terms: readonly string[], fill: number, value: number): WorkingLine => ({
    label: `${nutrient} delivered ${label}`,
    expression: `${there > 0 ? `${term(there)} ${rateUnit} + ` : ""}(${terms.join(" + ")}) / (${term(extent.amount)} ${extentUnit} * ${term(fill)})`,
    value,
    unit: rateUnit,
    source: ends.find(({ source }) => source !== undefined)?.source ?? null,
  });
  return [
    line(
      "at the least",
      ends.map(({ leastGrams, leastFraction }) => `${term(leastGrams)} g * ${term(leastFraction)}`),
      1 + filling,
      range.low,
    ),
    line(
      "at the most",
      ends.map(({ mostGrams, fraction }) => `${term(mostGrams)} g * ${term(fraction)}`),
      1 - filling,
      range.high,
    ),
  ];
}

/** What one product can bring of one nutrient, at the least and at the most. */
interface Ends {
  readonly amount: MeasuredAmount;
  readonly massGrams: number;
  readonly leastGrams: number;
  readonly mostGrams: number;
  readonly fraction: number;
  readonly leastFraction: number;
  /** Of the label's tolerance. */
  readonly source?: string;
}

function endsOf(nutrient: Nutrient, amounts: readonly MeasuredAmount[], { labelRule }: Care): Ends[] {
  return amounts.flatMap((amount) => {
    const { product, massGrams, measure } = amount;
    const fraction = fractionOf(product, nutrient);
    if (!(massGrams > 0 && fraction > 0)) return [];
    const tolerance = labelTolerance(product, nutrient, labelRule);
    const [leastGrams, mostGrams] = massRange(product, massGrams, measure);
    const leastFraction = fraction - (tolerance?.shortfall ?? 0);
    return [
      {
        amount,
        massGrams,
        leastGrams,
        mostGrams,
        fraction,
        leastFraction,
        ...(tolerance ? { source: tolerance.source } : {}),
      },
    ];
  });
}

function fillingOf(extent: Extent, { fillingShare = CAN_SPREAD }: Care): number {
  return extent.basis === "litre" ? fillingShare : 0;
}

const size = (shift: Shift | undefined): number => (shift ? Math.max(shift.down, shift.up) : 0);

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

function shiftsOf({ amount, fraction, leastFraction }: Ends, perGram: number): Shift[] {
  const { product, massGrams, measure } = amount;
  const label: Shift = {
    cause: "label",
    product: product.id,
    down: massGrams * (fraction - leastFraction) * perGram,
    up: 0,
  };
  if (!measure) return [label];
  const spread = measureSpread(massGrams, measure) * fraction * perGram;
  const [thin, dense] = densitySpread(product, measure);
  const rate = massGrams * fraction * perGram;
  return [
    label,
    { cause: measure.kind, product: product.id, down: spread, up: spread },
    { cause: "density", product: product.id, down: rate * (1 - thin), up: rate * (dense - 1) },
  ];
}
