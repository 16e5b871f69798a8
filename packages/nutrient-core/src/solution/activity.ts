import { entriesOf, IONS, type IonAmounts } from "./ion.ts";

/** The Debye-Hückel constant of water at 25 °C. */
export const DEBYE_HUCKEL_A = 0.5085;

/**
 * Half the sum of concentration times charge squared: how much the ions of a solution hinder each other, mol/L.
 *
 * @example
 * ionicStrength({ Ca: 0.001, Cl: 0.002 })  // => 0.003
 */
export function ionicStrength(ions: IonAmounts): number {
  return entriesOf(ions).reduce((sum, [ion, amount]) => sum + (amount * IONS[ion].charge ** 2) / 2, 0);
}

/**
 * The activity coefficient of an ion by Davies' equation: 1 in pure water, less the stronger the solution.
 *
 * log10 = -A z2 (sqrt(I) / (1 + sqrt(I)) - 0.3 I). Beyond 0.5 mol/L the equation turns up again without meaning, so
 * that its value at 0.5 stands for everything stronger: a stock tank is judged with wide bounds, never with this alone.
 *
 * @param charge Of the ion.
 * @param strength Ionic strength, mol/L, 0 or more.
 * @example
 * daviesActivity(2, 0.01)  // => 0.6625...
 */
export function daviesActivity(charge: number, strength: number): number {
  const limited = Math.min(strength, 0.5);
  const root = Math.sqrt(limited);
  return 10 ** (-DEBYE_HUCKEL_A * charge ** 2 * (root / (1 + root) - 0.3 * limited));
}

/**
 * The same without Davies' upward term: lower at all strengths above a tenth, and the other bound where salts are
 * judged in stock tanks (Güntelberg's equation).
 */
export function lowActivity(charge: number, strength: number): number {
  const root = Math.sqrt(strength);
  return 10 ** ((-DEBYE_HUCKEL_A * charge ** 2 * root) / (1 + root));
}
