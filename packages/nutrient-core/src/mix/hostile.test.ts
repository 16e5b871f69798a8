import fc from "fast-check";
import { expect, test } from "vitest";
import { readQuantity } from "../quantity/expression.ts";
import { mix } from "./mix.ts";
import { readMix } from "./read-mix.ts";

/** Pieces that look right by themselves, put together in every wrong way. */
const piece = fc.constantFrom(
  "bed",
  "2 beds",
  "pots",
  "12 pots",
  "round",
  "L-bed",
  "trapezoid",
  "ridge",
  "trough",
  "square pots",
  "trade #5 pots",
  "#",
  "x",
  "by",
  ",",
  "+",
  "(",
  ")",
  "%",
  "1.2 m",
  "30 cm",
  "12 in",
  "-3 cm",
  "0 m",
  "1e400 m",
  "20 L",
  "2 cu ft",
  "5 kg",
  "NaN",
  "Infinity",
  "mound",
  "depths",
  "headspace",
  "drainage",
  "plants",
  "rows",
  "triangle",
  "crown",
  "compost",
  "perlite 1",
  "own soil 2",
  "coir 0",
  "lime 3 kg/m3",
  "1",
  "50 L 6.50",
  "makes 9 L",
  "per m3",
  "least 1 m3",
  "step 0.5 m3",
  "delivery 60",
  "from",
  "/",
  "1/0",
  "½",
  "🌶",
  "\u0000",
  "constructor",
  "__proto__",
);
const text = fc.oneof(
  fc.array(piece, { maxLength: 7 }).map((pieces) => pieces.join(" ")),
  fc.string({ maxLength: 40 }),
);
const texts = fc.array(text, { maxLength: 3 });
const all = {
  recipe: text,
  fill: texts,
  loss: text,
  settling: text,
  pack: texts,
  bulk: texts,
  stock: texts,
  aim: text,
  floorLimit: text,
  car: text,
};
/** A good request with one field spoiled. */
const oneSpoiled = fc.constantFrom(...(Object.keys(all) as (keyof typeof all)[])).chain((key) =>
  all[key].map((value: string | string[]) => ({
    recipe: "compost 1, perlite 1",
    fill: ["12 pots 20 L"],
    [key]: value,
  })),
);
const request = fc.oneof(oneSpoiled, fc.record(all, { requiredKeys: [] }));

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return value !== null && typeof value === "object" ? Object.values(value).flatMap(numbersIn) : [];
}

test("whatever is written is answered with finite numbers, or with problems that say what would work", () => {
  let answered = 0;
  fc.assert(
    fc.property(fc.oneof(request, fc.anything()), (asked) => {
      const input = readMix(asked, { quantity: readQuantity });
      const outcome = input.ok ? mix(input.value) : input;
      if (outcome.ok) {
        answered += 1;
        expect(numbersIn(outcome.value).filter((one) => !Number.isFinite(one) || one < 0)).toEqual([]);
      } else {
        for (const problem of outcome.problems) {
          expect([problem.code, problem.message, problem.expected, problem.hint].every((words) => words !== "")).toBe(
            true,
          );
        }
      }
    }),
    { numRuns: 3000 },
  );
  expect(answered).toBeGreaterThan(0);
});

test("ten megabytes of text are refused in no time", () => {
  const long = "compost 1, ".repeat(1_000_000);
  const read = readMix({ recipe: long, fill: ["12 pots 20 L"] }, { quantity: readQuantity });
  expect(read.ok ? [] : read.problems.map(({ code }) => code)).toEqual(["field-unusable"]);
});
