import {
  GRAMS_PER_SQUARE_METRE,
  KILOGRAMS_PER_HECTARE,
  POUNDS_PER_100_SQUARE_FEET,
  POUNDS_PER_1000_SQUARE_FEET,
  POUNDS_PER_ACRE,
  type PrintedUnit,
} from "./printed-unit.ts";
import { along, type Reading } from "./table.ts";
import { rankOf, TEXTURES, type Texture } from "./texture.ts";

/** What one source says that a fall of one pH unit costs in elemental sulfur, by texture. */
export interface SulfurRate {
  readonly source: string;
  readonly unit: PrintedUnit;
  /** As printed, for the textures that are printed. */
  readonly printed: Readonly<Partial<Record<Texture, number>>>;
}

/** For soils that start below pH 6.5, without free lime. */
export const ONTARIO: SulfurRate = {
  source: "ontario-blueberry-ph",
  unit: KILOGRAMS_PER_HECTARE,
  printed: { sand: 350, "sandy-loam": 750, loam: 1100 },
};

/** Printed for a tenth of a unit above pH 5.5: 2 lb on loam, a third less on sand, a third more on clay. */
export const TENNESSEE: SulfurRate = {
  source: "tennessee-sulfur-rule",
  unit: POUNDS_PER_1000_SQUARE_FEET,
  printed: { sand: (20 * 2) / 3, loam: 20, clay: (20 * 4) / 3 },
};

/** From pH 5.4-6.0: 1 lb on sandy soils, 2 lb on silt, clay or more than 2 % of organic matter. */
const LAND_GRANT: SulfurRate = {
  source: "extension-blueberry-ph",
  unit: POUNDS_PER_100_SQUARE_FEET,
  printed: { sand: 1, "sandy-loam": 1, loam: 2, "clay-loam": 2, clay: 2 },
};

/** Quoted at second hand; its loam is half of the others'. */
const INDIANA: SulfurRate = {
  source: "purdue-sulfur-column",
  unit: POUNDS_PER_1000_SQUARE_FEET,
  printed: { sand: 7, loam: 11, clay: 17 },
};

/** What its table to pH 4.5 asks from 6.5, less what it asks from 5.5: 660-350, 2020-1030, 3030-1600. */
export const MICHIGAN: SulfurRate = {
  source: "msu-sulfur-second-hand",
  unit: POUNDS_PER_ACRE,
  printed: { sand: 310, loam: 990, clay: 1430 },
};

/** From pH 7.0-7.5 to 6.0-6.5, sand to clay: taken as one unit. */
export const ROYAL: SulfurRate = {
  source: "rhs-acidifying-soil",
  unit: GRAMS_PER_SQUARE_METRE,
  printed: { sand: 135, clay: 270 },
};

/** Those that a fall anywhere is compared with. */
export const SULFUR_RATES: readonly SulfurRate[] = [ONTARIO, TENNESSEE, LAND_GRANT, INDIANA, MICHIGAN];

/**
 * A source's rate for a texture, in its printed unit: as printed, or for a texture between two printed ones in
 * proportion to its place between them. Undefined beyond its lightest and heaviest.
 */
export function rateFor({ printed }: SulfurRate, texture: Texture): Reading | undefined {
  const known = TEXTURES.filter((one) => printed[one] !== undefined);
  const ranks = known.map(rankOf);
  const rank = rankOf(texture);
  if (rank < ranks[0]! || rank > ranks.at(-1)!) return undefined;
  return along(
    ranks,
    known.map((one) => printed[one]!),
    rank,
  );
}

/** A rate in g of sulfur per m2 and pH unit, and whose it is. */
export interface SourcedRate {
  readonly gramsPerSquareMetre: number;
  readonly source: string;
}

/** Lowest and highest of these sources for a texture. */
export function spanOf(rates: readonly SulfurRate[], texture: Texture): readonly [SourcedRate, SourcedRate] {
  const grams = rates
    .flatMap((rate): SourcedRate[] => {
      const reading = rateFor(rate, texture);
      if (!reading) return [];
      return [{ gramsPerSquareMetre: reading.value * rate.unit.gramsPerSquareMetre, source: rate.source }];
    })
    .sort((a, b) => a.gramsPerSquareMetre - b.gramsPerSquareMetre);
  return [grams[0]!, grams.at(-1)!];
}
