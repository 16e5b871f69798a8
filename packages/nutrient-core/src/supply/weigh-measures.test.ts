import { describe, expect, test } from "vitest";
import type { Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
import { METRIC_SPOONS } from "./spoons.ts";
import { type Measures, measuresFor } from "./weigh-measures.ts";

function product(name: string, more: Partial<Product> = {}): Product {
  const read = readProduct(name);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return { ...read.value, ...more };
}

function problemsOf(products: readonly Product[], measures: Measures) {
  const found = measuresFor(products, measures);
  return found.ok ? [] : found.problems;
}

const SPOONS = { spoons: METRIC_SPOONS };

describe("what is missing to measure a product, and how to give it", () => {
  test("a powder of unknown density is to be weighed in spoons, once", () => {
    const [problem] = problemsOf([product("20-10-20")], SPOONS);
    expect(problem).toMatchObject({ code: "density-missing", path: "spoons" });
    expect(problem?.message).toBe("What a spoonful of 20-10-20 weighs is not known.");
    expect(problem?.hint).toMatch(/weigh ten level metric teaspoons .* an entry for it in the shelf file/);
  });

  test("what stands on the shelf is told to be completed there", () => {
    const [problem] = problemsOf([product("20-10-20", { id: "leafy", origin: "shelf" })], SPOONS);
    expect(problem?.hint).toContain('its entry "leafy" in the shelf file');
  });

  test("a liquid is told that spoons are for powders", () => {
    const [problem] = problemsOf([product("5-1-3", { state: "liquid", densityKilogramsPerLitre: 1.1 })], SPOONS);
    expect(problem).toMatchObject({ code: "measure-missing", path: "syringe", received: "metric spoons" });
    expect(problem?.message).toBe("5-1-3 is a liquid, and level spoons are for powders.");
    expect(problem?.hint).toBe('add --syringe "1 mL", or --scale "1 g"');
  });

  test("a liquid of unknown density is looked up on its label, not weighed by the spoon", () => {
    const [problem] = problemsOf([product("5-1-3", { state: "liquid" })], { syringeStepMillilitres: 1 });
    expect(problem).toMatchObject({ code: "density-missing", path: "syringe" });
    expect(problem?.message).toBe("What a millilitre of 5-1-3 weighs is not known.");
    expect(problem?.hint).toMatch(/the label or the safety sheet .*density: 1\.2 kg\/L/);
    expect(problem?.hint).not.toContain("spoon");
  });

  test("what must not touch a kitchen spoon says why, and is never offered spoons again", () => {
    const [problem] = problemsOf([product("borax")], SPOONS);
    expect(problem).toMatchObject({ code: "measure-missing", path: "scale" });
    expect(problem?.message).toBe("borax is nothing for a kitchen spoon (may harm fertility).");
    expect(problem?.expected).not.toContain("spoons");
  });

  test("a scoop is for powders too, and a syringe is not", () => {
    expect(problemsOf([product("5-1-3", { state: "liquid" })], { scoopMillilitres: 25 })[0]?.message).toBe(
      "5-1-3 is a liquid, and a scoop is for powders.",
    );
    expect(problemsOf([product("20-10-20")], { syringeStepMillilitres: 1 })[0]?.message).toBe(
      "20-10-20 is a solid, and a syringe is for liquids.",
    );
    expect(problemsOf([product("20-10-20")], { scoopMillilitres: 25 })[0]?.message).toBe(
      "What a scoop of 20-10-20 weighs is not known.",
    );
  });

  test("every product that cannot be measured is told in one go", () => {
    const several = [product("20-10-20"), product("phosphoric-acid-85"), product("borax")];
    expect(problemsOf(several, SPOONS).map(({ code }) => code)).toEqual([
      "density-missing",
      "measure-missing",
      "measure-missing",
    ]);
  });
});

test("spoons for a powder, the syringe for a liquid, the scale for the rest", () => {
  const measures = { ...SPOONS, syringeStepMillilitres: 0.5, scaleStepGrams: 1 };
  const powder = product("20-10-20", { densityKilogramsPerLitre: 0.96 });
  const liquid = product("5-1-3", { state: "liquid", densityKilogramsPerLitre: 1.1 });
  const found = measuresFor([powder, liquid, product("borax")], measures);
  expect(found.ok && found.value).toEqual([
    // An eighth of 5 mL weighs 0.6 g at 0.96 g/mL.
    { kind: "spoons", stepGrams: 0.625 * 0.96, stepMillilitres: 0.625 },
    { kind: "syringe", stepGrams: 0.55, stepMillilitres: 0.5 },
    { kind: "scale", stepGrams: 1 },
  ]);
});
