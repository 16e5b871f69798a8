import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MATERIALS } from "../product/materials.ts";
import type { Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
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
    near(amounts[0]!.massGrams!, 6.75);
    near(deliveredPpm.N!, 150);
    near(deliveredPpm.P2O5!, 75);
    near(deliveredPpm.K2O!, 150);
  });

  test("several cans: the amounts are those of one, the sum stands beside them", () => {
    const { amounts, allCans } = doseOf({ product: "20-10-20", target: "N 150 ppm", water: "9 L", cans: "4" });
    near(amounts[0]!.massGrams!, 6.75);
    expect(allCans).toMatchObject({ count: 4, waterLitres: 36 });
    near(allCans!.massGrams!, 27);
  });

  test("a spoonful weighs its volume times the density", () => {
    const { amounts } = doseOf({ product: "20-10-20", given: "1 metric tsp", water: "9 L", density: "1.2 kg/L" });
    near(amounts[0]!.massGrams!, 6);
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
    near(amounts[0]!.massGrams!, 12.5);
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

describe("a label by volume, whose percent is grams in 100 mL, without a density", () => {
  const label = { product: "10-5-0", by: "volume" } as const;

  test("millilitres times grams in a millilitre is the nutrient: 20 mL of 10 % in 10 L are 200 mg/L, by hand", () => {
    const { amounts, deliveredPpm } = doseOf({ ...label, given: "20 mL", water: "10 L" });
    expect(amounts[0]!.massGrams).toBeNull();
    near(amounts[0]!.volumeMillilitres!, 20);
    near(deliveredPpm.N!, 200);
    near(deliveredPpm.P2O5!, 100);
  });

  test("and back: 200 mg/L of N in 10 L take 20 mL, in four cans 80 mL", () => {
    const { amounts, allCans } = doseOf({ ...label, target: "N 200 ppm", water: "10 L", cans: "4" });
    near(amounts[0]!.volumeMillilitres!, 20);
    expect(allCans!.massGrams).toBeNull();
    near(allCans!.volumeMillilitres!, 80);
  });

  test("a stock is made by volume too: 1:50 for 200 mg/L is 100 mL in each litre, 500 mL in 5 L", () => {
    const { stock } = doseOf({ ...label, target: "N 200 ppm", stock: "1:50", tank: "5 L" });
    expect([stock!.massGrams, stock!.gramsPerLitre]).toEqual([null, null]);
    near(stock!.millilitresPerLitre!, 100);
    near(stock!.volumeMillilitres!, 500);
    near(stock!.finalVolumeLitres, 250);
  });

  test("a weight of it says nothing: the density is asked for then", () => {
    const input = readDose({ ...label, given: "20 g", water: "10 L" }, context);
    expect(input.ok ? [] : input.problems.map(({ path, code }) => `${path} ${code}`)).toEqual([
      "given density-missing",
    ]);
  });

  test("no line of working calls its millilitres grams", () => {
    const input = readDose({ ...label, target: "N 200 ppm", water: "10 L", cans: "2" }, context);
    const outcome = input.ok ? dose(input.value) : input;
    const lines = outcome.ok ? outcome.working : [];
    expect(lines[0]).toMatchObject({ expression: "10 L * 200 mg/L / (0.1 g/mL)", value: 20, unit: "mL" });
    expect(lines[1]!.expression).toBe("(20 mL * (0.1 g/mL)) / (10 L)");
    const given = readDose({ ...label, given: "20 mL", water: "10 L" }, context);
    const judged = given.ok ? dose(given.value) : given;
    const all = [...lines, ...(given.ok ? given.working : []), ...(judged.ok ? judged.working : [])];
    expect(all.length).toBeGreaterThan(lines.length);
    for (const { expression, unit } of all) expect(`${expression} ${unit}`).not.toMatch(/\d g(?!\/)|mol\/g|^g$/);
  });

  test("any density leads to the same nutrients and millilitres, and to a conductivity within the wider range", () => {
    const densities = fc.double({ min: 0.9, max: 1.6, noNaN: true });
    // Of the strong one a millilitre has to weigh more than a gram to hold it all as salts.
    const labels = fc.constantFrom("10-5-0", "15-0-46");
    fc.assert(
      fc.property(labels, densities, fc.double({ min: 1, max: 100, noNaN: true }), (product, density, millilitres) => {
        const asked = { product, by: "volume", given: `${millilitres} mL`, water: "10 L" };
        const free = doseOf(asked);
        const dense = doseOf({ ...asked, density: `${density} kg/L` });
        near(free.deliveredPpm.N!, dense.deliveredPpm.N!, 1e-11);
        near(free.amounts[0]!.volumeMillilitres!, dense.amounts[0]!.volumeMillilitres!, 1e-11);
        const ends = ({ ecRange, ecMilliSiemensPerCm }: DoseResult) =>
          ecRange ?? ([ecMilliSiemensPerCm!, ecMilliSiemensPerCm!] as const);
        const [low, high] = ends(free);
        expect(low).toBeLessThanOrEqual(ends(dense)[0] * (1 + 1e-3));
        // The denser label's region lies within the other's; between its corners a thousandth may be missing.
        expect(high).toBeGreaterThanOrEqual(ends(dense)[1] * (1 - 1e-3));
      }),
    );
  });
});

describe("what was said of a label has to suit the product", () => {
  const shelf: readonly Product[] = ["drum", "powder"].map((id) => {
    const read = readProduct("5-1-3");
    if (!read.ok) throw new Error("unreadable");
    const density = id === "drum" ? { densityKilogramsPerLitre: 1.15 } : {};
    return { ...read.value, id, name: id, origin: "shelf", ...density };
  });
  const problemsOf = (request: DoseRequest): string[] => {
    const input = readDose(request, { ...context, shelf });
    return input.ok ? [] : input.problems.map(({ path, code }) => `${path} ${code}`);
  };

  test.each(["KNO3", "potassium-nitrate", "phosphoric-acid-85", "drum"])("%s takes no --by volume", (product) => {
    const asked = { product, given: "10 g", water: "10 L" };
    expect(problemsOf({ ...asked, by: "volume" })).toEqual(["by options-conflict"]);
    expect(problemsOf({ ...asked, by: "mass" })).toEqual([]);
  });

  test("a density on the shelf is not silently kept, nor silently replaced", () => {
    const asked = { given: "10 mL", water: "10 L", density: "1.3 kg/L" };
    expect(problemsOf({ ...asked, product: "drum" })).toEqual(["density options-conflict"]);
    expect(problemsOf({ ...asked, product: "powder" })).toEqual([]);
  });
});

describe("the range of the conductivity", () => {
  test("both of its ends stand in the working, with the ions that each takes the label to mean", () => {
    const input = readDose({ product: "20-10-20", target: "N 150 ppm", water: "9 L" }, context);
    const outcome = input.ok ? dose(input.value) : input;
    if (!outcome.ok) throw new Error("unusable");
    const [low, high] = outcome.value.ecRange!;
    const value = (label: string): number | undefined =>
      outcome.working.find((line) => line.label.startsWith(label))?.value;
    expect(value("at the least: conductivity at 25 °C")).toBe(low);
    expect(value("at the most: conductivity at 25 °C")).toBe(high);
    // At the least part of the nitrogen is urea, which carries no current.
    expect(value("at the least: ions that the analysis of 20-10-20 allows")).toBeLessThan(
      value("at the most: ions that the analysis of 20-10-20 allows")!,
    );
  });
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
        const grams = there.amounts[0]!.massGrams!;
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
        near(twice.amounts[0]!.massGrams!, 2 * once.amounts[0]!.massGrams!);
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
          near(stock!.massGrams!, amounts[0]!.massGrams!, 1e-11);
          near(stock!.gramsPerLitre! * tank, stock!.massGrams!, 1e-11);
        },
      ),
    );
  });
});
