import { type Presented, present, presentIn, presentWater, type UnitHabit } from "nutrient-core";

/**
 * A number for people: so many significant digits, no exponent, no trailing zeros.
 * This is the only place where a result is rounded.
 */
export function shown(value: number, digits = 3): string {
  if (value === 0) return "0";
  const text = value.toFixed(placesOf(value, digits));
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

/** Both ends of a range, rounded outwards, so that what is shown holds all that is meant. */
export function shownRange(low: number, high: number, digits = 3): string {
  const end = (value: number, roundingMode: "floor" | "ceil"): string => {
    const maximumFractionDigits = value === 0 ? 0 : placesOf(value, digits);
    return new Intl.NumberFormat("en", { maximumFractionDigits, roundingMode, useGrouping: false }).format(value);
  };
  return `${end(low, "floor")} to ${end(high, "ceil")}`;
}

/** Places after the point for so many significant digits. Whole numbers are never cut: 1234 stays 1234. */
function placesOf(value: number, digits: number): number {
  return Math.min(12, Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value)))));
}

/** A presented amount with its unit. */
export function withUnit({ value, unit }: Presented, digits = 3): string {
  return `${shown(value, digits)} ${unit}`;
}

export const mass = (grams: number, habit: UnitHabit, digits = 3): string =>
  withUnit(present(grams, "mass", habit), digits);
export const volume = (litres: number, habit: UnitHabit): string => withUnit(present(litres, "volume", habit));
export const area = (squareMetres: number, habit: UnitHabit): string => withUnit(present(squareMetres, "area", habit));
export const length = (metres: number, habit: UnitHabit): string => withUnit(present(metres, "length", habit));
export const water = (litres: number, habit: UnitHabit): string => withUnit(presentWater(litres, habit));

/** A mass for the scale: a US grower hears ounces, and the grams most scales show. */
export function weighed(grams: number, habit: UnitHabit, digits = 3): string {
  const metric = mass(grams, "metric", digits);
  return habit === "us" ? `${mass(grams, "us", digits)} (${metric})` : metric;
}

/** What lies on each square metre; a US grower hears it for a patch that he can see, a hundred square feet. */
export function onEachArea(gramsPerSquareMetre: number, habit: UnitHabit, digits = 3): string {
  if (habit === "metric") return `${mass(gramsPerSquareMetre, habit, digits)} on each square metre`;
  return `${weighed((gramsPerSquareMetre * 100) / presentIn(1, "squarefoot"), habit, digits)} on each 100 sq ft`;
}

/** What lies on each metre of row, or on each foot. */
export function onEachLength(gramsPerMetre: number, habit: UnitHabit): string {
  if (habit === "metric") return `${mass(gramsPerMetre, habit)} on each metre of row`;
  return `${weighed(gramsPerMetre / presentIn(1, "foot"), habit)} on each foot of row`;
}

/** Money, with the shelf's currency where it names one. */
export function money(amount: number, currency?: string): string {
  return `${amount.toFixed(2)}${currency ? ` ${currency}` : ""}`;
}
