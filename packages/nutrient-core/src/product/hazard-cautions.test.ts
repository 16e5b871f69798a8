import fc from "fast-check";
import { describe, expect, test } from "vitest";
import sources from "../../../../test-data/sources.json" with { type: "json" };
import { hazardCautions } from "./hazard-cautions.ts";
import { MATERIALS, materialById } from "./materials.ts";
import { HAZARDS, type Product } from "./product.ts";
import { readProduct } from "./read-product.ts";

const withHazard = (hazard: (typeof HAZARDS)[number]): Product => ({
  ...materialById("urea")!,
  id: hazard,
  name: `test ${hazard}`,
  hazards: [hazard],
});

describe.each(HAZARDS)("%s", (hazard) => {
  const [caution, ...more] = hazardCautions([withHazard(hazard)]);

  test("has one caution, which names the product and a source on file", () => {
    expect(more).toEqual([]);
    expect(caution!.code).toMatch(/^hazard-[a-z-]+$/);
    expect(caution!.message).toContain(`Test ${hazard}`);
    expect(caution!.facts["products"]).toEqual([`test ${hazard}`]);
    expect(Object.keys(sources)).toContain(caution!.source);
  });

  test("is a sentence without gaps", () => {
    expect(caution!.message).not.toMatch(/undefined|NaN|\[object/);
    expect(caution!.message.endsWith(".")).toBe(true);
  });
});

test("codes differ from hazard to hazard", () => {
  const codes = HAZARDS.map((hazard) => hazardCautions([withHazard(hazard)])[0]!.code);
  expect(new Set(codes).size).toBe(HAZARDS.length);
});

test("what can hurt most defers to the label or to local rules", () => {
  for (const hazard of ["oxidiser", "acid", "caustic", "eye-damage", "may-harm-fertility", "flammable-dust"] as const)
    expect(hazardCautions([withHazard(hazard)])[0]!.message).toMatch(/label|local/);
});

test("raw manure says both waiting times of 7 CFR 205.203(c)(1)", () => {
  const [caution] = hazardCautions([materialById("horse-manure-fresh")!]);
  expect(caution).toMatchObject({
    code: "hazard-pathogens",
    facts: { daysToHarvestCropOffSoil: 90, daysToHarvestCropOnSoil: 120 },
    source: "nop-raw-manure",
  });
  expect(caution!.message).toMatch(/120 days.*90 days/);
});

test("a formula has the hazards of the material that it is", () => {
  const codes = (text: string) => {
    const product = readProduct(text);
    return product.ok ? hazardCautions([product.value]).map(({ code }) => code) : product.problems;
  };
  expect(codes("KNO3")).toEqual(["hazard-oxidiser", "hazard-eyes"]);
  expect(codes("H3PO4")).toEqual(["hazard-acid", "hazard-eyes"]);
  expect(codes("CuSO4.5H2O")).toContain("hazard-water-life");
  expect(codes("5-10-10")).toEqual([]);
});

test("property: order and repeats of the products do not matter, and each product's hazards are all named", () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...MATERIALS), { maxLength: 6 }), (products) => {
      const cautions = hazardCautions(products);
      expect(hazardCautions([...products, ...products].reverse())).toEqual(cautions);
      const said = cautions.flatMap(({ facts }) => facts["products"] as readonly string[]).length;
      const distinct = new Set(products);
      expect(said).toBe([...distinct].reduce((sum, { hazards }) => sum + hazards.length, 0));
    }),
  );
});

test("a formula without the water that its material has is no safer", () => {
  const hazards = (text: string) => {
    const product = readProduct(text);
    return product.ok ? product.value.hazards : product.problems;
  };
  expect(hazards("CuSO4")).toEqual(materialById("copper-sulfate")!.hazards);
  expect(hazards("Mg(NO3)2")).toEqual(["oxidiser"]);
  expect(hazards("K2HPO4")).toEqual([]);
});

test("a liquid is kept closed and upright, for it cannot be kept dry", () => {
  const kept = (...products: Product[]) =>
    hazardCautions(products).find(({ code }) => code === "hazard-oxidiser")!.message;
  const acid = readProduct("HNO3 60%");
  if (!acid.ok) throw new Error("not read");
  // Read aloud before they were written down here.
  expect(kept(acid.value)).toMatch(/^HNO3 60%: feeds a fire\. Keep it tightly closed and upright, away from heat/);
  expect(kept(materialById("nitric-acid-60")!)).not.toMatch(/dry/);
  expect(kept(materialById("potassium-nitrate")!)).toMatch(/feeds a fire\. Keep it dry, away from heat/);
  expect(kept(materialById("nitric-acid-60")!, materialById("potassium-nitrate")!)).toMatch(
    /Keep what is solid dry, what is liquid tightly closed and upright, and both away from heat/,
  );
  const lye: Product = { ...materialById("hydrated-lime")!, name: "a caustic solution", state: "liquid" };
  const caustic = (product: Product) =>
    hazardCautions([product]).find(({ code }) => code === "hazard-caustic")!.message;
  expect(caustic(lye)).toMatch(/gloves, keep it tightly closed and upright and apart from ammonium/);
  expect(caustic(materialById("hydrated-lime")!)).toMatch(/gloves, keep it dry and apart from ammonium/);
});
