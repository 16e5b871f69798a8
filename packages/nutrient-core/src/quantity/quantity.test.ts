import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { UNITS } from "./definitions.ts";
import { readQuantity } from "./expression.ts";
import { readNumber } from "./number.ts";
import { isPlainQuantity, ofDimension, readPlainQuantity } from "./quantity.ts";

const value = (text: string): number => {
  const read = readQuantity(text);
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join(" "));
  return read.value.value;
};
const code = (text: string): string => {
  const read = readQuantity(text);
  return read.ok ? "read" : read.problems[0]!.code;
};
const near = (actual: number, expected: number, relative = 1e-12): void =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(Math.abs(expected) * relative);

describe("numbers as people write them", () => {
  test.each([
    ["9", 9],
    ["0.5", 0.5],
    [".5", 0.5],
    ["1,5", 1.5],
    ["1,200.5", 1200.5],
    ["3/4", 0.75],
    ["1 1/2", 1.5],
    ["1½", 1.5],
    ["2e3", 2000],
  ])("%s is %d", (text, expected) => {
    expect(readNumber(text)).toMatchObject({ ok: true, value: expected });
  });
  test.each(["1,500", "NaN", "Infinity", "", "1.2.3", "1/0", "1e999", "--1"])("%j is not read", (text) => {
    expect(readNumber(text).ok).toBe(false);
  });
});

describe("the quantities of the contract", () => {
  test.each([
    ["9 L", 9],
    ["2 * 10 L", 20],
    ["1.2 m * 2.4 m * 30 cm", 864],
    ["4 ft x 8 ft", 4 * 8 * 0.09290304],
    ["3/4 tsp", (0.75 * 3.785411784) / 768],
    ["1 imperial gallon", 4.54609],
    ["2 cu ft", 56.633693184],
    ["(1 gal + 2 qt) * 2", 3.785411784 * 3],
    ["1 1/2 cups", (1.5 * 3.785411784) / 16],
    ["1,2 m x 2,4 m", 2.88],
    ["4' x 8'", 2.97289728],
    ["10 L / 4", 2.5],
    ["(2 m)^2", 4],
    ["1 short ton", 907184.74],
    ["1 long ton", 1016046.9088],
    ["1 metric ton", 1e6],
    ["1 cwt", 45359.237],
    ["1 imperial cwt", 50802.34544],
    ["100 L / 4 / 5", 5],
    ["3/4 * 10 L", 7.5],
    ["10 L * 3/4", 7.5],
    ["5 ft 6 in x 4 ft", 5.5 * 4 * 0.09290304],
    ["2 lb 4 oz", 2.25 * 453.59237],
    ["1 gal 2 qt", 1.5 * 3.785411784],
    ["2 * 1 1/2 cups", (3 * 3.785411784) / 16],
    ["12 fl oz (US)", (12 * 3.785411784) / 128],
  ])("%s", (text, expected) => near(value(text), expected));
});

describe("against GNU Units' own definitions (test-data/units/gnu-units.json, printed to 15 digits)", () => {
  const table = JSON.parse(
    readFileSync(new URL("../../../../test-data/units/gnu-units.json", import.meta.url), "utf8"),
  ) as {
    values: readonly { text: string; value: number }[];
  };
  test.each(table.values)("$text", ({ text, value: printed }) => near(value(text), printed, 1e-13));
});

test("a bare shared name says that it was read as the US measure; a named one does not", () => {
  const bare = readQuantity("2 gal");
  expect(bare.ok && bare.cautions.map((c) => c.code)).toEqual(["measure-read-as-us"]);
  for (const named of ["2 US gal", "2 imperial gallons", "2 gal (UK)", "1 metric cup", "1 dry quart"]) {
    const read = readQuantity(named);
    expect(read.ok && read.cautions, named).toEqual([]);
  }
});

test.each([
  ["9", "unit-missing"],
  ["", "quantity-unreadable"],
  ["-3 L", "not-positive"],
  ["0 L", "not-positive"],
  ["3 L - 3 L", "not-positive"],
  ["3 - 4 L", "quantity-unreadable"],
  ["9 litrs", "unit-unknown"],
  ["NaN L", "unit-unknown"],
  ["9 L + 2 kg", "quantity-unreadable"],
  ["1,500 L", "number-ambiguous"],
  ["2 L / 0", "quantity-unreadable"],
  ['import("fs") L', "unit-unknown"],
  ["((2 L", "quantity-unreadable"],
  ["2 kg / 3 m2", "quantity-unreadable"],
  ["1e400 L", "number-unreadable"],
])("%j is a problem: %s", (text, expected) => expect(code(text)).toBe(expected));

test("a mistyped unit is answered with the nearest names", () => {
  const read = readPlainQuantity("9 litrs");
  expect(!read.ok && read.problems[0]!.hint).toContain("litre");
});

test("the plain reader and the expression reader agree on every unit", () => {
  for (const unit of UNITS) {
    for (const name of [unit.name, unit.plural, ...unit.names]) {
      const text = `3 ${name}`;
      expect(isPlainQuantity(text), text).toBe(true);
      const plain = readPlainQuantity(text);
      const sum = readQuantity(`1 ${name} + 2 ${name}`);
      if (!plain.ok || !sum.ok) throw new Error(text);
      near(sum.value.value, plain.value.value);
      expect(sum.value.dimension).toBe(plain.value.dimension);
    }
  }
});

test("property: scaling a quantity scales its value, and order does not matter", () => {
  const unit = fc.constantFrom(...UNITS.filter((u) => u.dimension === "length"));
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 999 }), unit, fc.integer({ min: 1, max: 999 }), unit, (a, u, b, v) => {
      near(value(`${a} ${u.name} x ${b} ${v.name}`), value(`${b} ${v.name} * ${a} ${u.name}`));
      near(value(`${2 * a} ${u.name}`), 2 * value(`${a} ${u.name}`));
    }),
  );
});

test("property: no text makes a reader throw or answer with anything but a positive number", () => {
  const piece = fc.constantFrom(
    "1",
    "2.5",
    "L",
    "kg",
    "x",
    "*",
    "/",
    "(",
    ")",
    "^",
    "-",
    "gal",
    "½",
    "e",
    ",",
    " ",
    "ppm",
    "'",
    "3/4",
  );
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string(),
        fc.array(piece).map((p) => p.join(" ")),
      ),
      (text) => {
        const read = readQuantity(text);
        if (read.ok) expect(read.value.value > 0 && Number.isFinite(read.value.value)).toBe(true);
        else for (const p of read.problems) expect(p.hint.length * p.expected.length).toBeGreaterThan(0);
      },
    ),
    { numRuns: 2000 },
  );
});

test("a number without a unit is asked for the units that would do", () => {
  for (const [dimension, hint] of [
    ["area", 'write the unit too, such as "3 m2" or "3 sq ft"'],
    ["volume", 'write the unit too, such as "3 L" or "3 US gal"'],
    ["mass", 'write the unit too, such as "3 g" or "3 oz"'],
    ["length", 'write the unit too, such as "3 cm" or "3 in"'],
    ["time", 'write the unit too, such as "3 days" or "3 weeks"'],
  ] as const) {
    const outcome = ofDimension(readPlainQuantity(" 3"), dimension, " 3");
    expect(outcome).toMatchObject({ ok: false, problems: [{ code: "unit-missing", hint }] });
  }
  // Each of them is one that is read.
  for (const text of ["3 sq ft", "3 US gal", "3 oz", "3 in", "3 weeks"]) expect(readPlainQuantity(text).ok).toBe(true);
});
