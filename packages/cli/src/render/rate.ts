import { presentIn, type UnitHabit } from "nutrient-core";

/** What an amount of nutrient is spread over. */
export type RateBasis = "litre" | "squareMetre" | "cubicMetre";

/** A rate's unit as growers of one habit say it, and how many of it one of the kept unit (ppm, g/m2, g/m3) is. */
export interface RateUnit {
  readonly sign: string;
  readonly perKept: number;
}

const US: Readonly<Record<Exclude<RateBasis, "litre">, RateUnit>> = {
  squareMetre: { sign: "lb/1000 sq ft", perKept: (presentIn(1, "pound") * 1000) / presentIn(1, "squarefoot") },
  // A cubic metre is a thousand of the kept litres.
  cubicMetre: { sign: "lb/cu yd", perKept: presentIn(1, "pound") / presentIn(1000, "cubicyard") },
};

/** Parts per million are said alike everywhere; rates on a bed or in a mix are not. */
export function rateUnit(basis: RateBasis, habit: UnitHabit): RateUnit {
  if (basis === "litre") return { sign: "ppm", perKept: 1 };
  return habit === "us" ? US[basis] : { sign: basis === "squareMetre" ? "g/m2" : "g/m3", perKept: 1 };
}
