import { term, type WorkingLine } from "../outcome/working.ts";
import { ingredientFacts, type PublishedRange } from "./ingredient/facts.ts";

/** An ingredient in the mix, in litres. */
export interface MixedIngredient {
  readonly name: string;
  /** Its loose volume, as ordered. */
  readonly looseVolumeLitres: number;
  /** Its part of the space that is filled. */
  readonly volumeLitres: number;
  /** The grower's own dry density, where it was measured. */
  readonly dryKilogramsPerLitre?: number;
}

/** Kilograms of the whole fill: middle of the published range, and the range. */
export interface MixMass {
  readonly dry: number;
  readonly delivered: number;
  /** Watered and drained, as in a pot the day after. */
  readonly wet: number;
  readonly dryRange: readonly [number, number];
  readonly wetRange: readonly [number, number];
  /** All pores full of water: a blocked drain. */
  readonly saturated: number;
}

/**
 * What the mix weighs, from published densities of its ingredients; undefined with the names of those without any.
 *
 * Mass is kept on mixing and settling, so dry mass = loose litres times loose dry density, summed. Water is summed by
 * each ingredient's part of the filled space. For air such a sum is wrong (see air-and-water.ts); for weight it is
 * good enough: against ten measured mixes without compost it lies within 8 litres of water per hundred, and its upper end never below the measurement.
 */
export function mixMass(ingredients: readonly MixedIngredient[]): {
  readonly mass?: MixMass;
  readonly unknown: readonly string[];
  readonly working: readonly WorkingLine[];
} {
  const known = ingredients.map((ingredient) => {
    const facts = ingredientFacts(ingredient.name);
    const own = ingredient.dryKilogramsPerLitre;
    const dry: PublishedRange | undefined =
      own === undefined ? facts?.dryKilogramsPerLitre : { low: own, high: own, source: "grower" };
    return {
      ingredient,
      dry,
      delivered: facts?.deliveredKilogramsPerLitre ?? dry,
      water: facts?.waterShare,
      pores: facts?.poreShare,
    };
  });
  const unknown = known
    .filter(({ dry, water, pores }) => !dry || !water || !pores)
    .map(({ ingredient }) => ingredient.name);
  if (unknown.length > 0) return { unknown, working: [] };
  const sum = (of: (one: (typeof known)[number]) => number): number => known.reduce((total, one) => total + of(one), 0);
  const dry = (pick: (range: PublishedRange) => number): number =>
    sum((one) => one.ingredient.looseVolumeLitres * pick(one.dry!));
  const water = (pick: (range: PublishedRange) => number): number =>
    sum((one) => one.ingredient.volumeLitres * pick(one.water!));
  const pores = sum((one) => one.ingredient.volumeLitres * one.pores!.high);
  const [low, high] = [(range: PublishedRange) => range.low, (range: PublishedRange) => range.high];
  const mass: MixMass = {
    dry: dry(middle),
    delivered: sum((one) => one.ingredient.looseVolumeLitres * middle(one.delivered!)),
    wet: dry(middle) + water(middle),
    dryRange: [dry(low), dry(high)],
    wetRange: [dry(low) + water(low), dry(high) + water(high)],
    saturated: dry(high) + pores,
  };
  const terms = (of: (one: (typeof known)[number]) => string): string => known.map(of).join(" + ");
  const source = known.find(({ dry: range }) => range?.source !== "grower")?.dry?.source ?? null;
  return {
    mass,
    unknown,
    working: [
      {
        label: "dry mass, from published loose densities",
        expression: terms((one) => `${term(one.ingredient.looseVolumeLitres)} L * ${term(middle(one.dry!))} kg/L`),
        value: mass.dry,
        unit: "kg",
        source,
      },
      {
        label: "mass when watered and drained",
        expression: `${term(mass.dry)} kg + 1 kg/L * (${terms((one) => `${term(one.ingredient.volumeLitres)} L * ${term(middle(one.water!))}`)})`,
        value: mass.wet,
        unit: "kg",
        source,
      },
      {
        label: "mass with every pore full of water",
        expression: `${term(dry(high))} kg + 1 kg/L * (${terms((one) => `${term(one.ingredient.volumeLitres)} L * ${term(one.pores!.high)}`)})`,
        value: mass.saturated,
        unit: "kg",
        source,
      },
    ],
  };
}

const middle = ({ low, high }: PublishedRange): number => (low + high) / 2;

/** Standard gravity, by definition (3rd General Conference on Weights and Measures, 1901). */
const GRAVITY = 9.80665;
/** One pound-force on a square foot, by definition: 0.45359237 kg x 9.80665 m/s2 / 0.3048^2 m2. */
export const KILOPASCALS_PER_PSF: number = (0.45359237 * GRAVITY) / 0.3048 ** 2 / 1000;

/** What a fill puts on the floor beneath it. */
export interface FloorLoad {
  readonly kilogramsPerSquareMetre: number;
  readonly kilopascals: number;
  readonly poundsPerSquareFoot: number;
}

/** A mass on a square metre in the units in which floors are designed. */
export function floorLoad(kilogramsPerSquareMetre: number): FloorLoad {
  const kilopascals = (kilogramsPerSquareMetre * GRAVITY) / 1000;
  return { kilogramsPerSquareMetre, kilopascals, poundsPerSquareFoot: kilopascals / KILOPASCALS_PER_PSF };
}

/** The working of {@link floorLoad}. */
export function floorLoadWorking(label: string, kilograms: number, squareMetres: number, load: FloorLoad): WorkingLine {
  return {
    label: `load of ${label} on the floor`,
    expression: `${term(kilograms)} kg / (${term(squareMetres)} m^2) * ${GRAVITY} m/s^2`,
    value: load.kilopascals,
    unit: "kPa",
    source: null,
  };
}
