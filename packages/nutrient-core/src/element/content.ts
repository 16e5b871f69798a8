import {
  type ContentForm,
  elementPerForm,
  type Nutrient,
  nutrientOf,
  type OXIDES,
  type OxideName,
} from "./nutrient.ts";

/**
 * A share by mass, with the form it is a share of in its type: `Content<"P">` and `Content<"P2O5">`
 * are different kinds, and neither can be added to the other (a bag's 10 % P2O5 holds 4.4 % P).
 */
export interface Content<F extends ContentForm = ContentForm> {
  readonly form: F;
  /** Mass of the form in one unit of mass of the whole, 0 to 1. */
  readonly massFraction: number;
}

/** A share from percent by mass. */
export function percentOf<F extends ContentForm>(form: F, percentByMass: number): Content<F> {
  return { form, massFraction: percentByMass / 100 };
}

/**
 * Adds shares of one and the same form; two different forms do not compile.
 *
 * @example
 * addContents(percentOf("P2O5", 10), percentOf("P2O5", 5)).massFraction  // => 0.15000000000000002
 */
export function addContents<F extends ContentForm>(first: Content<F>, second: Content<NoInfer<F>>): Content<F> {
  return { form: first.form, massFraction: first.massFraction + second.massFraction };
}

/**
 * The same share as an amount of the nutrient itself: oxide to element, ion to element.
 *
 * @param content A share of any form, by mass.
 * @returns The share of the element (or of the nitrogen form) by mass.
 * @example
 * asElement(percentOf("P2O5", 20)).massFraction  // => 0.0872857...
 */
export function asElement(content: Content): Content<Nutrient> {
  return { form: nutrientOf(content.form), massFraction: content.massFraction * elementPerForm(content.form) };
}

/**
 * The share of an element as the oxide that labels print.
 *
 * @example
 * asOxide(percentOf("K", 20), "K2O").massFraction  // => 0.240920...
 */
export function asOxide<O extends OxideName>(content: Content<(typeof OXIDES)[O]["element"]>, oxide: O): Content<O> {
  return { form: oxide, massFraction: content.massFraction / elementPerForm(oxide) };
}
