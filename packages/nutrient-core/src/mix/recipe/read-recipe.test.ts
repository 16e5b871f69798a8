import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readRecipe } from "./read-recipe.ts";
import { STARTING_POINTS } from "./starting-points.ts";

function sharesOf(text: string): Record<string, number> {
  const read = readRecipe(text);
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.code} ${p.message}`).join(" "));
  return Object.fromEntries(read.value.components.map(({ name, share }) => [name, share]));
}

const close = (actual: number | undefined, expected: number): void =>
  // Own identity: binary rounding only.
  expect(Math.abs((actual ?? Number.NaN) - expected)).toBeLessThanOrEqual(1e-12);

describe("recipes as they are written", () => {
  test.each([
    ["compost 1, perlite 1, coir 1", { compost: 1 / 3, perlite: 1 / 3, coir: 1 / 3 }],
    ["compost: 2 parts, perlite: 1 part", { compost: 2 / 3, perlite: 1 / 3 }],
    ["2 parts of compost, 1 perlite", { compost: 2 / 3, perlite: 1 / 3 }],
    ["compost 40%, perlite 30 %, coir 30%", { compost: 0.4, perlite: 0.3, coir: 0.3 }],
    ["compost 1,5, perlite 0.5", { compost: 0.75, perlite: 0.25 }],
    ["compost 1 1/2, coir ½", { compost: 0.75, coir: 0.25 }],
    ["(leaf mould 1, garden compost 2) 1, perlite 1", { "leaf mould": 1 / 6, "garden compost": 1 / 3, perlite: 1 / 2 }],
    ["((a 1, b 1) 1, c 1) 1, d 1", { a: 1 / 8, b: 1 / 8, c: 1 / 4, d: 1 / 2 }],
    ["compost 1, perlite 1, compost 2", { compost: 3 / 4, perlite: 1 / 4 }],
    ["own soil 2, light-thirds 3", { "own soil": 0.4, compost: 0.2, perlite: 0.2, coir: 0.2 }],
    ["Compost 1", { compost: 1 }],
    ["compost 1; perlite 1", { compost: 1 / 2, perlite: 1 / 2 }],
    ["compost 1;perlite 1; coir 2;", { compost: 1 / 4, perlite: 1 / 4, coir: 1 / 2 }],
    ["compost 1\nperlite 1\r\n\n(a 1;\nb 1) 2\n", { compost: 1 / 4, perlite: 1 / 4, a: 1 / 4, b: 1 / 4 }],
    ["#2 grit 1, 70/30 coir 1", { "#2 grit": 1 / 2, "70/30 coir": 1 / 2 }],
  ])("%s", (text, expected) => {
    const shares = sharesOf(text);
    expect(Object.keys(shares)).toEqual(Object.keys(expected));
    for (const [name, share] of Object.entries(expected)) close(shares[name], share);
  });

  test("what begins with own is not ordered", () => {
    const read = readRecipe("own soil 2, compost 1");
    expect(read.ok && read.value.components.map(({ isOwn }) => isOwn)).toEqual([true, false]);
  });

  test("additions by mass per volume", () => {
    const read = readRecipe(
      "compost 1, coir 1 + dolomitic lime 5 lb/cu yd + 5-10-10 1 1/2 kg/m3 + trace elements 100 g/m3",
    );
    // 1 lb/yd3 is 453.59237 g over 0.764554857984 m3, by definition.
    expect(read.ok && read.value.additions.map(({ name }) => name)).toEqual([
      "dolomitic lime",
      "5-10-10",
      "trace elements",
    ]);
    const rates = read.ok ? read.value.additions.map(({ gramsPerCubicMetre }) => gramsPerCubicMetre) : [];
    expect(Math.abs(rates[0]! - (5 * 453.59237) / 0.764554857984)).toBeLessThanOrEqual(3000 * 1e-12);
    expect(rates.slice(1)).toEqual([1500, 100]);
  });

  test.each([
    "compost 1 + lime 3 kg/m3 + gypsum 1 kg/m3",
    "compost 1 + lime 3 kg/m3, gypsum 1 kg/m3",
    "compost 1; + lime 3 kg/m3; gypsum 1 kg/m3;",
    "compost 1\n+ lime 3 kg/m3\n+ gypsum 1 kg/m3\n",
  ])("%j adds two things, each with its own rate", (text) => {
    const read = readRecipe(text);
    expect(read.ok && read.value.additions).toEqual([
      { name: "lime", gramsPerCubicMetre: 3000 },
      { name: "gypsum", gramsPerCubicMetre: 1000 },
    ]);
  });

  test("one thing mixed in twice is summed", () => {
    const read = readRecipe("peat 1, coir 1 + lime 3 kg/m3 + Lime 1 kg/m3");
    expect(read.ok && read.value.additions).toEqual([{ name: "lime", gramsPerCubicMetre: 4000 }]);
  });

  test("an addition inside a part is thinned with it", () => {
    const read = readRecipe("peat-vermiculite-fed 1, own soil 1");
    const lime = read.ok ? read.value.additions.find(({ name }) => name === "dolomitic lime") : undefined;
    expect(Math.abs(lime!.gramsPerCubicMetre - (10 * 453.59237) / 0.764554857984 / 2)).toBeLessThanOrEqual(
      3000 * 1e-12,
    );
  });
});

describe("starting points", () => {
  test.each(STARTING_POINTS.map(({ id, source }) => [id, source] as const))(
    "%s is read, and keeps its source",
    (id, source) => {
      expect(readRecipe(id)).toMatchObject({ ok: true, value: { source } });
    },
  );

  // Horticulture textbook, table 4-11 (seen): dolomite 5 lb per cubic yard is printed as 3 kg/m3, traces 2 oz as 74 g/m3;
  // half of the last printed place.
  test("rates per cubic yard come out as the source prints them per cubic metre", () => {
    const read = readRecipe("peat-vermiculite");
    const rate = (name: string): number =>
      (read.ok ? read.value.additions.find((one) => one.name === name)?.gramsPerCubicMetre : undefined) ?? Number.NaN;
    expect(Math.abs(rate("dolomitic lime") / 1000 - 3)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(rate("superphosphate") / 1000 - 0.6)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(rate("trace elements") - 74)).toBeLessThanOrEqual(0.5);
  });
});

describe("properties", () => {
  const part = fc.record({
    name: fc.constantFrom("compost", "perlite", "coir", "bark", "sand", "own soil"),
    parts: fc.integer({ min: 1, max: 99 }),
  });
  const list = fc.uniqueArray(part, { minLength: 1, maxLength: 6, selector: ({ name }) => name });
  const write = (parts: readonly { name: string; parts: number }[]): string =>
    parts.map(({ name, parts: n }) => `${name} ${n}`).join(", ");

  test("shares make a whole", () => {
    fc.assert(
      fc.property(list, (parts) => {
        close(
          Object.values(sharesOf(write(parts))).reduce((a, b) => a + b, 0),
          1,
        );
      }),
    );
  });
  test("parts are scale-free and the order does not matter", () => {
    fc.assert(
      fc.property(list, fc.integer({ min: 2, max: 50 }), (parts, factor) => {
        const shares = sharesOf(write(parts));
        const other = sharesOf(write([...parts].reverse().map(({ name, parts: n }) => ({ name, parts: n * factor }))));
        for (const name of Object.keys(shares)) close(other[name], shares[name]!);
      }),
    );
  });
});

describe("recipes that cannot be used", () => {
  test.each([
    ["", "recipe-unreadable"],
    ["compost", "recipe-unreadable"],
    ["compost 1 perlite 1,", "recipe-unreadable"],
    ["compost 1, perlite", "recipe-unreadable"],
    ["compost 0, perlite 1", "not-positive"],
    ["compost -1, perlite 1", "recipe-unreadable"],
    ["compost 40%, perlite 1", "recipe-unreadable"],
    ["compost 40%, perlite 40%", "recipe-not-whole"],
    ["(compost 1, perlite 1", "recipe-unreadable"],
    ["3 1", "recipe-unreadable"],
    ["compost 1 + lime", "addition-unreadable"],
    ["compost 1 + lime 3 kg", "addition-unreadable"],
    ["compost 1 + lime 3 g/m2", "addition-unreadable"],
    ["compost 1 + lime 0 kg/m3", "addition-unreadable"],
    ["compost 1,500, coir 1", "number-ambiguous"],
    ["compost 1 perlite 1", "recipe-unreadable"],
    ["compost 1.5 perlite 1", "recipe-unreadable"],
    ["compost 1 / perlite 1", "recipe-unreadable"],
    ["compost 1/perlite 1", "recipe-unreadable"],
    ["compost 1 & perlite 1", "recipe-unreadable"],
    ["compost 1: perlite 1", "recipe-unreadable"],
    ["compost 40% perlite 60%", "recipe-unreadable"],
    ["compost 1 part perlite 1 part", "recipe-unreadable"],
    ["compost 1 | perlite 1", "recipe-unreadable"],
    ["compost = 1", "recipe-unreadable"],
    ["compost 1e308, coir 1", "number-unreadable"],
    ["compost 1e7, coir 1", "part-out-of-range"],
    ["compost 0.0000001, coir 1", "part-out-of-range"],
    ["compost 1 +", "addition-unreadable"],
    ["compost 1 + lime 1e9 kg/m3", "addition-unreadable"],
  ])("%j: %s", (text, code) => {
    const read = readRecipe(text);
    expect(read.ok ? "read" : read.problems[0]!.code).toBe(code);
  });
});
