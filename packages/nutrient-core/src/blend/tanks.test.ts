import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fractionOf, type Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
import { splitOverTanks } from "./tanks.ts";
import { ask, gap, inputOf } from "./testing/ask.ts";

const product = (text: string): Product => {
  const read = readProduct(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.value;
};
const STOCK = { ratio: 100, tankLitres: 20 };
const split = (...names: string[]) =>
  splitOverTanks(
    names.map((name) => ({ product: product(name), massGrams: 100 })),
    1000,
    STOCK,
  );
const tanksOf = (...names: string[]) =>
  split(...names).tanks.tanks.map(({ amounts }) => amounts.map((one) => one.product));

describe("one tank or two", () => {
  test("calcium stays apart from sulfate and phosphate", () => {
    expect(tanksOf("calcium-nitrate", "magnesium-sulfate", "monopotassium-phosphate")).toEqual([
      ["calcium-nitrate"],
      ["magnesium-sulfate", "monopotassium-phosphate"],
    ]);
  });

  test("one tank is enough where nothing meets", () => {
    expect(tanksOf("magnesium-sulfate", "monopotassium-phosphate", "potassium-nitrate")).toHaveLength(1);
    expect(tanksOf("calcium-nitrate", "potassium-nitrate", "urea")).toHaveLength(1);
  });

  test("what may stand with both fills the lighter tank", () => {
    expect(tanksOf("calcium-nitrate", "magnesium-sulfate", "potassium-nitrate", "urea")).toEqual([
      ["calcium-nitrate", "potassium-nitrate"],
      ["magnesium-sulfate", "urea"],
    ]);
  });

  test("elemental sulfur drops nothing, and gypsum is on both sides", () => {
    expect(tanksOf("calcium-nitrate", "elemental-sulfur")).toHaveLength(1);
    const { cautions } = split("gypsum", "calcium-nitrate", "magnesium-sulfate");
    expect(cautions.length).toBeGreaterThan(0);
  });

  test("a caution names its tank", () => {
    const { cautions } = splitOverTanks(
      [
        { product: product("calcium-nitrate"), massGrams: 100 },
        { product: product("potassium-sulfate"), massGrams: 90_000 },
      ],
      1000,
      STOCK,
    );
    const caution = cautions.find(({ code }) => code === "stock-solubility-exceeded")!;
    expect(caution.message).toMatch(/^Tank B: /);
  });
});

test("property: never calcium with sulfate or phosphate from another product, and nothing lost", () => {
  const names = [
    "calcium-nitrate",
    "calcium-chloride",
    "magnesium-sulfate",
    "potassium-sulfate",
    "monoammonium-phosphate",
    "potassium-nitrate",
    "urea",
    "iron-dtpa",
    "magnesium-nitrate",
  ];
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.constantFrom(...names), { minLength: 1 }),
      fc.double({ min: 0.1, max: 100, noNaN: true }),
      (list, massGrams) => {
        const amounts = list.map((name) => ({ product: product(name), massGrams }));
        const { tanks } = splitOverTanks(amounts, 500, STOCK);
        for (const tank of tanks.tanks) {
          const held = tank.amounts.map((one) => product(one.product));
          const calcium = held.some((one) => fractionOf(one, "Ca") > 0);
          const drops = held.some((one) => fractionOf(one, "S") > 0 || fractionOf(one, "P") > 0);
          expect(calcium && drops).toBe(false);
        }
        const all = tanks.tanks.flatMap(({ amounts: one }) => one);
        expect(all).toHaveLength(list.length);
        // 20 L at 1:100 feed 2000 L, four times 500 L.
        for (const one of all) expect(gap(one.massGrams, 4 * massGrams)).toBeLessThan(1e-12);
      },
    ),
  );
});

test("through the door: the water is what full tanks make, or what was said", () => {
  const request = { products: "KNO3, urea", target: "N 100 ppm, K 100 ppm", stock: "1:100", tank: "20 L" };
  const input = inputOf(request);
  expect(input.purpose).toMatchObject({ extent: { basis: "litre", amount: 2000 } });
  const whole = ask(request).value.stock!;
  const can = ask({ ...request, water: "10 L" }).value;
  expect(gap(can.stock!.tanks[0]!.amounts[0]!.massGrams, whole.tanks[0]!.amounts[0]!.massGrams)).toBeLessThan(1e-9);
  expect(gap(can.amounts[0]!.massGrams * 200, whole.tanks[0]!.amounts[0]!.massGrams)).toBeLessThan(1e-9);
});
