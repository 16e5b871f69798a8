import { massFractions, molarMass, readFormula } from "../element/formula.ts";
import { NUTRIENT_ELEMENTS } from "../element/nutrient.ts";
import { fractionOf, type Product } from "../product/product.ts";
import { ionsOfFormula } from "./formula-ions.ts";
import { ionsOfGrade } from "./grade-ions.ts";
import type { IonAmounts } from "./ion.ts";

/** The ions of one gram of a product, in moles: one answer for a known salt, two bounds for a mere grade. */
export interface ProductIons {
  /** Ions as few and as slow as the label allows; the same as `most` for a known salt. */
  readonly least: IonAmounts;
  readonly most: IonAmounts;
}

/**
 * The ions that one gram of a product gives when it dissolves, in moles per gram.
 *
 * A product with a formula is that salt, scaled to what its analysis says of its nutrients: the mean, over the
 * elements that both name, of printed to theory. (Scaling each ion by itself would leave a solution that is not
 * neutral, since labels are rounded down.) Of a product without one, only bounds can be given.
 *
 * @example
 * ionsOfProduct(kno3).most.K  // => 0.009891...
 */
export function ionsOfProduct(product: Product): ProductIons {
  const known = product.formula === undefined ? undefined : scaledSalt(product, product.formula);
  return known ? { least: known, most: known } : ionsOfGrade(product);
}

function scaledSalt(product: Product, formula: string): IonAmounts | undefined {
  const ions = ionsOfFormula(formula);
  const atoms = readFormula(formula);
  if (!ions || !atoms.ok) return undefined;
  const theory = massFractions(atoms.value);
  const ratios = NUTRIENT_ELEMENTS.flatMap((element) => {
    const pure = theory[element];
    const printed = fractionOf(product, element);
    return pure !== undefined && printed > 0 ? [printed / pure] : [];
  });
  if (ratios.length === 0) return undefined;
  const purity = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
  const unitsPerGram = purity / molarMass(atoms.value);
  return Object.fromEntries(Object.entries(ions).map(([ion, count]) => [ion, count * unitsPerGram]));
}
