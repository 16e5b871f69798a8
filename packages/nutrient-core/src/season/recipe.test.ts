import { expect, test } from "vitest";
import { materialById } from "../product/materials.ts";
import type { Wanted } from "../supply/target.ts";
import { recipeFor } from "./recipe.ts";
import type { SeasonInput } from "./season.ts";

/** Of a season's input, what a can is made from. */
const input = { canLitres: 10, water: {}, labelRule: "us" } as unknown as SeasonInput;
const wanted: readonly Wanted[] = [{ nutrient: "P", rate: 30, asked: { form: "P", rate: 30 } }];

test.each([
  ["bone-meal-steamed", true],
  ["monopotassium-phosphate", false],
] as const)("a can of %s: what does not dissolve is told", (id, told) => {
  const made = recipeFor({ products: [materialById(id)!], wanted, fromMix: {} }, input);
  if (!made.ok) throw new Error(made.problems[0]!.message);
  expect(made.value.cautions.some(({ code }) => code === "does-not-dissolve")).toBe(told);
});
