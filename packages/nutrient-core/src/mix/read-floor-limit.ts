import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { NUMBER_PATTERN, plainText, readNumber } from "../quantity/number.ts";
import { floorLoad, KILOPASCALS_PER_PSF } from "./weight.ts";

const UNITS: Readonly<Record<string, number>> = {
  kpa: 1,
  "kn/m2": 1,
  psf: KILOPASCALS_PER_PSF,
  "lb/sqft": KILOPASCALS_PER_PSF,
  "lb/ft2": KILOPASCALS_PER_PSF,
  "kg/m2": floorLoad(1).kilopascals,
  "kg/sqm": floorLoad(1).kilopascals,
};

/**
 * Reads what a floor may carry: `2.5 kPa`, `2.5 kN/m2`, `60 psf` or `250 kg/m2`.
 *
 * @returns Kilopascals.
 * @example
 * readFloorLimit("2.5 kN/m2")  // => 2.5
 */
export function readFloorLimit(text: string): Outcome<number> {
  const match = new RegExp(`^(${NUMBER_PATTERN})\\s*(\\D.*)$`).exec(plainText(text).replace(/²/g, "2"));
  const unit =
    UNITS[
      (match?.[2] ?? "")
        .toLowerCase()
        .replace(/\bper\b/g, "/")
        .replace(/[\s^.]/g, "")
        .replace(/^lbs/, "lb")
    ];
  const number = match ? readNumber(match[1]!) : undefined;
  if (!unit || !number?.ok || !(number.value > 0)) {
    return unusable({
      code: "floor-limit-unreadable",
      path: "",
      message: `"${text}" is not a load that a floor may carry.`,
      expected: "a number with kPa, kN/m2, psf or kg/m2",
      received: text,
      hint: 'write "2.5 kPa" or "60 psf": the number comes from the building\'s papers or an engineer',
    });
  }
  return answer(number.value * unit);
}
