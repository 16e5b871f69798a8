import { expect, test } from "vitest";
import { type Ask, ask } from "./testing/ask.ts";

const codes = (request: Ask) => ask(request).cautions.map(({ code }) => code);

test.each([
  ["a batch", { products: "KNO3, blood-meal", ratio: "1-0-1", batch: "1 kg" }, "pair-fire", true],
  ["a bed", { products: "KNO3, blood-meal", target: "K 10 g/m2, N 10 g/m2", area: "3 m2" }, "pair-fire", true],
  ["a mix", { products: "KNO3, S", target: "K 50 g/m3, S 60 g/m3", volume: "1 m3" }, "pair-fire", true],
  ["a can", { products: "KNO3, S", target: "K 50 ppm, S 60 ppm", water: "10 L" }, "pair-fire", false],
  ["one product of two used", { products: "KNO3, S", target: "K 10 g/m2", area: "3 m2" }, "pair-fire", false],
] as const)("%s: what must not be mixed dry is told", (_, request, code, told) =>
  expect(codes(request).includes(code)).toBe(told),
);

test("a ratio of urea and superphosphate is told, by its grades", () => {
  expect(codes({ products: "46-0-0, 0-46-0", ratio: "1-1-0", batch: "1 kg" })).toContain("pair-turns-sticky");
});

test("a label that cannot be is doubted before it is weighed by, where it is used", () => {
  expect(codes({ products: "50-50-50, KNO3", ratio: "1-1-1", batch: "1 kg" })).toContain("label-over-100");
});

test("what does not dissolve, and lime, are told of a blend too", () => {
  expect(codes({ products: "bone-meal-steamed, KNO3", target: "P 30 ppm, K 100 ppm", water: "10 L" })).toContain(
    "does-not-dissolve",
  );
  expect(codes({ products: "agricultural-lime, KNO3", target: "Ca 300 g/m2, K 5 g/m2", area: "3 m2" })).toContain(
    "lime-heavy",
  );
});
