import { massFractions, molarMass, readFormula } from "../element/formula.ts";
import { NUTRIENT_ELEMENTS } from "../element/nutrient.ts";
import { fractionOf, type Product } from "../product/product.ts";
import { ionsOfFormula } from "./formula-ions.ts";
import { cornersOfGrades } from "./grade-ions.ts";
import type { IonAmounts } from "./ion.ts";

/**
 * The ions that one gram of a product can give when it dissolves, in moles per gram: one answer for a known salt, the
 * corners of what its label allows for a mere grade.
 *
 * A product with a formula is that salt, scaled to what its analysis says of its nutrients: the mean, over the
 * elements that both name, of printed to theory. (Scaling each ion by itself would leave a solution that is not
 * neutral, since labels are rounded down.)
 *
 * @example
 * ionsOfProduct(kno3)[0].K  // => 0.009891...
 */
export function ionsOfProduct(product: Product): readonly IonAmounts[] {
  const known = product.formula === undefined ? undefined : scaledSalt(product, product.formula);
  return known ? [known] : cornersOfGrades([{ product, amount: 1 }]);
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
