import { ATOMIC_WEIGHT, type ElementSymbol } from "../element/atomic-weight.ts";
import { type AtomCounts, massFractions, readFormula } from "../element/formula.ts";
import { type ContentForm, type NutrientElement, nutrientOf } from "../element/nutrient.ts";

/** Atomic weights stand behind every factor between element and oxide. */
export const WEIGHTS = "ciaaw-2021";

/** A form's name is its formula: `2 * 30.974 / (2 * 30.974 + 5 * 15.999)` for P2O5. */
export function elementFactor(form: ContentForm): string {
  const atoms = atomsOf(form);
  const element = elementOf(form);
  return `${counted(element, atoms[element]!)} / (${weightSum(atoms)})`;
}

/** The number that {@link elementFactor} writes out; 1 for the element itself. */
export function factorValue(form: ContentForm, element: NutrientElement): number {
  return form === element ? 1 : massFractions(atomsOf(form))[element]!;
}

/** NO3 and NH4 are nitrogen too. */
const elementOf = (form: ContentForm): NutrientElement => {
  const nutrient = nutrientOf(form);
  return nutrient.endsWith("-N") ? "N" : (nutrient as NutrientElement);
};

/** The atoms of a formula that is known to be one. */
export function atomsOf(formula: string): AtomCounts {
  const atoms = readFormula(formula);
  if (!atoms.ok) throw new Error(`not a formula: ${formula}`);
  return atoms.value;
}

/** So many atoms' weight: `5 * 15.999`. */
export const counted = (symbol: ElementSymbol, count: number): string =>
  count === 1 ? String(ATOMIC_WEIGHT[symbol]) : `${count} * ${ATOMIC_WEIGHT[symbol]}`;

/** The atoms of a formula as a sum of weights: `39.098 + 14.007 + 3 * 15.999`. */
export function weightSum(atoms: AtomCounts): string {
  return (Object.entries(atoms) as [ElementSymbol, number][])
    .map(([symbol, count]) => counted(symbol, count))
    .join(" + ");
}
