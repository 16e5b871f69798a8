import fc from "fast-check";
import { describe, expect, test } from "vitest";
import published from "../../../../test-data/season/degree-days.json" with { type: "json" };
import sources from "../../../../test-data/sources.json" with { type: "json" };
import { gapOf } from "../mix/testing/evaluate.ts";
import { type DegreeDayMethod, degreeDays, degreeDaysWorking, type Thresholds } from "./degree-days.ts";
import { day } from "./testing/demo.ts";

const temperature = fc.double({ min: -30, max: 45, noNaN: true });
const aDay = fc.tuple(temperature, temperature).map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);
const thresholds: fc.Arbitrary<Required<Thresholds>> = fc
  .tuple(fc.double({ min: 0, max: 18, noNaN: true }), fc.double({ min: 1, max: 25, noNaN: true }))
  .map(([lowerCelsius, above]) => ({ lowerCelsius, upperCelsius: lowerCelsius + above }));

describe("published values", () => {
  test.each(published)("$id: $printed ($source)", (entry) => {
    const upper = (entry as { upper?: number }).upper;
    const between: Thresholds = { lowerCelsius: entry.lower, ...(upper === undefined ? {} : { upperCelsius: upper }) };
    const found = degreeDays(entry.minimum, entry.maximum, between, entry.method as DegreeDayMethod);
    expect(Math.abs(found - entry.expected)).toBeLessThanOrEqual(entry.tolerance);
    expect(Object.keys(sources)).toContain(entry.source);
  });
});

describe("the single sine", () => {
  test("property: a second route, the clipped sine added up in 20,000 steps", () => {
    fc.assert(
      fc.property(aDay, thresholds, ([minimum, maximum], between) => {
        const steps = 20_000;
        let sum = 0;
        for (let step = 0; step < steps; step += 1) {
          const angle = ((step + 0.5) / steps) * 2 * Math.PI;
          const at = (minimum + maximum) / 2 + ((maximum - minimum) / 2) * Math.sin(angle);
          sum += Math.min(Math.max(at, between.lowerCelsius), between.upperCelsius) - between.lowerCelsius;
        }
        // The midpoint rule at two kinks: a step times the slope there, below a ten-thousandth of a degree day.
        expect(Math.abs(degreeDays(minimum, maximum, between) - sum / steps)).toBeLessThan(1e-4);
      }),
      { numRuns: 60 },
    );
  });

  test("property: between nothing and the span, more for a warmer day, and never less than the average's", () => {
    fc.assert(
      fc.property(aDay, thresholds, fc.double({ min: 0, max: 10, noNaN: true }), ([low, high], between, warmer) => {
        const found = degreeDays(low, high, between);
        const slack = 1e-9;
        expect(found).toBeGreaterThanOrEqual(-slack);
        expect(found).toBeLessThanOrEqual(between.upperCelsius - between.lowerCelsius + slack);
        expect(degreeDays(low + warmer, high + warmer, between)).toBeGreaterThanOrEqual(found - slack);
        // Without an upper threshold the clipped curve is convex, so the area is at least that of the mean.
        const lowerOnly = { lowerCelsius: between.lowerCelsius };
        expect(degreeDays(low, high, lowerOnly)).toBeGreaterThanOrEqual(
          degreeDays(low, high, lowerOnly, "average") - slack,
        );
      }),
    );
  });

  test("property: the same day in Fahrenheit is 1.8 times as many degree days", () => {
    const f = (celsius: number): number => celsius * 1.8 + 32;
    fc.assert(
      fc.property(aDay, thresholds, ([low, high], { lowerCelsius, upperCelsius }) => {
        const inCelsius = degreeDays(low, high, { lowerCelsius, upperCelsius });
        const between = { lowerCelsius: f(lowerCelsius), upperCelsius: f(upperCelsius) };
        // The conversion rounds each temperature; near a grazing threshold the area feels it as its root.
        expect(Math.abs(degreeDays(f(low), f(high), between) - inCelsius * 1.8)).toBeLessThanOrEqual(1e-6);
      }),
    );
  });

  test("every line of working says what it computes (mathjs)", () => {
    fc.assert(
      fc.property(aDay, thresholds, ([minimumCelsius, maximumCelsius], between) => {
        const line = degreeDaysWorking({ date: day("2027-06-01"), minimumCelsius, maximumCelsius }, between);
        // Differences of nearly equal areas lose digits: held absolutely beside a hundred degrees.
        expect(gapOf(line) * Math.abs(line.value)).toBeLessThanOrEqual(1e-10);
      }),
      { numRuns: 60 },
    );
  });
});
