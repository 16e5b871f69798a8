import { type Dimension, UNITS, type UnitDefinition } from "./definitions.ts";

/** The habits in which an answer is shown. */
export type UnitHabit = "metric" | "us";

/** An amount in the unit in which people of one habit would say it; not yet rounded. */
export interface Presented {
  readonly value: number;
  /** The unit's short sign, as it follows a number: g, kg, mL, US gal. */
  readonly unit: string;
}

interface Step {
  readonly id: string;
  readonly sign: string;
  /** Used from this many of itself upwards. */
  readonly from: number;
}

// Largest first; the last step takes whatever is smaller.
const STEPS: Readonly<Record<UnitHabit, Partial<Record<Dimension, readonly Step[]>>>> = {
  metric: {
    mass: [
      { id: "tonne", sign: "t", from: 1 },
      { id: "kilogram", sign: "kg", from: 1 },
      { id: "gram", sign: "g", from: 0.1 },
      { id: "milligram", sign: "mg", from: 0 },
    ],
    volume: [
      { id: "cubicmetre", sign: "m3", from: 2 },
      { id: "litre", sign: "L", from: 1 },
      { id: "millilitre", sign: "mL", from: 0 },
    ],
    area: [
      { id: "hectare", sign: "ha", from: 1 },
      { id: "squaremetre", sign: "m2", from: 0 },
    ],
    length: [
      { id: "metre", sign: "m", from: 1 },
      { id: "centimetre", sign: "cm", from: 0 },
    ],
  },
  us: {
    mass: [
      { id: "pound", sign: "lb", from: 1 },
      { id: "ounce", sign: "oz", from: 0 },
    ],
    volume: [
      { id: "cubicyard", sign: "cu yd", from: 1 },
      { id: "cubicfoot", sign: "cu ft", from: 1 },
      { id: "USgallon", sign: "US gal", from: 1 },
      { id: "USquart", sign: "US qt", from: 1 },
      { id: "USfluidounce", sign: "US fl oz", from: 1 },
      { id: "USteaspoon", sign: "US tsp", from: 0 },
    ],
    area: [
      { id: "acre", sign: "acre", from: 1 },
      { id: "squarefoot", sign: "sq ft", from: 0 },
    ],
    length: [
      { id: "foot", sign: "ft", from: 3 },
      { id: "inch", sign: "in", from: 0 },
    ],
  },
};

const BY_ID: ReadonlyMap<string, UnitDefinition> = new Map(UNITS.map((unit) => [unit.id, unit]));

function stepFor(value: number, dimension: Exclude<Dimension, "time">, habit: UnitHabit): Step {
  const steps = STEPS[habit][dimension]!;
  return steps.find(({ id, from }) => Math.abs(presentIn(value, id)) >= from) ?? steps.at(-1)!;
}

/**
 * An amount in the unit that suits its size and the reader's habit.
 *
 * @param value In the dimension's kept unit (gram, litre, square metre, metre).
 * @example
 * present(1500, "mass", "metric")  // => { value: 1.5, unit: "kg" }
 */
export function present(value: number, dimension: Exclude<Dimension, "time">, habit: UnitHabit): Presented {
  const { id, sign } = stepFor(value, dimension, habit);
  return { value: presentIn(value, id), unit: sign };
}

/**
 * Both ends of a range in one unit, the one that suits the upper end.
 *
 * @example
 * presentRange([400, 1500], "mass", "metric")  // => { low: 0.4, high: 1.5, unit: "kg" }
 */
export function presentRange(
  [low, high]: readonly [low: number, high: number],
  dimension: Exclude<Dimension, "time">,
  habit: UnitHabit,
): { readonly low: number; readonly high: number; readonly unit: string } {
  const { id, sign } = stepFor(high, dimension, habit);
  return { low: presentIn(low, id), high: presentIn(high, id), unit: sign };
}

/** An amount in one named unit, for a table whose rows must share it. */
export function presentIn(value: number, unitId: string): number {
  return value / BY_ID.get(unitId)!.factor;
}

/** A water volume: growers of US habit say gallons where a mix of the same size is said in cubic feet. */
export function presentWater(litres: number, habit: UnitHabit): Presented {
  if (habit === "metric") return { value: litres, unit: "L" };
  return { value: presentIn(litres, "USgallon"), unit: "US gal" };
}
