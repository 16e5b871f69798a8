import type { Product } from "../product/product.ts";
import { slowing } from "./conductivity.ts";
import { entriesOf, IONS } from "./ion.ts";
import { ionsOfProduct } from "./product-ions.ts";

/**
 * The ionic strength of a feed of this conductivity, roughly, mol/L: 0.0144 for each mS/cm (from memory; it only
 * places the straight line, and ten percent more or less move the result by one).
 *
 * @example
 * ionicStrengthNear(2)  // => 0.0288
 */
export function ionicStrengthNear(milliSiemensPerCm: number): number {
  return 0.0144 * milliSiemensPerCm;
}

/**
 * What one gram of a product adds to a feed's conductivity, as a plain factor: the sum of the factors times the
 * grams is the conductivity of a feed of that ionic strength.
 *
 * It is the full model with the strength held still and without ion pairs, so it reads high: by 1 % in feeds without
 * sulfate, by 10 % at the most in complete ones with calcium and magnesium. A ceiling on it keeps the ceiling.
 * A product known by its grade only counts with the middle of its bounds.
 *
 * @param litres Litres of feed.
 * @param strength Ionic strength at which the line touches, mol/L: that of the ceiling, or of the feed expected.
 * @returns mS/cm per gram.
 * @example
 * conductivityPerGram(kno3, 10, ionicStrengthNear(2))  // => 0.13...
 */
export function conductivityPerGram(product: Product, litres: number, strength: number): number {
  const { least, most } = ionsOfProduct(product);
  const factor = [least, most].reduce(
    (sum, ions) =>
      sum +
      entriesOf(ions).reduce((part, [ion, molesPerGram]) => {
        const { charge, equivalentConductivity } = IONS[ion];
        const { activity, exponent } = slowing(charge, strength);
        return part + Math.abs(charge) * equivalentConductivity * molesPerGram * activity ** exponent;
      }, 0),
    0,
  );
  return factor / 2 / litres;
}
