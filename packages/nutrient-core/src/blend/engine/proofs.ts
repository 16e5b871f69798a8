import type { ScaledProblem } from "./scaling.ts";
import type { AimProof } from "./solution.ts";
import type { Stage } from "./stages.ts";

/** A scaled multiplier smaller than this is rounding, and its sign means nothing. */
const NO_MULTIPLIER = 1e-12;

/** A proof before the answer's own values are known. */
export type AimMultipliers = Omit<AimProof, "value">;

/**
 * Turns the prices of a board into a proof in raw units: of its hard rows, and of the rows after them, which stand for
 * `nutrients` in their order. `unit` is what one unit of the board's own aim comes to.
 */
export function rowsProof(
  scaled: ScaledProblem,
  { dials, firstRow }: Stage,
  aim: AimProof["aim"],
  unit: number,
  nutrients: readonly number[],
): AimMultipliers {
  const { price } = dials;
  const ceilings = rawHardRows(scaled, price, firstRow, unit);
  const total = scaled.hasTotal ? ceilings.pop()! : 0;
  const targets = new Array<number>(scaled.nutrients).fill(0);
  const first = firstRow + scaled.hardUnit.length;
  for (let k = 0; k < nutrients.length; k++) {
    const i = nutrients[k]!;
    // Both sides of a band may stand for one nutrient.
    targets[i] = add(targets[i]!, clean(price[first + k]!) * unit * scaled.rowUnit[i]!);
  }
  return { aim, targets, ceilings, total };
}

/** Multipliers of the hard rows in raw units, for the proof that they contradict each other. */
export function rawHardRows(scaled: ScaledProblem, prices: Float64Array, firstRow: number, unit: number): number[] {
  const multipliers: number[] = [];
  for (let r = 0; r < scaled.hardUnit.length; r++) {
    multipliers.push(clean(prices[firstRow + r]!) * unit * scaled.hardUnit[r]!);
  }
  return multipliers;
}

function clean(multiplier: number): number {
  return Math.abs(multiplier) > NO_MULTIPLIER ? multiplier : 0;
}

/** A sum, 0 where the two cancel. */
function add(a: number, b: number): number {
  const sum = a + b;
  return Math.abs(sum) > NO_MULTIPLIER * (Math.abs(a) + Math.abs(b)) ? sum : 0;
}
