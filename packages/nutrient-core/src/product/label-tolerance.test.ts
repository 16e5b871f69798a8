import fc from "fast-check";
import { expect, test } from "vitest";
import sources from "../../../../test-data/sources.json" with { type: "json" };
import { elementPerForm, NUTRIENTS } from "../element/nutrient.ts";
import { labelTolerance, US_ALLOWANCE_TABLE, usAllowancePoints } from "./label-tolerance.ts";
import { MATERIALS, materialById } from "./materials.ts";
import { fractionOf, type Product } from "./product.ts";
import { readProduct } from "./read-product.ts";

const product = (text: string): Product => {
  const read = readProduct(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.value;
};
/** In percentage points of the printed form. */
const points = (text: string, nutrient: (typeof NUTRIENTS)[number], rule: "us" | "eu", perForm = 1): number =>
  (labelTolerance(product(text), nutrient, rule)!.shortfall / perForm) * 100;
/** One multiplication and one division each way. */
const FLOATING = 1e-12;
const near = (value: number, expected: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(FLOATING * Math.abs(expected));

test("rows of the table, between them, and beyond its ends (Florida Statutes 2014, 576.061)", () => {
  near(usAllowancePoints("N", 20), 0.73);
  near(usAllowancePoints("P2O5", 10), 0.69);
  near(usAllowancePoints("K2O", 20), 1.08);
  // Halfway between 0.61 at 12 and 0.63 at 14.
  near(usAllowancePoints("N", 13), 0.62);
  near(usAllowancePoints("K2O", 2), 0.41);
  near(usAllowancePoints("K2O", 60), 1.44);
});

test("the table is that of the statute: 18 rows, every column never falling", () => {
  expect(US_ALLOWANCE_TABLE).toHaveLength(18);
  for (const column of [0, 1, 2, 3] as const) {
    const values = US_ALLOWANCE_TABLE.map((row) => row[column]);
    expect(values).toEqual([...values].sort((a, b) => a - b));
  }
});

test("a grade's oxides are judged as printed, and given as elements", () => {
  near(points("20-10-20", "N", "us"), 0.73);
  near(points("20-10-20", "P", "us", elementPerForm("P2O5")), 0.69);
  near(points("20-10-20", "K", "us", elementPerForm("K2O")), 1.08);
});

test("secondary and trace nutrients: New Hampshire Agr 1105.04, Table 1105-2", () => {
  // 0.2 + 5 % of 19.
  near(points("15.5-0-0 + 19 Ca", "Ca", "us"), 1);
  near(points("15.5-0-0 + 10 Ca", "Ca", "us"), 0.7);
  near(points("15-5-15 + Fe 0.1", "Fe", "us"), 0.015);
  near(points("15-5-15 + B 0.02", "B", "us"), 0.006);
});

test("Regulation (EC) 2003/2003, Annex II: straights, compounds, secondary and trace nutrients", () => {
  near(points("calcium-nitrate", "N", "eu"), 0.4);
  near(points("urea", "N", "eu"), 0.4);
  near(points("potassium-sulfate", "K", "eu", elementPerForm("K2O")), 0.5);
  near(points("20-10-20", "N", "eu"), 1.1);
  near(points("20-10-20", "K", "eu", elementPerForm("K2O")), 1.1);
  // A quarter of 1 %, and of 19 % no more than the cap.
  near(points("15-5-15 + 1 Mg", "Mg", "eu"), 0.25);
  near(points("15.5-0-0 + 19 Ca", "Ca", "eu"), 0.64);
  near(points("15-5-15 + Fe 0.1", "Fe", "eu"), 0.02);
  near(points("0-0-0 + Fe 6", "Fe", "eu"), 0.4);
});

test("a pure substance has no label and no tolerance", () => {
  expect(labelTolerance(product("KNO3"), "K", "us")).toBeUndefined();
  expect(labelTolerance(product("20-10-20"), "Ca", "us")).toBeUndefined();
});

test("property: never more than the product holds, and every source is on file", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...MATERIALS, product("1-0-0"), product("0.3-0.1-0.2")),
      fc.constantFrom(...NUTRIENTS),
      fc.constantFrom("us" as const, "eu" as const),
      (one, nutrient, rule) => {
        const tolerance = labelTolerance(one, nutrient, rule);
        if (!tolerance) return;
        expect(tolerance.shortfall).toBeGreaterThan(0);
        expect(tolerance.shortfall).toBeLessThanOrEqual(fractionOf(one, nutrient));
        expect(Object.keys(sources)).toContain(tolerance.source);
      },
    ),
  );
});

test("the straights that the European rule names are materials here", () => {
  for (const id of ["calcium-nitrate", "ammonium-sulfate", "urea", "triple-superphosphate", "potassium-chloride"])
    expect(materialById(id)?.id).toBe(id);
});
