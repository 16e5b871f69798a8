import { NUTRIENTS, type Nutrient } from "../element/nutrient.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { fractionOf, type Product } from "../product/product.ts";
import { BASIS, type Extent } from "./basis.ts";

/**
 * The one linear map: amounts of products, times what they hold, over what they are spread on.
 * Nothing else in the library multiplies a share by a mass.
 */

/** A product and how much of it, in grams. */
export interface Amount {
  readonly product: Product;
  readonly massGrams: number;
}

/** Nutrient per unit of the basis: mg per litre, g per square metre or g per cubic metre, as the element or nitrogen form. */
export type Delivered = Readonly<Partial<Record<Nutrient, number>>>;

/**
 * What one gram of a product delivers of a nutrient, per unit of the basis.
 *
 * @example
 * supplyPerGram(kno3, "K", { basis: "litre", amount: 10 })  // => 38.67...
 */
export function supplyPerGram(product: Product, nutrient: Nutrient, extent: Extent): number {
  return (fractionOf(product, nutrient) * BASIS[extent.basis].perGram) / extent.amount;
}

/** Forwards: what these amounts deliver, for every nutrient any of them holds. */
export function deliver(amounts: readonly Amount[], extent: Extent): Delivered {
  const delivered: Partial<Record<Nutrient, number>> = {};
  for (const nutrient of NUTRIENTS) {
    if (!amounts.some(({ product }) => product.composition[nutrient] !== undefined)) continue;
    delivered[nutrient] = amounts.reduce(
      (sum, { product, massGrams }) => sum + massGrams * supplyPerGram(product, nutrient, extent),
      0,
    );
  }
  return delivered;
}

/**
 * Backwards, for one product: the grams that deliver this rate of a nutrient. Undefined when it holds none of it.
 *
 * @param rate mg/L, g/m2 or g/m3 of the element or nitrogen form.
 */
export function massForRate(product: Product, nutrient: Nutrient, rate: number, extent: Extent): number | undefined {
  const perGram = supplyPerGram(product, nutrient, extent);
  return perGram > 0 ? rate / perGram : undefined;
}

/** Backwards, for several products: the matrix (a row per nutrient, a column per product) that a blend is solved from. */
export function supplyMatrix(products: readonly Product[], nutrients: readonly Nutrient[], extent: Extent): number[][] {
  return nutrients.map((nutrient) => products.map((product) => supplyPerGram(product, nutrient, extent)));
}

/**
 * The working of {@link massForRate} as a line that can be evaluated: `9 L * 150 mg/L / 0.2`.
 *
 * @param rate In the basis' rate unit, of the element.
 */
export function massWorking(
  product: Product,
  nutrient: Nutrient,
  rate: number,
  extent: Extent,
  massGrams: number,
): WorkingLine {
  const { extentUnit, rateUnit } = BASIS[extent.basis];
  return {
    label: `${product.name} for ${nutrient}`,
    expression: `${term(extent.amount)} ${extentUnit} * ${term(rate)} ${rateUnit} / ${share(product, nutrient)}`,
    value: massGrams,
    unit: amountUnit(product),
    source: product.source,
  };
}

/** What an amount of a product is told in: grams, or millilitres where nobody said what those weigh. */
export function amountUnit({ massUnknown }: Product): "g" | "mL" {
  return massUnknown ? "mL" : "g";
}

/** A share by mass, or grams in a millilitre. */
function share(product: Product, nutrient: Nutrient): string {
  const fraction = term(fractionOf(product, nutrient));
  return product.massUnknown ? `(${fraction} g/mL)` : fraction;
}

/** The working of {@link deliver} for one nutrient: `(6.75 g * 0.2 + 2 g * 0.15) / 9 L`. */
export function deliveredWorking(
  amounts: readonly Amount[],
  nutrient: Nutrient,
  extent: Extent,
  rate: number,
): WorkingLine {
  const { extentUnit, rateUnit } = BASIS[extent.basis];
  const terms = amounts
    .filter(({ product }) => fractionOf(product, nutrient) > 0)
    .map(({ product, massGrams }) => `${term(massGrams)} ${amountUnit(product)} * ${share(product, nutrient)}`);
  return {
    label: `${nutrient} delivered`,
    expression: `(${terms.join(" + ")}) / (${term(extent.amount)} ${extentUnit})`,
    value: rate,
    unit: rateUnit,
    source: null,
  };
}
