import { LITRES_PER_CUBIC_METRE, type Measure, metres } from "./measure.ts";

/**
 * Litres in a round tapered pot: the frustum of a cone, pi h (D^2 + D d + d^2) / 12. A straight pot has two equal
 * diameters. (Averaging the diameters and taking a cylinder, as is often done, comes out too small.)
 *
 * @param top Inside diameter at the upper level, metres.
 * @param bottom Inside diameter at the lower level, metres.
 * @param height Between the two levels, metres.
 * @example
 * roundPotVolume(0.6, 0.4, 0.6).value  // => 119.38...
 */
export function roundPotVolume(top: number, bottom: number, height: number): Measure {
  const square = top ** 2 + top * bottom + bottom ** 2;
  return {
    value: ((Math.PI * height * square) / 12) * LITRES_PER_CUBIC_METRE,
    expression: `pi * ${metres(height)} / 12 * ((${metres(top)})^2 + ${metres(top)} * ${metres(bottom)} + (${metres(bottom)})^2)`,
  };
}
