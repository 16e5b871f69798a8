import fc from "fast-check";
import { evaluate } from "mathjs";
import { describe, expect, test } from "vitest";
import sources from "../../../../test-data/sources.json" with { type: "json" };
import { type Saturation, saturations } from "./precipitation.ts";
import { dissolves } from "./solubility.ts";
import { amountsOf, SOLUTION_1 } from "./testing/support.ts";

const found = (list: readonly Saturation[], solid: string) => list.find((entry) => entry.solid === solid);

/** The same product without the mark that keeps it out of stocks: pure gypsum in water. */
const pure = (formula: string, grams: number) => {
  const [{ product }] = amountsOf([formula, grams]) as [ReturnType<typeof amountsOf>[number]];
  const { leavesResidue: _, solubilityGramsPerLitre: __, ...rest } = product;
  return [{ product: rest, massGrams: grams }];
};

describe("gypsum in water, against its measured solubility (solubility-tables: 2.55 g/L at 20 °C, as dihydrate)", () => {
  test("a saturated solution reads saturated", () => {
    const { index } = found(saturations(pure("CaSO4·2H2O", 2.55), 1), "gypsum")!;
    // Tables give 2.4 to 2.6 g/L, that is 0.03 in the index, and two databases differ by 0.03 in the constant.
    expect(Math.abs(index[0])).toBeLessThan(0.06);
    expect(Math.abs(index[1])).toBeLessThan(0.06);
  });

  test("half of it stays dissolved, five times it precipitates", () => {
    expect(found(saturations(pure("CaSO4·2H2O", 1.25), 1), "gypsum")!.verdict).toBe("stays-dissolved");
    expect(found(saturations(pure("CaSO4·2H2O", 12.5), 1), "gypsum")!.verdict).toBe("precipitates");
  });
});

describe("solution 1 of Circular 347, which is used as one solution and never as one stock", () => {
  const strength = (times: number) =>
    saturations(
      SOLUTION_1.map((amount) => ({ ...amount, massGrams: amount.massGrams * times })),
      1,
    );

  test("as a feed gypsum stays far from falling out, calcium phosphate only at a high pH", () => {
    expect(found(strength(1), "gypsum")!.index[1]).toBeLessThan(-1);
    expect(found(saturations(SOLUTION_1, 1, [5, 6]), "calcium phosphate")!.verdict).toBe("stays-dissolved");
    expect(found(saturations(SOLUTION_1, 1, [7.5, 7.5]), "calcium phosphate")!.verdict).toBe("precipitates");
  });

  test("a hundred times as strong both fall out", () => {
    expect(found(strength(100), "gypsum")!.verdict).toBe("precipitates");
    expect(found(strength(100), "calcium phosphate")!.verdict).toBe("precipitates");
  });
});

test("struvite: magnesium with ammonium phosphate may fall out as the pH rises", () => {
  const tank = amountsOf(["NH4H2PO4", 20], ["MgSO4·7H2O", 50]);
  expect(found(saturations(tank, 1, [4, 4]), "struvite")!.verdict).toBe("stays-dissolved");
  expect(found(saturations(tank, 1, [6.5, 6.5]), "struvite")!.verdict).toBe("precipitates");
  expect(found(saturations(tank, 1), "struvite")!.verdict).toBe("may-precipitate");
  expect(found(saturations(tank, 1), "gypsum")).toBeUndefined();
});

test("the share of HPO4 in phosphate: half at the pH of the second step, by two solutions of one product", () => {
  // At pH 7.207 activities of H2PO4- and HPO4 2- are equal; one unit lower HPO4 is a tenth of H2PO4-. In a thin
  // solution, where activities are 1, the index therefore differs by log10((1/2) / (1/11)) = 0.740.
  const thin = amountsOf(["Ca(H2PO4)2·H2O", 1e-6]).map(({ product, massGrams }) => ({
    product: { ...product, leavesResidue: false },
    massGrams,
  }));
  const at = (pH: number) => found(saturations(thin, 1, [pH, pH]), "calcium phosphate")!.index[1];
  expect(Math.abs(at(7.207) - at(6.207) - Math.log10(11 / 2))).toBeLessThan(0.01);
});

test("nothing meets, nothing is said; residues and elemental sulfur are no ions", () => {
  expect(saturations(amountsOf(["KNO3", 100], ["MgSO4·7H2O", 100]), 1)).toEqual([]);
  expect(saturations(amountsOf(["calcium-nitrate", 100], ["elemental-sulfur", 100]), 1)).toEqual([]);
  expect(saturations(amountsOf(["single-superphosphate", 100]), 1)).toEqual([]);
});

test("every working line comes out, and its source is on file", () => {
  const tank = amountsOf(["calcium-nitrate", 50], ["MgSO4·7H2O", 50], ["NH4H2PO4", 20]);
  const list = saturations(tank, 1);
  expect(list.map(({ solid }) => solid)).toEqual(["gypsum", "calcium phosphate", "struvite"]);
  for (const { index, working, source } of list) {
    expect(Object.keys(sources)).toContain(source);
    for (const { expression, value } of working) {
      expect(Math.abs(evaluate(expression) - value)).toBeLessThan(1e-9);
      expect(value).toBe(index[1]);
    }
  }
});

test("property: more of both comes nearer to falling out", () => {
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 0.5, noNaN: true }), (grams) => {
      const at = (g: number) => found(saturations(amountsOf(["CaCl2", g], ["K2SO4", g]), 1), "gypsum")!.index;
      expect(at(grams * 2)[0]).toBeGreaterThan(at(grams)[0]);
      expect(at(grams * 2)[1]).toBeGreaterThan(at(grams)[1]);
    }),
  );
});

describe("solubility of one salt in a made-up litre, against densities of saturated solutions (from memory)", () => {
  test.each([
    // Grams per litre of saturated solution at 20 °C. The half millilitre per gram is the middle of what salts take.
    ["KNO3", 316, 279],
    ["MgSO4·7H2O", 1140, 710],
    ["K2SO4", 111, 108],
  ])("%s: %d g per litre of water", (formula, perLitreOfWater, perLitreOfSolution) => {
    const [{ product }] = amountsOf([formula, 1]) as [ReturnType<typeof amountsOf>[number]];
    const salt = { ...product, solubilityGramsPerLitre: perLitreOfWater };
    const [result] = dissolves([{ product: salt, massGrams: 100 }], 1);
    expect(Math.abs(result!.mostGramsPerLitre / perLitreOfSolution - 1)).toBeLessThan(0.03);
    expect(Math.abs(result!.fractionUsed * result!.mostGramsPerLitre - 100)).toBeLessThan(1e-9);
    expect(result!.dissolves).toBe(result!.fractionUsed <= 1);
  });

  test("a product without a figure is not judged", () => {
    expect(dissolves(amountsOf(["20-20-20", 500]), 1)).toEqual([]);
  });
});
