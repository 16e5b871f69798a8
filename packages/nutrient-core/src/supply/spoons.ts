/** The spoons of a kitchen set, by the size that is stamped on them. */
export interface SpoonSet {
  readonly name: string;
  readonly teaspoonMillilitres: number;
  readonly teaspoonsPerTablespoon: number;
}

/** US customary spoons: 1/768 and 1/256 US gallon (NIST Handbook 44). */
export const US_SPOONS: SpoonSet = { name: "US", teaspoonMillilitres: 3785.411784 / 768, teaspoonsPerTablespoon: 3 };
/** Metric spoons: 5 mL and 15 mL. */
export const METRIC_SPOONS: SpoonSet = { name: "metric", teaspoonMillilitres: 5, teaspoonsPerTablespoon: 3 };

/** A count of level spoons, to the nearest eighth of a teaspoon. */
export interface Spoonful {
  readonly set: string;
  readonly tablespoons: number;
  /** Beside the tablespoons, in eighths of a teaspoon. */
  readonly eighthTeaspoons: number;
  /** What these spoons hold. */
  readonly volumeMillilitres: number;
}

/**
 * How many level spoons hold this volume, to the nearest eighth of a teaspoon.
 * Undefined below half of an eighth, and above 16 tablespoons, where a jug is the right measure.
 *
 * @example
 * spoonsFor(7.5, METRIC_SPOONS)  // => { tablespoons: 0, eighthTeaspoons: 12 }
 */
export function spoonsFor(volumeMillilitres: number, set: SpoonSet): Spoonful | undefined {
  const eighth = set.teaspoonMillilitres / 8;
  const eighths = Math.round(volumeMillilitres / eighth);
  const perTablespoon = set.teaspoonsPerTablespoon * 8;
  if (eighths < 1 || eighths > 16 * perTablespoon) return undefined;
  const tablespoons = Math.floor(eighths / perTablespoon);
  return {
    set: set.name,
    tablespoons,
    eighthTeaspoons: eighths - tablespoons * perTablespoon,
    volumeMillilitres: eighths * eighth,
  };
}
