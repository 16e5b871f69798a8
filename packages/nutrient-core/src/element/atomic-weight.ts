/**
 * Standard atomic weights, abridged to five figures: CIAAW / IUPAC technical report 2021
 * (Pure and Applied Chemistry 94, 573), source id `ciaaw-2021`. Dimensionless, or g/mol.
 *
 * H, B, C, N, O, Mg, Si, S and Cl have interval weights; the abridged number is the one meant for use.
 */
export const ATOMIC_WEIGHT = {
  H: 1.008,
  B: 10.81,
  C: 12.011,
  N: 14.007,
  O: 15.999,
  F: 18.998,
  Na: 22.99,
  Mg: 24.305,
  Al: 26.982,
  Si: 28.085,
  P: 30.974,
  S: 32.06,
  Cl: 35.45,
  K: 39.098,
  Ca: 40.078,
  Mn: 54.938,
  Fe: 55.845,
  Co: 58.933,
  Ni: 58.693,
  Cu: 63.546,
  Zn: 65.38,
  Se: 78.971,
  Mo: 95.95,
  I: 126.9,
} as const;

export type ElementSymbol = keyof typeof ATOMIC_WEIGHT;

export function isElementSymbol(text: string): text is ElementSymbol {
  return Object.hasOwn(ATOMIC_WEIGHT, text);
}
