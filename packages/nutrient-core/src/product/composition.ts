import { asElement, type Content } from "../element/content.ts";
import { type AtomCounts, massFractions } from "../element/formula.ts";
import { NITROGEN_FORMS, NUTRIENT_ELEMENTS, type Nutrient } from "../element/nutrient.ts";
import type { Composition } from "./product.ts";

/**
 * An analysis in any printed forms, as grams of nutrient per gram of product.
 *
 * Nitrogen printed only by its forms is added up to the total; a total that is printed stands.
 *
 * @param contents Shares by mass, each in its own form (element, oxide, ion).
 * @example
 * compositionOf([percentOf("N", 5), percentOf("P2O5", 10)]).P  // => 0.0436428...
 */
export function compositionOf(contents: readonly Content[]): Composition {
  const amounts: Partial<Record<Nutrient, number>> = {};
  for (const content of contents) {
    const { form, massFraction } = asElement(content);
    amounts[form] = (amounts[form] ?? 0) + massFraction;
  }
  if (amounts.N === undefined) {
    const forms = NITROGEN_FORMS.filter((form) => amounts[form] !== undefined);
    if (forms.length > 0) amounts.N = forms.reduce((sum, form) => sum + (amounts[form] ?? 0), 0);
  }
  return amounts;
}

/**
 * A pure substance's composition from its formula, times its purity.
 *
 * The form of the nitrogen is told from the groups of atoms that the formula writes: NO3, NH4 and CO(NH2)2.
 *
 * @param purity Mass of the substance in one unit of mass of the product, more than 0, at most 1.
 */
export function compositionOfFormula(formula: string, atoms: AtomCounts, purity: number): Composition {
  const fractions = massFractions(atoms);
  const amounts: Partial<Record<Nutrient, number>> = {};
  for (const element of NUTRIENT_ELEMENTS) {
    const fraction = fractions[element];
    if (fraction !== undefined) amounts[element] = fraction * purity;
  }
  const total = amounts.N;
  const nitrogenAtoms = atoms.N ?? 0;
  if (total !== undefined) {
    const nitrate = groupCount(formula, "NO3");
    const ammonium = groupCount(formula, "NH4");
    const urea = /CO\(NH2\)2|\(NH2\)2CO|CH4N2O/.test(formula) ? 2 : 0;
    // Only a split that accounts for every nitrogen atom is taken.
    if (nitrate + ammonium + urea === nitrogenAtoms) {
      if (nitrate > 0) amounts["NO3-N"] = (total * nitrate) / nitrogenAtoms;
      if (ammonium > 0) amounts["NH4-N"] = (total * ammonium) / nitrogenAtoms;
      if (urea > 0) amounts["urea-N"] = (total * urea) / nitrogenAtoms;
    }
  }
  return amounts;
}

/** How often a group such as NO3 stands in a formula, brackets and leading numbers counted. */
function groupCount(formula: string, group: string): number {
  let count = 0;
  for (const piece of formula.replace(/\s+/g, "").split(/[·•∙⋅.*]/)) {
    const times = Number(/^\d+/.exec(piece)?.[0] ?? 1);
    const pattern = new RegExp(`\\(${group}\\)(\\d*)|${group}(?!\\d)`, "g");
    for (const match of piece.matchAll(pattern)) count += times * Number(match[1] || 1);
  }
  return count;
}
