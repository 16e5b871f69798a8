import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MATERIALS } from "../product/materials.ts";
import type { Product } from "../product/product.ts";
import { readPlainQuantity } from "../quantity/quantity.ts";
import { type DoseResult, dose } from "./dose.ts";
import { type DoseRequest, readDose } from "./read-dose.ts";

const context = { shelf: [] as readonly Product[], quantity: readPlainQuantity };
const near = (actual: number, expected: number, relative = 1e-12): void =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(Math.max(Math.abs(expected), 1e-12) * relative);

function doseOf(request: DoseRequest): DoseResult {
  const input = readDose(request, context);
  if (!input.ok) throw new Error(JSON.stringify(input.problems));
  const outcome = dose(input.value);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

describe("a can", () => {
  test("target to amount: 9 L at 150 ppm N of 20-10-20 takes 6.75 g, by hand", () => {
    const { amounts, deliveredPpm } = doseOf({ product: "20-10-20", target: "N 150 ppm", water: "9 L" });
    near(amounts[0]!.massGrams, 6.75);
    near(deliveredPpm.N!, 150);
    near(deliveredPpm.P2O5!, 75);
    near(deliveredPpm.K2O!, 150);
  });

  test("several cans: the amounts are those of one, the sum stands beside them", () => {
    const { amounts, allCans } = doseOf({ product: "20-10-20", target: "N 150 ppm", water: "9 L", cans: "4" });
    near(amounts[0]!.massGrams, 6.75);
    expect(allCans).toMatchObject({ count: 4, waterLitres: 36 });
    near(allCans!.massGrams, 27);
  });

  test("a spoonful weighs its volume times the density", () => {
    const { amounts } = doseOf({ product: "20-10-20", given: "1 metric tsp", water: "9 L", density: "1.2 kg/L" });
    near(amounts[0]!.massGrams, 6);
    near(amounts[0]!.volumeMillilitres!, 5);
  });

  test("a label by volume is grams in 100 mL: 10 % w/v is 100 g in a litre, whatever the density", () => {
    const { amounts, deliveredPpm } = doseOf({
      product: "10-0-0",
      by: "volume",
      density: "1.25 kg/L",
      given: "10 mL",
      water: "10 L",
    });
    near(amounts[0]!.massGrams, 12.5);
    near(deliveredPpm.N!, 100);
  });

  test("a purity counts: 1 g of KNO3 98% in 1 L brings 98 % of what the pure salt does", () => {
    const pure = doseOf({ product: "KNO3", given: "1 g", water: "1 L" });
    const technical = doseOf({ product: "KNO3 98%", given: "1 g", water: "1 L" });
    near(technical.deliveredPpm.K!, 0.98 * pure.deliveredPpm.K!);
    near(technical.deliveredPpm["NO3-N"]!, 0.98 * pure.deliveredPpm["NO3-N"]!);
  });

  test("an element-basis label reads its P and K as they stand", () => {
    const { deliveredPpm } = doseOf({ product: "0-10-10", basis: "element", given: "1 g", water: "1 L" });
    near(deliveredPpm.P!, 100);
    near(deliveredPpm.K!, 100);
  });
});

test("an amount too fine for a kitchen scale is made measurable through a weak stock", () => {
  const input = readDose({ product: "boric-acid", target: "B 0.5 ppm", water: "10 L" }, context);
  const outcome = input.ok ? dose(input.value) : input;
  const caution = outcome.ok ? outcome.cautions.find(({ code }) => code === "too-small-to-weigh") : undefined;
  // 5 mg of B at 17 % is 29.4 mg; of a stock of 10 g/L that is 2.94 mL.
  expect(caution?.message).toContain("29.4 mg");
  expect(caution?.message).toContain("2.94 mL");
  const plain = readDose({ product: "20-20-20", target: "N 100 ppm", water: "10 L" }, context);
  const enough = plain.ok ? dose(plain.value) : plain;
  expect(enough.ok && enough.cautions.some(({ code }) => code === "too-small-to-weigh")).toBe(false);
});

test("nobody is asked to spoon an acid to learn what it weighs", () => {
  const hint = (product: string) => {
    const input = readDose({ product, given: "1 mL", water: "10 L" }, context);
    return input.ok ? "read" : input.problems[0]!.hint;
  };
  expect(hint("HNO3 60%")).toBe(
    "take it from the label or the safety sheet for --density, or give the amount in grams",
  );
  expect(hint("urea-phosphate")).not.toContain("spoon");
  expect(hint("KCl 98%")).toContain("weigh ten level spoons");
});

describe("what does not dissolve", () => {
  const cautionsOf = (request: object) => {
    const input = readDose(request, context);
    const outcome = input.ok ? dose(input.value) : input;
    if (!outcome.ok) throw new Error(outcome.problems[0]!.message);
    return outcome.cautions;
  };

  test.each(["elemental-sulfur", "S", "gypsum", "single-superphosphate", "hydrated-lime"])(
    "no stock is suggested for a pinch of %s",
    (product) => {
      const small = cautionsOf({ product, given: "0.1 g", water: "1 L" }).find(
        ({ code }) => code === "too-small-to-weigh",
      );
      expect(small!.message).toMatch(
        /^100 mg is finer .* weigh it on a fine scale, or choose a product that dissolves\.$/,
      );
      expect(small!.facts["stockMillilitres"]).toBeUndefined();
    },
  );

  test.each(["borax", "copper-sulfate", "potassium-sulfate"])("a stock is suggested for a pinch of %s", (product) => {
    const small = cautionsOf({ product, given: "0.1 g", water: "1 L" }).find(
      ({ code }) => code === "too-small-to-weigh",
    );
    expect(small!.facts).toMatchObject({ stockGramsPerLitre: 10, stockMillilitres: 10 });
  });

  test("sulfur in a can is told", () => {
    const codes = cautionsOf({ product: "elemental-sulfur", target: "S 30 ppm", water: "10 L" }).map(
      ({ code }) => code,
    );
    expect(codes).toContain("does-not-dissolve");
  });
});

test("a label that cannot be is doubted before it is weighed by", () => {
  const input = readDose({ product: "50-50-50", target: "N 100 ppm", water: "10 L" }, context);
  const outcome = input.ok ? dose(input.value) : input;
  expect(outcome.ok && outcome.cautions.map(({ code }) => code)).toContain("label-over-100");
});

describe("properties", () => {
  const rates = fc.double({ min: 1, max: 400, noNaN: true });
  const litres = fc.double({ min: 0.5, max: 2000, noNaN: true });
  const nitrogenous = fc.constantFrom(
    ...MATERIALS.filter(({ composition }) => (composition.N ?? 0) > 0.005).map(({ id }) => id),
  );

  test("round trip: the amount for a target, given back, delivers the target", () => {
    fc.assert(
      fc.property(nitrogenous, rates, litres, (product, rate, water) => {
        const there = doseOf({ product, target: `N ${rate} ppm`, water: `${water} L` });
        const grams = there.amounts[0]!.massGrams;
        fc.pre(grams > 1e-3 && grams < 1e6);
        const back = doseOf({ product, given: `${grams} g`, water: `${water} L` });
        near(back.deliveredPpm.N!, rate, 1e-11);
      }),
    );
  });

  test("scaling: twice the water takes twice the amount at the same strength", () => {
    fc.assert(
      fc.property(nitrogenous, rates, litres, (product, rate, water) => {
        const once = doseOf({ product, target: `N ${rate} ppm`, water: `${water} L` });
        const twice = doseOf({ product, target: `N ${rate} ppm`, water: `${2 * water} L` });
        near(twice.amounts[0]!.massGrams, 2 * once.amounts[0]!.massGrams);
        near(twice.deliveredPpm.N!, once.deliveredPpm.N!);
      }),
    );
  });

  test("conservation: a stock holds for its final volume exactly what the feed delivers", () => {
    fc.assert(
      fc.property(
        nitrogenous,
        rates,
        fc.integer({ min: 1, max: 500 }),
        fc.double({ min: 0.5, max: 100, noNaN: true }),
        (product, rate, ratio, tank) => {
          const { stock, amounts } = doseOf({
            product,
            target: `N ${rate} ppm`,
            stock: `1:${ratio}`,
            tank: `${tank} L`,
          });
          near(stock!.finalVolumeLitres, tank * ratio);
          near(stock!.massGrams, amounts[0]!.massGrams, 1e-11);
          near(stock!.gramsPerLitre * tank, stock!.massGrams, 1e-11);
        },
      ),
    );
  });
});
