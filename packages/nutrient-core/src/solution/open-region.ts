import { ATOMIC_WEIGHT } from "../element/atomic-weight.ts";
import { molarMass } from "../element/formula.ts";

/** What can make up the open part of a label, by the mole (urea by half a mole, which holds one of nitrogen). */
export const OPEN_PARTS = {
  ammonium: { grams: molarMass({ N: 1, H: 4 }), nitrogen: 1, charge: 1 },
  nitrate: { grams: molarMass({ N: 1, O: 3 }), nitrogen: 1, charge: -1 },
  urea: { grams: molarMass({ C: 1, O: 1, N: 2, H: 4 }) / 2, nitrogen: 1, charge: 0 },
  sulfate: { grams: molarMass({ S: 1, O: 4 }), nitrogen: 0, charge: -2 },
  chloride: { grams: ATOMIC_WEIGHT.Cl, nitrogen: 0, charge: -1 },
  spare: { grams: 1, nitrogen: 0, charge: 0 },
} as const;
export type OpenPart = keyof typeof OPEN_PARTS;
export type Partner = "sulfate" | "chloride";

/** What the open parts have to come to together. */
export interface Open {
  /** Moles of nitrogen. */
  readonly nitrogen: number;
  /** Moles of positive charge that the open parts have to balance. */
  readonly charge: number;
  /** Grams. */
  readonly grams: number;
}

export type Corner = Readonly<Partial<Record<OpenPart, number>>>;

/**
 * The corners of the region of open parts: at each, three of the parts make up the nitrogen, the charge and the
 * weight, and the others are absent. None where no mix of the parts can.
 *
 * @param partners Anions besides nitrate that may be there.
 * @returns Moles of each part; grams of the spare.
 */
export function cornersOf(partners: readonly Partner[], { nitrogen, charge, grams }: Open): readonly Corner[] {
  const parts = ["ammonium", "nitrate", "urea", ...partners, "spare"] as const;
  const corners: Corner[] = [];
  for (let i = 0; i < parts.length; i++) {
    for (let j = i + 1; j < parts.length; j++) {
      for (let k = j + 1; k < parts.length; k++) {
        const chosen = [parts[i]!, parts[j]!, parts[k]!] as const;
        const amounts = solve(chosen, [nitrogen, -charge, grams]);
        if (!amounts || amounts.some((amount) => amount < -1e-12)) continue;
        corners.push(Object.fromEntries(chosen.map((part, at) => [part, Math.max(0, amounts[at]!)])));
      }
    }
  }
  return corners;
}

/** Cramer's rule for the three amounts that make up nitrogen, charge and weight. */
function solve(chosen: readonly [OpenPart, OpenPart, OpenPart], right: readonly number[]): number[] | undefined {
  const columns = chosen.map((part) => [OPEN_PARTS[part].nitrogen, OPEN_PARTS[part].charge, OPEN_PARTS[part].grams]);
  const whole = determinant(columns);
  if (Math.abs(whole) < 1e-9) return undefined;
  return columns.map((_, at) => determinant(columns.map((column, other) => (other === at ? right : column))) / whole);
}

function determinant([a, b, c]: readonly (readonly number[])[]): number {
  return (
    a![0]! * (b![1]! * c![2]! - b![2]! * c![1]!) -
    b![0]! * (a![1]! * c![2]! - a![2]! * c![1]!) +
    c![0]! * (a![1]! * b![2]! - a![2]! * b![1]!)
  );
}
