import { describe, expect, test } from "vitest";
import { materialById } from "../product/materials.ts";
import { mixed } from "./testing/read.ts";

const BED = "bed 1.2 m x 2.4 m x 30 cm";

/** Own identities: only the order of floating operations may differ. */
function near(actual: number, expected: number, relative = 1e-12): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(Math.abs(expected) * relative);
}

describe("what stands among the parts, and what it asks for", () => {
  const sentence = (recipe: string, code: string): string =>
    mixed({ recipe, fill: [BED] }).cautions.find((caution) => caution.code === code)?.message ?? "";

  test("lime by volume is far beyond any rate; a trace of it is said more quietly", () => {
    const severity = (recipe: string) =>
      mixed({ recipe, fill: [BED] }).cautions.find(({ code }) => code === "material-as-part")?.severity;
    expect(severity("own soil 1, lime 1")).toBe("danger");
    expect(severity("own soil 999, lime 1")).toBe("caution");
    expect(sentence("own soil 1, lime 1", "material-as-part")).toContain('"+ lime 3 kg/m3"');
  });

  test("what a part weighs in a cubic metre, where its density is on file", () => {
    const { facts } = mixed({ recipe: "own soil 99, dolomitic-lime 1", fill: [BED] }).cautions.find(
      ({ code }) => code === "material-as-part",
    )!;
    near(facts["kilogramsPerCubicMetre"] as number, 10 * materialById("dolomitic-lime")!.densityKilogramsPerLitre!);
  });

  test("fresh manure: days, burn and the published rates", () => {
    const manure = "compost 1, broiler-litter 1";
    for (const words of ["germs", "ammonia", "burns roots", "90 days", "120", "pots"])
      expect(sentence(manure, "fresh-manure")).toContain(words);
    // 7 and 40 lb on 100 square feet (extension-manure-vegetables), printed whole: 0.34 and 1.95 kg/m2.
    const perSquareMetre = (pounds: number): number => (pounds * 0.45359237) / (100 * 0.3048 ** 2);
    expect(Math.abs(perSquareMetre(7) - 0.34)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(perSquareMetre(40) - 2)).toBeLessThanOrEqual(0.05);
    expect(sentence(manure, "manure-share")).toContain("0.34 kg/m2");
    expect(sentence(manure, "manure-share")).toContain("50 %");
  });

  test("lime for peat, for this very mix", () => {
    // 5 and 10 lb in a cubic yard, the lower printed as 3 kg/m3 in the textbook; whole kilograms; the bed is 0.864 m3.
    const perCubicMetre = (pounds: number): number => (pounds * 0.45359237) / 0.764554857984;
    const { facts } = mixed({ recipe: "peat 1, vermiculite 1", fill: [BED] }).cautions.find(
      ({ code }) => code === "peat-needs-lime",
    )!;
    near(facts["lowKilograms"] as number, 0.864 * Math.round(perCubicMetre(5)));
    near(facts["highKilograms"] as number, 0.864 * Math.round(perCubicMetre(10)));
    expect(sentence("peat 1, vermiculite 1", "peat-needs-lime")).toContain("2.59 to 5.18 kg here");
    const pots = mixed({ recipe: "peat 1", fill: ["4 pots 5 L"] }).cautions.map(({ message }) => message);
    expect(pots).toContainEqual(expect.stringContaining("60 to 120 g here"));
    expect(sentence("peat 2, compost 1", "peat-with-compost")).toContain("Less lime or none");
  });

  test("a calcium soak for the coir, by the one supplier's 7 kg in 1000 L for 5 m3", () => {
    const { value } = mixed({ recipe: "coir 1, perlite 1", fill: ["500 L"], loss: "0", settling: "0" });
    near(value.coirSoak!.calciumNitrateGrams, 350);
    near(value.coirSoak!.waterLitres, 50);
    expect(mixed({ recipe: "compost 1", fill: ["500 L"] }).value.coirSoak).toBeUndefined();
  });
});
