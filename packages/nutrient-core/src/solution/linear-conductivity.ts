import type { Product } from "../product/product.ts";
import { slowing } from "./conductivity.ts";
import { entriesOf, IONS } from "./ion.ts";
import { ionsOfProduct } from "./product-ions.ts";

/**
 * The ionic strength of a feed of this conductivity, roughly, mol/L: 0.0107 for each mS/cm, the lowest of five standard
 * feeds for substrates (0.0107 to 0.0123), so that the straight line reads high rather than low.
 *
 * @example
 * ionicStrengthNear(2)  // => 0.0214
 */
export function ionicStrengthNear(milliSiemensPerCm: number): number {
  return 0.0107 * milliSiemensPerCm;
}

/**
 * What one gram of a product adds to a feed's conductivity, as a plain factor: the sum of the factors times the
 * grams is about the conductivity of a feed of that ionic strength.
 *
 * It is the full model with the strength held still and without ion pairs. It reads within 1 % without calcium and
 * magnesium sulfate, 4 to 9 % high in complete feeds, and a third high for magnesium sulfate alone at 1 g/L: a ceiling
 * kept by it is kept. Whoever needs the last tenth asks `electricalConductivity` of the answer.
 * A product known by its grade only counts with the middle of its bounds.
 *
 * @param litres Litres of feed.
 * @param strength Ionic strength at which the line touches, mol/L: that of the ceiling, or of the feed expected.
 * @returns mS/cm per gram.
 * @example
 * conductivityPerGram(kno3, 10, ionicStrengthNear(2))  // => 0.13...
 */
export function conductivityPerGram(product: Product, litres: number, strength: number): number {
  const factors = ionsOfProduct(product).map((ions) =>
    entriesOf(ions).reduce((sum, [ion, molesPerGram]) => {
      const { charge, equivalentConductivity } = IONS[ion];
      const { activity, exponent } = slowing(charge, strength);
      return sum + Math.abs(charge) * equivalentConductivity * molesPerGram * activity ** exponent;
    }, 0),
  );
  return (Math.min(...factors) + Math.max(...factors)) / 2 / litres;
}
