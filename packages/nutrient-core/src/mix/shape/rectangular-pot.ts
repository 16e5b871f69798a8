import { LITRES_PER_CUBIC_METRE, type Measure, metres } from "./measure.ts";

/** The two inside measures of a rectangular opening, metres; equal for a square one. */
export interface Opening {
  readonly lengthMetres: number;
  readonly widthMetres: number;
}

/**
 * Litres in a square or rectangular pot or trough, tapered or straight, by the prismatoid rule: height over six,
 * times the lower area, four times the middle area and the upper area. The rule is exact here, also when the two
 * sides taper differently and the pot is no frustum of a pyramid.
 *
 * @param height Between the two levels, metres.
 */
export function rectangularPotVolume(top: Opening, bottom: Opening, height: number): Measure {
  const middle: Opening = {
    lengthMetres: (top.lengthMetres + bottom.lengthMetres) / 2,
    widthMetres: (top.widthMetres + bottom.widthMetres) / 2,
  };
  const [upper, half, lower] = [openingArea(top), openingArea(middle), openingArea(bottom)];
  return {
    value: (height / 6) * (upper.value + 4 * half.value + lower.value) * LITRES_PER_CUBIC_METRE,
    expression: `${metres(height)} / 6 * (${upper.expression} + 4 * ${half.expression} + ${lower.expression})`,
  };
}

/** Square metres of an opening. */
export function openingArea({ lengthMetres, widthMetres }: Opening): Measure {
  return { value: lengthMetres * widthMetres, expression: `${metres(lengthMetres)} * ${metres(widthMetres)}` };
}
