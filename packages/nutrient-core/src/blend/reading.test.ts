import { describe, expect, test } from "vitest";
import type { Outcome } from "../outcome/outcome.ts";
import type { Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
import { readPlainQuantity } from "../quantity/quantity.ts";
import { METRIC_SPOONS } from "../supply/spoons.ts";
import { measuresFor } from "../supply/weigh-measures.ts";
import { readLimits } from "./read-limits.ts";
import { readUses } from "./read-uses.ts";
import { readWants } from "./read-wants.ts";
import { gap } from "./testing/ask.ts";

const given = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
};
/** One division and one multiplication. */
const FLOATING = 1e-12;

describe("targets", () => {
  const want = (text: string) => given(readWants(text, "litre", "a can"))[0]!;

  test("a span is its middle, within the half of it", () => {
    const { rate, within } = want("K 180 to 220 ppm");
    expect(rate).toBe(200);
    expect(gap(within!, 0.1)).toBeLessThan(FLOATING);
  });

  test("a tolerance in percent, and in the line's own form and unit", () => {
    expect(want("N 100 ppm within 5%").within).toBe(0.05);
    expect(gap(want("N 80 ppm within 4 ppm").within!, 0.05)).toBeLessThan(FLOATING);
    // Both are oxide, so the share is that of the oxide.
    expect(gap(want("K2O 200 ppm within 10 ppm").within!, 0.05)).toBeLessThan(FLOATING);
    expect(gap(want("N 10 mmol/L within 1 mmol/L").within!, 0.1)).toBeLessThan(FLOATING);
  });

  test("a side and a weight, in any order of words that a person would use", () => {
    expect(want("Ca at least 80 ppm")).toMatchObject({ nutrient: "Ca", rate: 80, direction: "at-least" });
    expect(want("Cl AT MOST 50 ppm weight 3")).toMatchObject({ nutrient: "Cl", direction: "at-most", weight: 3 });
    expect(want("nitrate nitrogen about 90 ppm within 3% weight 2")).toMatchObject({
      nutrient: "NO3-N",
      direction: "about",
      within: 0.03,
      weight: 2,
    });
  });

  test("several lines stand by themselves", () => {
    const wants = given(readWants("N 100 ppm within 5%, K 200 ppm; Mg at least 30 ppm", "litre", "a can"));
    expect(wants.map(({ nutrient, within, direction }) => [nutrient, within, direction])).toEqual([
      ["N", 0.05, "about"],
      ["K", undefined, "about"],
      ["Mg", undefined, "at-least"],
    ]);
  });
});

describe("limits", () => {
  const limit = (text: string) => given(readLimits(text, "litre"))[0]!;

  test.each([
    ["EC 2 mS/cm", 2],
    ["EC at most 1.5 dS/m", 1.5],
    ["conductivity 1800 uS/cm", 1.8],
    ["EC 200 mS/m", 2],
  ])("%s is %f mS/cm", (text, milliSiemensPerCm) => {
    expect(limit(text)).toEqual({ kind: "conductivity", milliSiemensPerCm });
  });

  test("ammonium is meant as its nitrogen, an oxide as the oxide", () => {
    for (const text of ["NH4 20% of N", "ammonium 20 % of nitrogen", "NH4-N 20% of N"])
      expect(limit(text)).toEqual({ kind: "share", nutrient: "NH4-N", of: "N", share: 0.2 });
    const { share } = limit("K2O 150% of N") as { share: number };
    // K2O holds 0.83015 of K.
    expect(gap(share, 1.5 * 0.8301502202877011)).toBeLessThan(1e-6);
  });

  test("a nutrient, in the form that was written", () => {
    expect(limit("P2O5 up to 100 ppm")).toMatchObject({
      kind: "nutrient",
      nutrient: "P",
      asked: { form: "P2O5", rate: 100 },
    });
  });
});

test("amounts by volume are taken by the density, and lines about one product are put together", () => {
  const liquid: Product = { ...given(readProduct("0-10-5")), id: "liquid", densityKilogramsPerLitre: 1.25 };
  const uses = given(
    readUses(
      "liquid at most 4 mL; liquid at least 1 g or none",
      [{ written: "liquid", product: liquid }],
      readPlainQuantity,
    ),
  );
  expect(uses).toEqual([{ product: "liquid", mostGrams: 5, leastIfUsedGrams: 1 }]);
});

test("a spoon of a product weighs by its density", () => {
  const powder: Product = { ...given(readProduct("20-10-20")), densityKilogramsPerLitre: 0.8 };
  const [measure] = given(measuresFor([powder], { spoons: METRIC_SPOONS }));
  // An eighth of 5 mL at 0.8 g/mL.
  expect(gap(measure!.stepGrams, 0.5)).toBeLessThan(FLOATING);
});
