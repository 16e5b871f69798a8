import { describe, expect, test } from "vitest";
import { mixed } from "./testing/read.ts";

describe("a stated car is never dropped", () => {
  const trips = (request: object) => {
    const { value, cautions } = mixed({ recipe: "compost 1, perlite 1", fill: ["400 L"], ...request });
    return {
      loads: value.carLoads,
      cautions: cautions
        .filter(({ code }) => code.startsWith("car-"))
        .map(({ code, message }) => `${code}: ${message}`),
    };
  };
  const packs = ["compost 50 L 6.50", "perlite 100 L 24"];

  test("without packs", () => {
    const { loads, cautions } = trips({ car: "100 kg" });
    expect(loads).toBeUndefined();
    expect(cautions).toEqual([expect.stringMatching(/^car-trips-unknown: .*--pack "compost 50 L"/)]);
    // 262 L of compost at 0.42 kg/L at the lightest and as much perlite at 0.105 are 137 kg.
    expect(cautions[0]).toContain("at least 2 trips");
    // With the compost at hand, 262 L of perlite: 27.5 kg.
    expect(trips({ car: "20 kg", stock: ["compost 500 L"] }).cautions[0]).toContain("at least 2 trips");
    expect(trips({ car: "600 L" }).cautions[0]).not.toContain("at least");
  });

  test("a car too small for one pack, by mass or by volume", () => {
    expect(trips({ car: "5 kg", pack: packs }).cautions).toEqual([
      expect.stringMatching(/^car-too-small: The car takes 5 kg, .*compost 50 L; perlite 100 L/),
    ]);
    // 50 L of compost weigh up to 35.6 kg: a car is loaded by the heaviest that is published.
    expect(trips({ car: "30 kg", pack: packs }).cautions).toEqual([expect.stringMatching(/pack of compost 50 L\./)]);
    expect(trips({ car: "200 kg, 60 L", pack: packs }).cautions).toEqual([
      expect.stringMatching(/takes 200 kg and 60 L, less than one pack of perlite 100 L\./),
    ]);
  });

  test("only some of it in packs", () => {
    const { loads, cautions } = trips({ car: "400 kg", pack: ["compost 50 L 6.50"] });
    expect(loads).toBeDefined();
    expect(cautions).toEqual([expect.stringMatching(/^car-trips-partial: .*: perlite/)]);
    const bulk = trips({ car: "400 kg", bulk: ["compost 45 per m3, step 0.1 m3"], pack: ["perlite 100 L 24"] });
    expect(bulk.cautions).toEqual([expect.stringMatching(/^car-trips-partial: .*: compost/)]);
  });

  test("a weight that nobody printed", () => {
    const gravel = { recipe: "clay pebbles 1", pack: ["clay pebbles 50 L 9"] };
    expect(trips({ ...gravel, car: "400 kg" }).cautions).toEqual([
      expect.stringMatching(/^car-trips-unknown: .*weight of clay pebbles/),
    ]);
    expect(trips({ ...gravel, car: "500 L" })).toEqual({ loads: { atLeast: 1, enough: 1 }, cautions: [] });
  });

  test("all in packs, or nothing to buy: nothing to say", () => {
    expect(trips({ car: "400 kg", pack: packs }).cautions).toEqual([]);
    expect(trips({ recipe: "own soil 1", car: "400 kg" })).toEqual({ cautions: [] });
  });
});
