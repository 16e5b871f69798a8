import { term, type WorkingLine } from "../outcome/working.ts";
import { around, FIFTEEN_CENTIMETRES, type Need } from "./need.ts";
import { inUnit } from "./printed-unit.ts";
import {
  ONTARIO,
  ROYAL,
  rateFor,
  type SourcedRate,
  SULFUR_RATES,
  type SulfurRate,
  spanOf,
  TENNESSEE,
} from "./sulfur-rates.ts";
import { type Texture, textureWords } from "./texture.ts";

/** Ontario's rates are for soils that start below this pH. */
export const ONTARIO_BELOW_PH = 6.5;
/** The Royal Horticultural Society's soils start above 6.5 and end at 6.0 to 6.5: its rate counts for such falls alone. */
const ROYAL_DOWN_TO_PH = 6;

/**
 * How much sulfur takes a soil of this texture from one pH down to another?
 *
 * Below pH 6.5 by Ontario's rate per unit, where it has the texture; above 6.5, and for clay, by Tennessee's. The range
 * holds what every source read would ask; from above 6.5 that of the Royal Horticultural Society counts too, down to 6.0.
 *
 * @param fromPh Measured, at most 7.5: the highest from which a source starts.
 * @param toPh Below it, at least 4.5: the lowest to which a source goes.
 * @example
 * sulfurNeed("loam", 6.5, 5.5).gramsPerSquareMetre  // => 110
 */
export function sulfurNeed(texture: Texture, fromPh: number, toPh: number): Need {
  const border = within(ONTARIO_BELOW_PH, toPh, fromPh);
  const royal = fromPh > ONTARIO_BELOW_PH ? within(ROYAL_DOWN_TO_PH, toPh, fromPh) : fromPh;
  const lower = rateFor(ONTARIO, texture) ? ONTARIO : TENNESSEE;
  const steps = [
    { rate: TENNESSEE, upper: fromPh, lower: border },
    { rate: lower, upper: border, lower: toPh },
  ].filter(falls);
  const comparisons = [
    { rates: [...SULFUR_RATES, ROYAL], upper: fromPh, lower: royal },
    { rates: SULFUR_RATES, upper: royal, lower: toPh },
  ].filter(falls);
  const lines = steps.map(({ rate, ...step }) => stepLine(rate, texture, step));
  const gramsPerSquareMetre = lines.reduce((sum, { value }) => sum + value, 0);
  const ends = ([0, 1] as const).map((end) =>
    comparisons.map(({ rates, ...step }) => endLine(end, spanOf(rates, texture)[end], step)),
  );
  return {
    gramsPerSquareMetre,
    range: around(
      gramsPerSquareMetre,
      ends.map((parts) => parts.reduce((sum, { value }) => sum + value, 0)),
    ),
    depthMetres: FIFTEEN_CENTIMETRES,
    source: (steps.at(-1)?.rate ?? lower).source,
    working: [...lines, ...(lines.length < 2 ? [] : [together(lines, gramsPerSquareMetre)]), ...ends.flat()],
  };
}

interface Step {
  readonly upper: number;
  readonly lower: number;
}

const within = (ph: number, least: number, most: number): number => Math.min(most, Math.max(least, ph));
const falls = ({ upper, lower }: Step): boolean => upper > lower;

function stepLine(rate: SulfurRate, texture: Texture, { upper, lower }: Step): WorkingLine {
  const reading = rateFor(rate, texture)!;
  return {
    label: `sulfur on ${textureWords(texture)}, from pH ${upper} to ${lower}`,
    expression: `(${term(upper)} - ${term(lower)}) * ${inUnit(reading, rate.unit)}`,
    value: (upper - lower) * reading.value * rate.unit.gramsPerSquareMetre,
    unit: "g/m^2",
    source: rate.source,
  };
}

function together(lines: readonly WorkingLine[], value: number): WorkingLine {
  return {
    label: "sulfur, all of it",
    expression: lines.map((line) => `${term(line.value)} g/m^2`).join(" + "),
    value,
    unit: "g/m^2",
    source: null,
  };
}

function endLine(end: 0 | 1, rate: SourcedRate, { upper, lower }: Step): WorkingLine {
  return {
    label: `by the ${end === 0 ? "lowest" : "highest"} published rate, from pH ${upper} to ${lower}`,
    expression: `(${term(upper)} - ${term(lower)}) * ${term(rate.gramsPerSquareMetre)} g/m^2`,
    value: (upper - lower) * rate.gramsPerSquareMetre,
    unit: "g/m^2",
    source: rate.source,
  };
}
