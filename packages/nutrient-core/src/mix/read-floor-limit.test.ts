import { expect, test } from "vitest";
import { readFloorLimit } from "./read-floor-limit.ts";

const kilopascals = (text: string): number => {
  const read = readFloorLimit(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.value;
};

// Washington code (seen): 60 psf is 2.87 kPa, 100 psf 4.79 kPa. Delft (seen): 2.5 kN/m2 is 255 kg/m2, 52 psf.
// Half of the last printed place each.
test.each([
  ["60 psf", 2.87, 0.005],
  ["100 psf", 4.79, 0.005],
  ["60 lb/sq ft", 2.87, 0.005],
  ["60 lbs per sq ft", 2.87, 0.005],
  ["255 kg/m2", 2.5, 0.005],
  ["255 kg/m²", 2.5, 0.005],
  ["2.5 kN/m2", 2.5, 1e-12],
  ["2,5 kPa", 2.5, 1e-12],
  ["52 psf", 2.5, 0.5 * 0.0479],
])("%s", (text, expected, tolerance) => {
  expect(Math.abs(kilopascals(text) - expected)).toBeLessThanOrEqual(tolerance);
});

test.each(["", "60", "psf", "-60 psf", "0 psf", "60 kg", "60 furlongs", "NaN kPa"])("%j is no load", (text) => {
  const read = readFloorLimit(text);
  expect(read.ok ? [] : read.problems.map(({ code }) => code)).toEqual(["floor-limit-unreadable"]);
});
