import fc from "fast-check";
import { describe, expect, test } from "vitest";
import sources from "../../../../test-data/sources.json" with { type: "json" };
import { MATERIALS, materialById } from "./materials.ts";
import { pairCautions } from "./pair-cautions.ts";
import type { Product } from "./product.ts";
import { readProduct } from "./read-product.ts";

const product = (text: string): Product => {
  const read = readProduct(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.value;
};
const codes = (...names: string[]) => pairCautions(names.map(product)).map(({ code }) => code);

// Common practice and the dry half of the compatibility chart (compatibility-chart-2010); each beside a pair that is just not one.
describe.each([
  ["pair-fire", "danger", ["potassium-nitrate", "elemental-sulfur"], ["potassium-sulfate", "elemental-sulfur"]],
  ["pair-fire", "danger", ["NaNO3", "S"], ["NaNO3", "K2SO4"]],
  ["pair-fire", "danger", ["ammonium-nitrate", "blood-meal"], ["calcium-nitrate", "blood-meal"]],
  ["pair-fire", "danger", ["KNO3", "hoof-and-horn-meal"], ["KNO3", "fish-emulsion"]],
  ["pair-fire", "danger", ["KNO3", "poultry-manure-pellets"], ["KNO3", "cattle-manure-composted"]],
  ["pair-fire", "danger", ["nitric-acid-60", "bone-meal-steamed"], ["nitric-acid-60", "rock-phosphate"]],
  ["pair-ammonia", "caution", ["ammonium-sulfate", "hydrated-lime"], ["ammonium-sulfate", "agricultural-lime"]],
  ["pair-ammonia", "caution", ["urea", "wood-ash"], ["potassium-nitrate", "wood-ash"]],
  ["pair-ammonia", "caution", ["hen-manure-fresh", "hydrated-lime"], ["worm-castings", "hydrated-lime"]],
  ["pair-turns-liquid", "caution", ["urea", "ammonium-nitrate"], ["urea", "ammonium-sulfate"]],
  ["pair-turns-liquid", "caution", ["46-0-0", "NH4NO3"], ["34-0-0", "NH4NO3"]],
  ["pair-turns-sticky", "caution", ["urea", "triple-superphosphate"], ["urea", "rock-phosphate"]],
  ["pair-turns-sticky", "caution", ["46-0-0", "0-20-0"], ["46-0-0", "0-10-10"]],
  ["pair-turns-sticky", "caution", ["urea", "0-46-0"], ["urea", "0-52-34"]],
  ["pair-sets-hard", "note", ["calcium-nitrate", "single-superphosphate"], ["calcium-nitrate", "gypsum"]],
  ["pair-sets-hard", "note", ["calcium-nitrate", "potassium-sulfate"], ["calcium-nitrate", "potassium-nitrate"]],
  ["pair-sets-hard", "note", ["calcium-nitrate", "diammonium-phosphate"], ["calcium-nitrate", "bone-meal-steamed"]],
  ["pair-sets-hard", "note", ["calcium-nitrate", "urea"], ["calcium-nitrate", "urea-ammonium-nitrate-32"]],
] as const)("%s (%s)", (code, severity, raised, justNot) => {
  test(`${raised.join(" with ")}, not ${justNot.join(" with ")}`, () => {
    const [caution, ...more] = pairCautions(raised.map(product)).filter((one) => one.code === code);
    expect(more).toEqual([]);
    expect(caution).toMatchObject({ severity });
    for (const name of raised) expect(caution!.message.toLowerCase()).toContain(product(name).name.toLowerCase());
    expect(caution!.message).toMatch(/^[A-Z0-9].*\.$/);
    expect(Object.keys(sources)).toContain(caution!.source);
    expect(codes(...justNot)).not.toContain(code);
  });
});

test("the sentences name the pair and say what to do", () => {
  // Read aloud before they were written down here.
  expect(pairCautions(["KNO3", "blood-meal", "elemental-sulfur"].map(product))[0]!.message).toBe(
    "KNO3 with blood meal and elemental sulfur: never mix or store them together. A nitrate among sulfur or dry meal can catch fire and burn fiercely. Spread each by itself, dig one in before the other goes on, use a scoop of its own for each, and follow the labels.",
  );
  expect(pairCautions(["urea", "hydrated-lime"].map(product))[0]!.message).toBe(
    "Urea with hydrated lime: the strong alkali turns ammonium and urea into ammonia, a gas that stings eyes and lungs and is lost to the plants. Never mix them: dig the alkali in first, and give the nitrogen two weeks or more later.",
  );
});

test("one product alone, and a blend of the usual salts, raise nothing", () => {
  for (const material of MATERIALS) expect(pairCautions([material, material])).toEqual([]);
  // A compound of urea and ammonium nitrate is on both sides of a rule, and was made so.
  expect(codes("30-0-0 + NO3-N 10 + NH4-N 10 + urea-N 10")).toEqual([]);
  expect(codes("ammonium-sulfate", "triple-superphosphate", "potassium-chloride")).toEqual([]);
  expect(codes("5-10-10", "20-20-20", "0-0-60")).toEqual([]);
});

test("property: order and repeats do not matter, and another product takes no caution away", () => {
  const some = fc.array(fc.constantFrom(...MATERIALS), { maxLength: 5 });
  fc.assert(
    fc.property(some, fc.constantFrom(...MATERIALS), (products, further) => {
      const cautions = pairCautions(products);
      expect(pairCautions([...products, ...products].reverse())).toEqual(cautions);
      const more = pairCautions([...products, further]).map(({ code }) => code);
      for (const { code } of cautions) expect(more).toContain(code);
    }),
  );
});

test("every oxidiser of the list is kept from sulfur", () => {
  const oxidisers = MATERIALS.filter(({ hazards }) => hazards.includes("oxidiser"));
  expect(oxidisers.length).toBeGreaterThan(3);
  for (const one of oxidisers)
    expect(pairCautions([one, materialById("elemental-sulfur")!])).toMatchObject([{ code: "pair-fire" }]);
});
