import { ATOMIC_WEIGHT } from "../element/atomic-weight.ts";
import { molarMass } from "../element/formula.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { around, type Need, SIX_INCHES } from "./need.ts";
import { inUnit, POUNDS_PER_100_SQUARE_FEET } from "./printed-unit.ts";
import {
  MICHIGAN,
  ONTARIO,
  ROYAL,
  rateFor,
  type SourcedRate,
  SULFUR_RATES,
  type SulfurRate,
  spanOf,
} from "./sulfur-rates.ts";
import { along } from "./table.ts";
import { rankOf, TEXTURES, type Texture, textureWords } from "./texture.ts";

/**
 * Ground limestone to bring a soil to pH 6.5, lb/100 sq ft, by the pH it has (garden-lime-by-texture). The one table by
 * texture that was found, and its page does not say where it comes from: see docs/decisions/lime.md.
 */
export const STARTING_PH = [5, 5.5, 6, 6.5] as const;
const TO_6_5: Readonly<Partial<Record<Texture, readonly number[]>>> = {
  "sandy-loam": [8, 6, 3, 0],
  loam: [10.5, 8, 4, 0],
  "clay-loam": [15, 10.5, 5.5, 0],
};

/** The textures that it lacks, by the neighbour in it and a source of sulfur rates that has both. */
const BY_NEIGHBOUR: Readonly<Partial<Record<Texture, { readonly neighbour: Texture; readonly rate: SulfurRate }>>> = {
  sand: { neighbour: "sandy-loam", rate: ONTARIO },
  clay: { neighbour: "clay-loam", rate: MICHIGAN },
};

const CALCIUM_CARBONATE = molarMass({ Ca: 1, C: 1, O: 3 });

/**
 * How much calcium carbonate raises a soil of this texture from one pH to another, where no test was made?
 *
 * What the table asks from the one pH less what it asks from the other; in a straight line between printed rows. The
 * lower end of the range is what the lowest published sulfur rate says of the same soil (a mole of sulfur undoes a mole
 * of calcium carbonate), the upper end the next heavier texture, or for clay the highest sulfur rate.
 *
 * @param fromPh Measured, 5.0 to 6.5: the table's rows.
 * @param toPh Above it, at most 6.5.
 * @example
 * textureNeed("loam", 5.5, 6.5).gramsPerSquareMetre  // => 390.59...
 */
export function textureNeed(texture: Texture, fromPh: number, toPh: number): Need {
  const working = tableNeed(texture, fromPh, toPh);
  const own = working.at(-1)!.value;
  const heavier = TEXTURES[rankOf(texture) + 1];
  const least = bySulfur("lowest", spanOf(SULFUR_RATES, texture)[0], fromPh, toPh);
  const most = heavier
    ? tableNeed(heavier, fromPh, toPh).at(-1)!
    : bySulfur("highest", spanOf([ROYAL], texture)[1], fromPh, toPh);
  return {
    gramsPerSquareMetre: own,
    range: around(own, [least.value, most.value]),
    depthMetres: SIX_INCHES,
    source: "garden-lime-by-texture",
    working: [...working, least, most],
  };
}

/** A mole of sulfur, once oxidised, takes up what a mole of calcium carbonate gives: the same soil, the other way. */
function bySulfur(which: "lowest" | "highest", rate: SourcedRate, fromPh: number, toPh: number): WorkingLine {
  return {
    label: `as the ${which} published sulfur rate would have it`,
    expression: `(${term(toPh)} - ${term(fromPh)}) * ${term(rate.gramsPerSquareMetre)} g/m^2 * ${CALCIUM_CARBONATE} / ${ATOMIC_WEIGHT.S}`,
    value: ((toPh - fromPh) * rate.gramsPerSquareMetre * CALCIUM_CARBONATE) / ATOMIC_WEIGHT.S,
    unit: "g/m^2",
    source: rate.source,
  };
}

function tableNeed(texture: Texture, fromPh: number, toPh: number): readonly WorkingLine[] {
  const by = BY_NEIGHBOUR[texture];
  if (by) {
    const working = tableNeed(by.neighbour, fromPh, toPh);
    const there = working.at(-1)!.value;
    const [mine, neighbours] = [rateFor(by.rate, texture)!, rateFor(by.rate, by.neighbour)!];
    return [
      ...working,
      {
        label: `for ${textureWords(texture)}, as the sulfur rates of both compare`,
        expression: `${term(there)} g/m^2 * ${mine.expression} / ${neighbours.expression}`,
        value: (there * mine.value) / neighbours.value,
        unit: "g/m^2",
        source: by.rate.source,
      },
    ];
  }
  const [from, to] = [along(STARTING_PH, TO_6_5[texture]!, fromPh), along(STARTING_PH, TO_6_5[texture]!, toPh)];
  const reading = { value: from.value - to.value, expression: `(${from.expression} - ${to.expression})` };
  return [
    {
      label: `calcium carbonate for ${textureWords(texture)}, from pH ${term(fromPh)} to ${term(toPh)}`,
      expression: inUnit(reading, POUNDS_PER_100_SQUARE_FEET),
      value: reading.value * POUNDS_PER_100_SQUARE_FEET.gramsPerSquareMetre,
      unit: "g/m^2",
      source: "garden-lime-by-texture",
    },
  ];
}
