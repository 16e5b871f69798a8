import type { Ion, IonAmounts } from "./ion.ts";

/** What acid and base make of each other, strongest first; an undefined product is water or dissolved gas. */
const REACTIONS: readonly { readonly from: readonly [Ion, Ion]; readonly to?: Ion }[] = [
  { from: ["H", "OH"] },
  { from: ["H", "PO4"], to: "HPO4" },
  { from: ["H", "CO3"], to: "HCO3" },
  { from: ["H", "HPO4"], to: "H2PO4" },
  { from: ["H", "HCO3"] },
  { from: ["OH", "H2PO4"], to: "HPO4" },
  { from: ["OH", "HCO3"], to: "CO3" },
];

/**
 * Lets acids and bases use each other up, as they do when acid meets the bicarbonate of a hard water: hydrogen and
 * hydroxide carry far more current than any nutrient, so that counting them as if they had not met would be wrong.
 *
 * @param ions Moles per litre.
 * @example
 * neutralised({ H: 0.001, NO3: 0.001, Ca: 0.001, HCO3: 0.002 })  // => { H: 0, NO3: 0.001, Ca: 0.001, HCO3: 0.001 }
 */
export function neutralised(ions: IonAmounts): IonAmounts {
  const left: Partial<Record<Ion, number>> = { ...ions };
  for (const { from, to } of REACTIONS) {
    const [acid, base] = from;
    const amount = Math.min(left[acid] ?? 0, left[base] ?? 0);
    if (amount <= 0) continue;
    left[acid] = left[acid]! - amount;
    left[base] = left[base]! - amount;
    if (to) left[to] = (left[to] ?? 0) + amount;
  }
  return left;
}
