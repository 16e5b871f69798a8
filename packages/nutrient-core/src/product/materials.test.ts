import { describe, expect, test } from "vitest";
import sources from "../../../../test-data/sources.json" with { type: "json" };
import type { ElementSymbol } from "../element/atomic-weight.ts";
import { massFractions, readFormula } from "../element/formula.ts";
import { NITROGEN_FORMS, NUTRIENT_ELEMENTS } from "../element/nutrient.ts";
import { MATERIAL_GROUPS, type Material } from "./materials/material.ts";
import { MATERIALS, materialById } from "./materials.ts";
import { readProduct } from "./read-product.ts";

const theoryOf = (formula: string): Readonly<Partial<Record<ElementSymbol, number>>> => {
  const atoms = readFormula(formula);
  if (!atoms.ok) throw new Error(atoms.problems[0]!.message);
  return massFractions(atoms.value);
};

/** Every element of every material that has a formula: what is printed, over what the pure substance holds. */
const PURITIES = MATERIALS.flatMap((material) => {
  if (material.formula === undefined) return [];
  const theory = theoryOf(material.formula);
  return NUTRIENT_ELEMENTS.flatMap((element) => {
    const share = material.composition[element];
    return share === undefined ? [] : [{ id: material.id, element, share, theory: theory[element] ?? 0 }];
  });
});

/** Printed above the pure substance by more than the rounding of the print, each with its reason. */
const ABOVE_THEORY: Readonly<Record<string, string>> = {
  "calcium-nitrate Ca": "the trade prints 19 %; the double salt's formula holds 18.5 %",
};

/** Printed below three quarters of the pure substance, each with its reason. */
const FAR_BELOW_THEORY: Readonly<Record<string, string>> = {
  "iron-eddha Fe": "the product holds isomers and salts: 6 % where the pure sodium salt holds 12.8 %",
  "nitric-acid-60 N": "a solution of 60 %",
  "phosphoric-acid-75 P": "a solution of 75 %, just below the line",
};

describe("analyses against the formula", () => {
  test.each(PURITIES)("$id: $element is not above the pure substance", ({ id, element, share, theory }) => {
    // 0.1 percent points: what rounding can add to a figure printed to one decimal, and to 11 for 10.93.
    if (share > theory + 0.001) expect(Object.keys(ABOVE_THEORY)).toContain(`${id} ${element}`);
  });

  test.each(PURITIES)("$id: $element belongs to the formula beside it", ({ id, element, share, theory }) => {
    if (share < 0.75 * theory) expect(Object.keys(FAR_BELOW_THEORY)).toContain(`${id} ${element}`);
  });

  test("the lists of exceptions hold nothing that needs no exception", () => {
    const over = PURITIES.filter(({ share, theory }) => share > theory + 0.001);
    const under = PURITIES.filter(({ share, theory }) => share < 0.75 * theory);
    expect(over.map(({ id, element }) => `${id} ${element}`)).toEqual(Object.keys(ABOVE_THEORY));
    expect(under.map(({ id, element }) => `${id} ${element}`).sort()).toEqual(Object.keys(FAR_BELOW_THEORY).sort());
  });
});

describe.each(MATERIALS.map((material) => [material.id, material] as const))("%s", (_, material: Material) => {
  test("its elements make less than the whole, and its nitrogen forms exactly the nitrogen", () => {
    const whole = NUTRIENT_ELEMENTS.reduce((sum, element) => sum + (material.composition[element] ?? 0), 0);
    expect(whole).toBeGreaterThan(0);
    expect(whole).toBeLessThanOrEqual(1);
    const forms = NITROGEN_FORMS.reduce((sum, form) => sum + (material.composition[form] ?? 0), 0);
    // Sums of printed decimals: floating arithmetic only.
    if (forms > 0) expect(Math.abs(forms - material.composition.N!)).toBeLessThan(1e-12);
  });

  test("its sources are on file", () => {
    const { source, evidence } = material;
    for (const id of [source, ...Object.values(evidence)]) expect(Object.keys(sources)).toContain(id);
  });

  test("every number and hazard beside the analysis names its source", () => {
    const { evidence } = material;
    expect(evidence.density !== undefined).toBe(material.densityRange !== undefined);
    expect(evidence.solubility !== undefined).toBe(material.solubilityGramsPerLitre !== undefined);
    expect(evidence.nitrogenShare !== undefined).toBe(material.firstSeasonNitrogenShare !== undefined);
    expect(evidence.hazards).toBeDefined();
  });

  test("its ranges run upwards and are possible", () => {
    for (const [low, high] of [material.densityRange, material.firstSeasonNitrogenShare].filter(
      (r) => r !== undefined,
    )) {
      expect(low).toBeLessThanOrEqual(high);
      expect(low).toBeGreaterThanOrEqual(0);
    }
    expect(material.firstSeasonNitrogenShare?.[1] ?? 0).toBeLessThanOrEqual(1);
    expect(material.densityRange?.[1] ?? 0).toBeLessThan(2);
    expect(MATERIAL_GROUPS).toContain(material.group);
  });

  test("can be read as a product by its id and by each alias", () => {
    for (const name of [material.id, ...material.aliases]) {
      const read = readProduct(name);
      expect(read.ok && read.value.id).toBe(material.id);
    }
  });
});

test("ids and aliases are kebab-case and no two are alike", () => {
  const names = MATERIALS.flatMap(({ id, aliases }) => [id, ...aliases]);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name).toMatch(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
});

test("a material is found whatever the case, the spaces and the spelling of sulfate", () => {
  expect(materialById(" Epsom Salt ")?.id).toBe("magnesium-sulfate");
  expect(materialById("Potassium Sulphate")?.id).toBe("potassium-sulfate");
  expect(materialById("MKP")?.id).toBe("monopotassium-phosphate");
  expect(materialById("zinc-sulfate")).toBeUndefined();
});

describe("solubility of a hydrate per litre of added water, from the anhydrous figure that is published", () => {
  // grams of anhydrous salt per 100 g of water at 20 °C: crc-98-solubility, solubility-table.
  test.each([
    ["calcium-nitrate-tetrahydrate", "Ca(NO3)2", 131.0],
    ["magnesium-nitrate", "Mg(NO3)2", 69.1],
    ["iron-sulfate", "FeSO4", 26.3],
    ["copper-sulfate", "CuSO4", 20.1],
    ["zinc-sulfate-heptahydrate", "ZnSO4", 53.9],
    ["zinc-sulfate-monohydrate", "ZnSO4", 53.9],
    ["manganese-sulfate", "MnSO4", 62.9],
    ["borax", "Na2B4O7", 2.5],
    ["sodium-molybdate", "Na2MoO4", 65.3],
    ["magnesium-sulfate", "MgSO4", 33.7],
  ])("%s", (id, anhydrous, printed) => {
    const material = materialById(id)!;
    // The share of the hydrate that is salt, by an element that both hold.
    const element = (["Ca", "Mg", "Fe", "Cu", "Zn", "Mn", "B", "Mo"] as const).find((one) => anhydrous.includes(one))!;
    const salt = theoryOf(material.formula!)[element]! / theoryOf(anhydrous)[element]!;
    const solubility = (10 * printed) / (salt - (1 - salt) * (printed / 100));
    // Half of the last printed place of the anhydrous figure (up to 2 % for borax's 2.5), much enlarged where the
    // crystal's own water makes most of the solution (calcium nitrate: 3.4 times).
    const tolerance = (0.05 / printed) * 4 + 0.005;
    expect(Math.abs(material.solubilityGramsPerLitre! / solubility - 1)).toBeLessThan(tolerance);
  });
});

test("trap: the bag's figures stand where formula and trade differ", () => {
  const percent = (id: string, nutrient: "N" | "P" | "K" | "Ca" | "Fe" | "Zn") =>
    100 * materialById(id)!.composition[nutrient]!;
  expect(percent("calcium-nitrate", "Ca")).toBe(19);
  expect(percent("diammonium-phosphate", "N")).toBe(18);
  expect(percent("iron-eddha", "Fe")).toBe(6);
  // A course page prints 55 % Zn for the monohydrate; no hydrate can hold it.
  expect(percent("zinc-sulfate-monohydrate", "Zn")).toBe(36);
});

test("a name that several materials share is no guess: the hint names them", () => {
  const read = readProduct("zinc sulphate");
  expect(read.ok).toBe(false);
  if (read.ok) return;
  expect(read.problems[0]).toMatchObject({ code: "product-unknown" });
  expect(read.problems[0]!.hint).toBe("did you mean zinc-sulfate-monohydrate or zinc-sulfate-heptahydrate?");
});
