import { expect, test } from "vitest";
import published from "../../../../test-data/season/emergence.json" with { type: "json" };
import sources from "../../../../test-data/sources.json" with { type: "json" };
import { cropFacts, daysToEmergence, MILESTONES } from "./crop.ts";

test.each(published)("days to emergence as printed: $crop ($source)", ({ crop, celsius, days, source }) => {
  const facts = cropFacts(crop);
  expect(celsius.map((temperature) => daysToEmergence(facts, temperature) ?? null)).toEqual(days);
  expect(facts.emergence!.source).toBe(source);
  expect(Object.keys(sources)).toContain(source);
});

test("between rows by straight lines; nothing beyond the table or next to where nothing came up", () => {
  const pepper = cropFacts("sweet pepper");
  expect(daysToEmergence(pepper, 17.5)).toBe(19);
  expect(daysToEmergence(pepper, 12)).toBeUndefined();
  expect(daysToEmergence(pepper, 38)).toBeUndefined();
  expect(daysToEmergence(pepper, 5)).toBeUndefined();
  expect(daysToEmergence(pepper, 45)).toBeUndefined();
  expect(daysToEmergence(cropFacts("sunflower"), 20)).toBeUndefined();
});

test("peppers by any of their names, nothing for what is not known", () => {
  for (const name of ["pepper", "Sweet peppers", "chilli", "chili pepper", "capsicum"]) {
    expect(cropFacts(name).thresholds, name).toBeDefined();
  }
  expect(cropFacts("sunflower")).toEqual({ expected: {} });
});

test("first bloom spans both published data sets: 954 and 1369 F days (University of Arizona abstracts)", () => {
  const [expectation] = cropFacts("pepper").expected["first-flower"]!;
  const [least, likely, most] = expectation!.amounts.map((celsius) => celsius * 1.8);
  // One multiplication and one division.
  const near = (value: number, printed: number) => expect(Math.abs(value - printed)).toBeLessThanOrEqual(1e-9);
  near(least!, 954);
  near(most!, 1369);
  near(likely!, (954 + 1369) / 2);
  // 55 and 86 F.
  expect(cropFacts("pepper").thresholds!.lowerCelsius * 1.8 + 32).toBe(55);
  expect(cropFacts("pepper").thresholds!.upperCelsius! * 1.8 + 32).toBe(86);
});

test("uptake per square metre is the printed one per acre (UC: 200-260 lb N, 40-60 P2O5, 240-320 K2O)", () => {
  const { gramsPerSquareMetre: uptake } = cropFacts("pepper").uptake!;
  const perAcre = 453.59237 / 4046.8564224;
  const oxide = { N: 1, P: 0.436428693, K: 0.830147859 };
  const printed = { N: [200, 260], P: [40, 60], K: [240, 320] } as const;
  for (const nutrient of ["N", "P", "K"] as const) {
    for (const end of [0, 1] as const) {
      const exact = printed[nutrient][end] * perAcre * oxide[nutrient];
      // The table keeps two decimals.
      expect(Math.abs(uptake[nutrient][end] - exact)).toBeLessThanOrEqual(0.005);
    }
  }
});

test("every source that a crop names is on file, and every expectation leads back to a day that is given", () => {
  for (const name of ["pepper", "tomato", "aubergine"]) {
    const facts = cropFacts(name);
    const used = [
      facts.thresholdsSource,
      facts.emergence?.source,
      facts.uptake?.areaSource,
      facts.uptake?.fruitSource,
      ...Object.values(facts.expected).flatMap((list) => list.map(({ source }) => source)),
    ].filter((id) => id !== undefined && id !== null);
    expect(used.filter((id) => !(id in sources))).toEqual([]);
    for (const milestone of MILESTONES) {
      for (const { after } of facts.expected[milestone] ?? []) {
        expect(MILESTONES.indexOf(after)).toBeLessThan(MILESTONES.indexOf(milestone));
      }
    }
  }
});
