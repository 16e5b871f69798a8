import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NUTRIENT_ELEMENTS } from "../element/nutrient.ts";
import { MATERIALS } from "../product/materials.ts";
import type { Product } from "../product/product.ts";
import { productFromLabel } from "../product/read-product.ts";
import { readQuantity } from "../quantity/expression.ts";
import type { Basis, Extent } from "./basis.ts";
import { supplyOne } from "./one-product.ts";
import { asRatio } from "./ratio.ts";
import { readArea } from "./read-area.ts";
import { METRIC_SPOONS, spoonsFor, US_SPOONS } from "./spoons.ts";
import { type Amount, deliver, massForRate, supplyMatrix } from "./supply.ts";
import { readTarget } from "./target.ts";

const near = (actual: number, expected: number, relative = 1e-12): void =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(Math.max(Math.abs(expected), 1e-12) * relative);

const grade = (text: string): Product => {
  const read = productFromLabel(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};

const products = fc.constantFrom<Product>(...MATERIALS, grade("20-20-20"), grade("5-10-10"));
const extents: fc.Arbitrary<Extent> = fc.record({
  basis: fc.constantFrom<Basis>("litre", "squareMetre", "cubicMetre"),
  amount: fc.double({ min: 0.1, max: 1e4, noNaN: true }),
});
const amounts = fc.array(fc.record({ product: products, massGrams: fc.double({ min: 0.01, max: 1e4, noNaN: true }) }), {
  minLength: 1,
  maxLength: 6,
});

describe("the one linear map", () => {
  test("9 L at 150 mg/L of a 20 % product is 6.75 g (9 x 150 / 0.20, by hand)", () => {
    near(massForRate(grade("20-0-0"), "N", 150, { basis: "litre", amount: 9 })!, 6.75);
  });

  test("property, conservation: nothing is delivered but what the products hold", () => {
    fc.assert(
      fc.property(amounts, extents, (list: Amount[], extent) => {
        const delivered = deliver(list, extent);
        const perGram = extent.basis === "litre" ? 1000 : 1;
        for (const element of NUTRIENT_ELEMENTS) {
          const held = list.reduce(
            (sum, { product, massGrams }) => sum + massGrams * (product.composition[element] ?? 0),
            0,
          );
          near(((delivered[element] ?? 0) * extent.amount) / perGram, held, 1e-12);
        }
      }),
    );
  });

  test("property, round trip: the amount for a rate delivers that rate", () => {
    fc.assert(
      fc.property(products, extents, fc.double({ min: 0.1, max: 500, noNaN: true }), (product, extent, rate) => {
        for (const element of NUTRIENT_ELEMENTS) {
          const massGrams = massForRate(product, element, rate, extent);
          if (massGrams === undefined) expect(product.composition[element] ?? 0).toBe(0);
          else near(deliver([{ product, massGrams }], extent)[element]!, rate);
        }
      }),
    );
  });

  test("property, scaling: twice the water takes twice the amount; order does not matter", () => {
    fc.assert(
      fc.property(amounts, extents, (list: Amount[], extent) => {
        const once = deliver(list, extent);
        const doubled = deliver(
          list.map(({ product, massGrams }) => ({ product, massGrams: 2 * massGrams })),
          { ...extent, amount: 2 * extent.amount },
        );
        const reversed = deliver([...list].reverse(), extent);
        for (const [nutrient, rate] of Object.entries(once) as ["N", number][]) {
          near(doubled[nutrient]!, rate);
          near(reversed[nutrient]!, rate, 1e-11);
        }
      }),
    );
  });

  test("property, second route: the matrix times the amounts is what is delivered", () => {
    fc.assert(
      fc.property(amounts, extents, (list: Amount[], extent) => {
        const rows = supplyMatrix(
          list.map(({ product }) => product),
          ["N", "P", "K"],
          extent,
        );
        const delivered = deliver(list, extent);
        (["N", "P", "K"] as const).forEach((nutrient, index) => {
          const product = rows[index]!.reduce((sum, perGram, j) => sum + perGram * list[j]!.massGrams, 0);
          near(delivered[nutrient] ?? 0, product, 1e-11);
        });
      }),
    );
  });

  test("what is already there is taken off, and never below nothing", () => {
    const extent: Extent = { basis: "litre", amount: 10 };
    const wanted = { nutrient: "N" as const, rate: 100, asked: { form: "N" as const, rate: 100 } };
    const less = supplyOne(grade("20-0-0"), { kind: "target", wanted }, extent, { N: 40 });
    expect(less.ok && less.value.massGrams).toBeCloseTo(3, 12);
    expect(less.ok && less.value.delivered.N).toBeCloseTo(100, 10);
    const none = supplyOne(grade("20-0-0"), { kind: "target", wanted }, extent, { N: 140 });
    expect(none.ok && none.value.massGrams).toBe(0);
  });
});

describe("targets", () => {
  // Factors recomputed by hand from the definitions of pound, foot, acre and yard.
  test.each([
    ["N 150 ppm", "N", 150],
    ["P2O5 100 mg/L", "P", 43.64287],
    ["K2O 200 ppm", "K", 166.03004],
    ["NO3 10 mmol/L", "NO3-N", 140.07],
    ["N 10 kg/ha", "N", 1],
    ["N 1 lb/1000 sqft", "N", 4.882428],
    ["N 1 lb/100 sq ft", "N", 48.82428],
    ["N 1 lb/acre", "N", 0.1120851],
    ["N=100 ppm", "N", 100],
    ["100 ppm N", "N", 100],
    ["2 lb/1000 sq ft of potash", "K", 8.106297],
    ["N 1 pound per 1,000 square feet", "N", 4.882428],
    ["N 1 kg per hectare", "N", 0.1],
    ["N 1 oz per square yard", "N", 33.90575],
    ["N 1 lb per cubic yard", "N", 593.2764],
    ["N 1 oz/sq yd", "N", 33.90575],
    ["N 1 oz/100 sqft", "N", 3.051517],
    ["N 100 g/m3", "N", 100],
    ["N 1 lb/cu yd", "N", 593.2764],
  ])("%s", (text, nutrient, rate) => {
    const read = readTarget(text);
    if (!read.ok) throw new Error(JSON.stringify(read));
    expect(read.value.wanted[0]!.nutrient).toBe(nutrient);
    near(read.value.wanted[0]!.rate, rate, 5e-7);
  });
});

describe("areas", () => {
  test.each([
    ["3 m2", 3],
    ["4 ft x 8 ft", 2.97289728],
    ["2 beds 1.2 m x 2.4 m", 5.76],
    ["circle 2 m", Math.PI],
    ["row 10 m x 30 cm", 3],
    ["12 plants 40 cm x 50 cm", 2.4],
    ["1 acre", 4046.8564224],
  ])("%s", (text, squareMetres) => {
    const read = readArea(text, readQuantity);
    near(read.ok ? read.value.squareMetres : Number.NaN, squareMetres);
  });
});

test("a ratio is scaled to its smallest part", () => {
  expect(asRatio([15, 5, 10])).toEqual([3, 1, 2]);
  expect(asRatio([0, 0, 10])).toEqual([0, 0, 1]);
  expect(asRatio([0, 0, 0])).toEqual([0, 0, 0]);
});

test("property: spoons are never further off than half of an eighth of a teaspoon", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 200, noNaN: true }),
      fc.constantFrom(US_SPOONS, METRIC_SPOONS),
      (millilitres, set) => {
        const spoons = spoonsFor(millilitres, set);
        if (spoons)
          expect(Math.abs(spoons.volumeMillilitres - millilitres)).toBeLessThanOrEqual(
            set.teaspoonMillilitres / 16 + 1e-9,
          );
      },
    ),
  );
});
