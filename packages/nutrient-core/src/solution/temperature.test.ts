import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { electricalConductivity } from "./conductivity.ts";
import { conductivityPerGram, ionicStrengthNear } from "./linear-conductivity.ts";
import { conductivityAt, conductivityAt25 } from "./temperature.ts";
import { amountsOf, relativeError, SOLUTION_1 } from "./testing/support.ts";

describe("temperature, against potassium chloride 0.01 mol/kg (nist-kcl-conductivity, µS/cm)", () => {
  test.each([
    [10, 1013.95],
    [15, 1141.45],
    [20, 1273.03],
    [25, 1408.23],
    [30, 1546.63],
  ])("%d °C", (celsius, printed) => {
    // A straight line through a curve: 1 % from 10 to 30 °C, as the docstring says.
    expect(Math.abs(relativeError(conductivityAt(1408.23, celsius), printed))).toBeLessThan(0.01);
  });

  test("property: there and back", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 35, noNaN: true }),
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        (t, ec) => {
          expect(Math.abs(relativeError(conductivityAt25(conductivityAt(ec, t), t), ec))).toBeLessThan(1e-12);
        },
      ),
    );
  });
});

/** Conductivity at 20 °C of a salt at so many mass percent; density 1 + 0.0075 per percent, from memory. */
const at20 = (formula: string, percent: number) => {
  const gramsPerLitre = percent * 10 * (1 + 0.0075 * percent);
  return conductivityAt(electricalConductivity(amountsOf([formula, gramsPerLitre]), 1).milliSiemensPerCm, 20);
};

describe("20 °C: 5 g of salt per kilogram of water, from the fits of electrolyte-conductivity-2011", () => {
  test.each([
    ["KNO3", 5.73],
    ["KCl", 8.04],
    ["K2SO4", 5.96],
  ])("%s", (formula, printed) => {
    // Asked of this model: 5 %.
    expect(Math.abs(relativeError(at20(formula, 0.4975), printed))).toBeLessThan(0.05);
  });
});

describe("20 °C by mass percent (crc-conductivity-mass-percent): a table that others contradict", () => {
  // At half a percent this table lies 5 % below the fits of 2011 for NH4Cl and MgCl2, and 9 % below the handbook's own
  // equivalent conductivities for CuSO4 (docs/decisions/ec-model.md). What is held here is how far we are from it; the
  // sign shows on which side. Half a percent is far above any feed (38 mmol/L of ammonium sulfate).
  test.each([
    ["NH4Cl", 0.5, 10.5, 0.03, 0.06],
    ["(NH4)2SO4", 0.5, 7.4, 0.05, 0.08],
    ["CaCl2", 0.5, 8.1, 0.02, 0.05],
    ["MgCl2", 0.5, 8.6, 0.07, 0.1],
    ["MgSO4", 0.5, 4.1, -0.11, -0.08],
    ["CuSO4", 0.5, 2.9, 0.07, 0.1],
    ["MnSO4", 1, 6.2, -0.08, -0.05],
  ])("%s at %d %%: printed %d mS/cm", (formula, percent, printed, low, high) => {
    const error = relativeError(at20(formula, percent), printed);
    expect(error).toBeGreaterThan(low);
    expect(error).toBeLessThan(high);
  });
});

describe("the straight line for blends", () => {
  const line = (amounts: ReturnType<typeof amountsOf>, ec: number) =>
    amounts.reduce((sum, { product, massGrams }) => {
      return sum + massGrams * conductivityPerGram(product, 1, ionicStrengthNear(ec));
    }, 0);

  test.each([
    ["no sulfate of calcium or magnesium", amountsOf(["KNO3", 0.6], ["NH4NO3", 0.2], ["KH2PO4", 0.2]), -0.01, 0.01],
    ["potassium sulfate", amountsOf(["K2SO4", 1]), -0.01, 0.02],
    ["solution 1, complete", [...SOLUTION_1], 0.04, 0.09],
    ["magnesium sulfate alone", amountsOf(["MgSO4·7H2O", 1]), 0.25, 0.36],
    ["a grade: the middle of its range", amountsOf(["20-10-20", 0.5]), -0.01, 0.02],
  ])("%s", (_, amounts, low, high) => {
    const { milliSiemensPerCm } = electricalConductivity(amounts, 1);
    const error = relativeError(line(amounts, milliSiemensPerCm), milliSiemensPerCm);
    expect(error).toBeGreaterThan(low);
    expect(error).toBeLessThan(high);
  });

  test("property: it is linear in grams and in litres", () => {
    const [{ product }] = amountsOf(["calcium-nitrate", 1]) as [ReturnType<typeof amountsOf>[number]];
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1000, noNaN: true }), (litres) => {
        const one = conductivityPerGram(product, 1, 0.02);
        expect(Math.abs(relativeError(conductivityPerGram(product, litres, 0.02) * litres, one))).toBeLessThan(1e-12);
      }),
    );
  });
});
