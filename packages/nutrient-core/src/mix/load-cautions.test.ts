import { describe, expect, test } from "vitest";
import { mixed } from "./testing/read.ts";

const BED = "bed 1.2 m x 2.4 m x 30 cm";

/** Own identities: only the order of floating operations may differ. */
function near(actual: number, expected: number, relative = 1e-12): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(Math.abs(expected) * relative);
}

describe("a stated floor limit is never dropped", () => {
  const of = (request: object, code: string) =>
    mixed({ recipe: "peat 80%, perlite 20%", ...request }).cautions.filter((caution) => caution.code === code);

  test("pots by litres: said to be unchecked, with what one weighs and the floor it would need", () => {
    const [unchecked, ...others] = of({ fill: ["12 pots 20 L"], floorLimit: "2 kPa" }, "roof-load-unchecked");
    expect(others).toEqual([]);
    for (const words of ["2 kPa", "12 pots 30 cm x 24 cm x 28 cm", "structural engineer"])
      expect(unchecked!.message).toContain(words);
    const { value } = mixed({ recipe: "peat 80%, perlite 20%", fill: ["12 pots 20 L"] });
    const facts = unchecked!.facts as Record<string, number>;
    near(facts["kilogramsEach"]!, value.massKilograms!.wetRange[1] / 12);
    // On just so much floor it is just the limit: kilograms times standard gravity over the area, in kPa.
    near((facts["kilogramsEach"]! * 9.80665) / facts["leastSquareMetresEach"]! / 1000, 2);
  });

  test("every fill that is not checked is named, and the others are checked", () => {
    const request = { fill: ["3 trade #5 pots", "pots 30 cm x 28 cm", "100 L"], floorLimit: "60 psf" };
    expect(of(request, "roof-load-unchecked").map(({ facts }) => facts["of"])).toEqual(["trade #5 pots", "100 L"]);
    expect(of(request, "roof-load")).toHaveLength(1);
    expect(of({ fill: ["pots 30 cm x 28 cm"], floorLimit: "60 psf" }, "roof-load-unchecked")).toEqual([]);
    expect(of({ fill: ["12 pots 20 L"] }, "roof-load-unchecked")).toEqual([]);
  });

  test("a mix of unknown weight", () => {
    const [unchecked] = of({ recipe: "clay pebbles 1", fill: [BED], floorLimit: "2 kPa" }, "roof-load-unchecked");
    expect(unchecked!.message).toContain("weight is not known");
  });

  test("a layer of gravel or wood is heavy too", () => {
    const bed = "bed 1 m x 1 m x 40 cm";
    expect(of({ fill: [`${bed} gravel 5 cm`] }, "roof-load-layer")).toHaveLength(1);
    expect(of({ fill: [`${bed} wood 10 cm`], floorLimit: "9 kPa" }, "roof-load-layer")).toHaveLength(1);
    expect(of({ fill: ["pots 30 cm x 28 cm gravel 2 cm"], floorLimit: "9 kPa" }, "roof-load-layer")).toHaveLength(1);
    expect(of({ fill: [bed], floorLimit: "9 kPa" }, "roof-load-layer")).toEqual([]);
  });
});
