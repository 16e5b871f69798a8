import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { evaluate } from "../mix/testing/evaluate.ts";
import { ask, gap } from "./testing/ask.ts";

const squareOf = (request: Parameters<typeof ask>[0]) =>
  ask(request).working.filter(({ label }) => label.includes("by the square"));

describe("the square", () => {
  test("3 % and 11 % for 9 %: 2 parts to 6, that is 5 and 15 of 20 (algebra-fertilizer-mixtures)", () => {
    const lines = squareOf({ products: "3-0-97, 11-0-89", grade: "9-0-91", batch: "20 kg" });
    expect(lines.map(({ value }) => Math.round(value))).toEqual([5000, 15000]);
    for (const { expression, unit, value } of lines) expect(gap(evaluate(expression, unit), value)).toBeLessThan(1e-12);
  });

  test("property: finds the amounts of the blend, for any ratio between two products", () => {
    const grades = ["46-0-0", "20-10-20", "5-15-30", "0-0-60", "18-46-0"];
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...grades), { minLength: 2, maxLength: 2 }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        ([first, second], part) => {
          // A ratio that the two can make, because it is made of them.
          const ratio = [0, 1, 2].map((i) => {
            const [a, b] = [first!, second!].map((grade) => Number(grade.split("-")[i]));
            return (a! * part + b! * (1 - part)).toPrecision(15);
          });
          const request = { products: `${first}, ${second}`, ratio: ratio.join("-"), batch: "1 kg" };
          const { amounts } = ask(request).value;
          const lines = squareOf(request);
          expect(lines).toHaveLength(2);
          for (const [j, { value }] of lines.entries())
            expect(Math.abs(value - amounts[j]!.massGrams)).toBeLessThan(1e-6);
        },
      ),
    );
  });

  test.each([
    ["three products", { products: "46-0-0, 18-46-0, 0-0-60", ratio: "3-1-2", batch: "1 kg" }],
    ["filler", { products: "46-0-0, 0-0-60", grade: "10-0-10", batch: "1 kg" }],
    ["a target", { products: "46-0-0, 0-0-60", target: "N 5 g/m2, K2O 5 g/m2", area: "1 m2" }],
    ["one product used", { products: "20-10-20, 46-0-0", ratio: "1-1-1", batch: "1 kg" }],
  ])("does not apply to %s", (_, request) => expect(squareOf(request)).toEqual([]));
});

test("two products reach the line between their own ratios", () => {
  const { reachable } = ask({ products: "20-10-20, 46-0-0", ratio: "3-1-2", batch: "1 kg" }).value;
  for (const [i, part] of reachable!.from.entries()) expect(gap(part, [0.4, 0.2, 0.4][i]!)).toBeLessThan(1e-12);
  expect(reachable!.to).toEqual([1, 0, 0]);
  expect(ask({ products: "46-0-0, 18-46-0, 0-0-60", ratio: "3-1-2", batch: "1 kg" }).value.reachable).toBeUndefined();
});
