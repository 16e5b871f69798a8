import fc from "fast-check";
import { all, create } from "mathjs";
import { describe, expect, test } from "vitest";
import sources from "../../../../test-data/sources.json" with { type: "json" };
import { readPlainQuantity } from "../quantity/quantity.ts";
import { lime } from "./lime.ts";
import type { LimeResult } from "./lime-input.ts";
import { MEHLICH } from "./mehlich-table.ts";
import { type LimeRequest, readLime } from "./read-lime.ts";
import { SIKORA } from "./sikora-table.ts";
import { TEXTURES, type Texture } from "./texture.ts";

const math = create(all!, {});
// Identities of our own: only the order of operations may differ.
const near = (actual: number, expected: number, relative = 1e-9): void =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(Math.max(Math.abs(expected), 1e-9) * relative);

function outcomeOf(request: LimeRequest) {
  const input = readLime(request, { shelf: [], quantity: readPlainQuantity });
  const outcome = input.ok ? lime(input.value) : input;
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome;
}
const resultOf = (request: LimeRequest): LimeResult => outcomeOf(request).value;
const codesOf = (request: LimeRequest): string[] => outcomeOf(request).cautions.map(({ code }) => code);

const LIME = { material: "CaCO3", area: "1 m2", from: "5.5", to: "6.5", texture: "loam" };
const SULFUR = { material: "S", area: "1 m2", from: "6.5", to: "5.5", texture: "loam" };
const TEST = { material: "CaCO3", area: "1 m2", from: "5.5", to: "6.4", method: "sikora", bufferPh: "6.2" };

describe("by hand", () => {
  test("loam from 5.5 to 6.5: 8 lb on 100 sq ft is 390.6 g/m2", () => {
    // 8 x 453.59237 g over 9.290304 m2, worked out beside the code.
    near(resultOf(LIME).gramsPerSquareMetre, 390.594, 1e-6);
  });

  test("half way between two printed rows is half way between their figures", () => {
    near(resultOf({ ...LIME, from: "5.75" }).gramsPerSquareMetre, (390.594 * 6) / 8, 1e-6);
  });

  test("sand takes 350/750 of sandy loam, clay 1430/1210 of clay loam", () => {
    const of = (texture: Texture) => resultOf({ ...LIME, texture }).gramsPerSquareMetre;
    near(of("sand"), (of("sandy-loam") * 350) / 750);
    near(of("clay"), (of("clay-loam") * 1430) / 1210);
  });

  test("a bag of 80 % calcium carbonate equivalent and 75 % fineness takes 1 / 0.6 as much", () => {
    near(
      resultOf({ ...LIME, cce: "80%", fineness: "75%" }).gramsPerSquareMetre,
      resultOf(LIME).gramsPerSquareMetre / 0.6,
    );
  });

  test("sulfur that is 90 % sulfur takes a ninth more", () => {
    near(resultOf({ ...SULFUR, material: "elemental-sulfur" }).gramsPerSquareMetre, 110 / 0.9);
    near(resultOf(SULFUR).gramsPerSquareMetre, 110);
  });

  test("from 7.0 to 6.0 on loam: half a unit by Tennessee, half by Ontario", () => {
    // 20 lb/1000 sq ft is 97.65 g/m2.
    near(resultOf({ ...SULFUR, from: "7", to: "6" }).gramsPerSquareMetre, 97.6486 / 2 + 110 / 2, 1e-6);
  });

  test("clay by Tennessee all the way: four thirds of 20 lb/1000 sq ft", () => {
    near(resultOf({ ...SULFUR, texture: "clay" }).gramsPerSquareMetre, (97.6486 * 4) / 3, 1e-6);
  });

  test("between four cells of a table: the middle is their mean", () => {
    // Buffer 6.2 and 6.3, pH 6.0 and 6.4: 2.0, 2.8, 1.7, 2.5 US tons an acre of 224.17 g/m2.
    near(
      resultOf({ ...TEST, to: "6.2", bufferPh: "6.25" }).gramsPerSquareMetre,
      ((2 + 2.8 + 1.7 + 2.5) / 4) * 224.1702,
      1e-6,
    );
  });

  test("the formula's tons are standard lime: of pure calcium carbonate nine tenths", () => {
    const { gramsPerSquareMetre } = resultOf({
      material: "CaCO3",
      area: "1 m2",
      from: "5",
      to: "6",
      method: "mehlich-formula",
      acidity: "1.6",
    });
    near(gramsPerSquareMetre, 0.9 * 224.1702, 1e-6);
  });

  test("what dolomite brings is told", () => {
    const { amounts, deliveredGramsPerSquareMetre } = resultOf({ ...LIME, material: "CaMg(CO3)2" });
    near(deliveredGramsPerSquareMetre.Mg!, amounts[0]!.massGrams * (24.305 / 184.399));
  });
});

describe("the range", () => {
  test("of a soil test is its scatter: sqrt(1 - 0.82) either way for the Sikora buffer", () => {
    const [amount] = resultOf(TEST).amounts;
    near(amount!.rangeGrams[0] / amount!.massGrams, 1 - 0.424264, 1e-6);
    near(amount!.rangeGrams[1] / amount!.massGrams, 1 + 0.424264, 1e-6);
  });

  test.each([
    ["mehlich-table", "acidity", 0.36055],
    ["mehlich-formula", "acidity", 0.52915],
  ])("of %s too", (method, figure, scatter) => {
    const [amount] = resultOf({ ...LIME, texture: undefined, method, [figure]: "3.9" }).amounts;
    near(amount!.rangeGrams[1] / amount!.massGrams, 1 + scatter, 1e-4);
  });

  test.each(TEXTURES)("on %s holds every published sulfur rate that speaks of it", (texture) => {
    // g/m2 and pH unit: eXtension 1 and 2 lb/100 sq ft, Ontario, Michigan's differences; by hand.
    const rates: Record<Texture, number[]> = {
      sand: [48.8, 35, 34.7],
      "sandy-loam": [48.8, 75],
      loam: [97.6, 110, 110.9, 53.8],
      "clay-loam": [97.6],
      clay: [97.7, 160.2, 130],
    };
    const [low, high] = resultOf({ ...SULFUR, texture }).rangeGramsPerSquareMetre;
    for (const rate of rates[texture]) {
      expect(rate).toBeGreaterThanOrEqual(low);
      expect(rate).toBeLessThanOrEqual(high);
    }
  });

  // Printed: 135 g/m2 on sand and 270 on clay, from pH 7.0-7.5 to 6.0-6.5 (rhs-acidifying-soil).
  test.each([
    ["sand", "7", "6", 135],
    ["sand", "7.5", "6.5", 135],
    ["clay", "7", "6", 270],
    ["clay", "7.5", "6.5", 270],
  ] as const)("on %s reaches from pH %s to %s as high as the highest source", (texture, from, to, grams) => {
    near(resultOf({ ...SULFUR, texture, from, to }).rangeGramsPerSquareMetre[1], grams);
  });

  test("of sulfur leaves that source out below its lowest goal, pH 6.0, and where a soil starts no higher than its highest", () => {
    // Tennessee's two thirds of 20 lb/1000 sq ft is the highest on sand.
    const high = (from: string, to: string) =>
      resultOf({ ...SULFUR, texture: "sand", from, to }).rangeGramsPerSquareMetre[1];
    near(high("6", "5"), 65.0989, 1e-5);
    near(high("6.5", "5.5"), 65.0989, 1e-5);
    near(high("7", "5.5"), 135 + 65.0989 / 2, 1e-5);
  });

  test("of lime reaches from the sulfur rates to the next heavier texture", () => {
    const [low, high] = resultOf(LIME).rangeGramsPerSquareMetre;
    // 11 lb/1000 sq ft of sulfur times 100.086 / 32.06.
    near(low, 53.7067 * 3.121834, 1e-5);
    near(high, resultOf({ ...LIME, texture: "clay-loam" }).gramsPerSquareMetre);
    // Clay has nothing heavier: 270 g/m2 of sulfur a unit.
    near(resultOf({ ...LIME, texture: "clay" }).rangeGramsPerSquareMetre[1], 270 * 3.121834, 1e-5);
  });
});

describe("goes", () => {
  const monthsOf = (request: LimeRequest) => resultOf(request).applications.map(({ month }) => month);

  test("lime half a year apart, sulfur a pH unit a year", () => {
    expect(monthsOf(LIME)).toEqual([0]);
    expect(monthsOf({ ...LIME, from: "5", texture: "clay-loam" })).toEqual([0, 6]);
    expect(monthsOf({ ...TEST, bufferPh: "5.2" })).toEqual([0, 6, 12]);
    expect(monthsOf({ ...SULFUR, from: "6.3", to: "5.3" })).toEqual([0]);
    expect(monthsOf({ ...SULFUR, from: "7", to: "5.5" })).toEqual([0, 12]);
  });

  test("they are judged as the lime that they count for: twice the depth is twice as much", () => {
    expect(monthsOf({ ...LIME, depth: "30 cm" })).toEqual([0, 6]);
    expect(monthsOf({ ...LIME, cce: "40%" })).toEqual([0]);
  });
});

describe("cautions", () => {
  test("nothing to do says so, and nothing else", () => {
    expect(codesOf({ ...LIME, from: "7", to: "7" })).toEqual(["goal-reached"]);
    expect(codesOf({ ...TEST, to: "6", bufferPh: "6.9" })).toEqual(["no-lime-needed"]);
    expect(resultOf({ ...SULFUR, to: "6.5" })).toMatchObject({ gramsPerSquareMetre: 0, applications: [] });
  });

  test("burnt and slaked lime are dangers, ground limestone is not", () => {
    const dangers = (material: string) =>
      outcomeOf({ ...LIME, material }).cautions.flatMap(({ code, severity }) => (severity === "danger" ? [code] : []));
    expect(dangers("hydrated-lime")).toEqual(["lime-caustic"]);
    expect(dangers("CaO")).toEqual(["lime-caustic"]);
    expect(dangers("agricultural-lime")).toEqual([]);
    expect(codesOf({ ...LIME, material: "hydrated-lime" })).toContain("lime-quick");
    expect(codesOf({ ...LIME, material: "hydrated-lime" })).not.toContain("lime-slow");
  });

  test("each where it belongs", () => {
    expect(codesOf(LIME)).toEqual(["lime-apart", "hazard-dust", "lime-by-texture", "lime-slow", "soil-not-mix"]);
    expect(codesOf({ ...LIME, material: "dolomitic-lime", texture: "sand" })).toEqual([
      "lime-apart",
      "hazard-dust",
      "lime-by-texture",
      "lime-brings-magnesium",
      "lime-slow",
      "sand-holds-little",
      "soil-not-mix",
    ]);
    expect(codesOf({ ...TEST, to: "7.2" })).toContain("overliming");
    expect(codesOf({ ...TEST, to: "6.8" })).not.toContain("overliming");
    expect(codesOf({ ...TEST, bufferPh: "5.6" })).toEqual(
      expect.arrayContaining(["lime-in-goes", "soil-test-scatter"]),
    );
    // 23.2 tons an acre: a third of it is still more than goes on at once.
    expect(codesOf({ ...TEST, to: "7.2", bufferPh: "4.8" })).toContain("lime-heavy");
    // 2.8 tons, 628 g/m2: two goes are enough.
    expect(codesOf(TEST)).not.toContain("lime-heavy");
  });

  test("sulfur: free lime and standing plants always, goes and sourness where they come to it", () => {
    expect(codesOf({ ...SULFUR, material: "sulfur" })).toEqual([
      "hazard-flammable-dust",
      "free-lime",
      "sulfur-near-plants",
      "hazard-dust",
      "sulfur-sources-differ",
      "sulfur-slow",
      "soil-not-mix",
    ]);
    expect(codesOf({ ...SULFUR, to: "5" })).toEqual(expect.arrayContaining(["too-sour", "sulfur-in-goes"]));
  });

  test("their figures are those of the case and of their sources", () => {
    const factsOf = (request: LimeRequest, code: string) =>
      outcomeOf(request).cautions.find((caution) => caution.code === code)!.facts;
    // 0.7 lb on 100 sq ft of a planted bed in a year (extension-blueberry-ph).
    near(Number(factsOf(SULFUR, "sulfur-near-plants")["gramsPerSquareMetreAYear"]), 34.177, 1e-4);
    const shallow = factsOf(SULFUR, "sulfur-sources-differ");
    const deep = factsOf({ ...SULFUR, depth: "30 cm" }, "sulfur-sources-differ");
    near(Number(deep["low"]), 2 * Number(shallow["low"]));
    near(Number(deep["high"]), 2 * Number(shallow["high"]));
    near(Number(factsOf(TEST, "soil-test-scatter")["percentExplained"]), 82);
    // 23.2 US tons an acre in three goes.
    const heavy = factsOf({ ...TEST, to: "7.2", bufferPh: "4.8" }, "lime-heavy");
    near(Number(heavy["gramsPerSquareMetreInOneGo"]), (23.2 * 224.1702) / 3, 1e-6);
    const dolomite = { ...LIME, material: "dolomitic-lime" };
    near(
      Number(factsOf(dolomite, "lime-brings-magnesium")["magnesiumGramsPerSquareMetre"]),
      0.11 * resultOf(dolomite).gramsPerSquareMetre,
    );
  });

  test("their sources are on file, and so are those of the working", () => {
    const requests = [
      ...TEXTURES.flatMap((texture) => [
        { ...LIME, texture },
        { ...SULFUR, texture, from: "7.5" },
      ]),
      TEST,
      { ...LIME, texture: undefined, method: "mehlich-table", acidity: "3.9" },
      {
        ...LIME,
        texture: undefined,
        method: "mehlich-formula",
        bufferPh: "6.2",
        fineness: "through 100 mesh 60, 20-100 mesh 40",
      },
      { ...LIME, material: "hydrated-lime" },
      { ...LIME, material: "CaO", from: "6.5" },
    ];
    for (const request of requests) {
      const { cautions, working, value } = outcomeOf(request);
      const named = [...cautions, ...working, value].map(({ source }) => source);
      for (const id of named.filter((source) => source !== null)) expect(Object.keys(sources)).toContain(id);
    }
  });
});

describe("properties", () => {
  const texture = fc.constantFrom(...TEXTURES);
  const tenths = (low: number, high: number) => fc.integer({ min: low * 100, max: high * 100 }).map((n) => n / 100);
  const limed = fc
    .tuple(tenths(5, 6.5), tenths(5, 6.5), tenths(5, 6.5))
    .map((three) => three.toSorted((a, b) => a - b));
  const soured = fc
    .tuple(tenths(4.5, 7.5), tenths(4.5, 7.5), tenths(4.5, 7.5))
    .map((three) => three.toSorted((a, b) => b - a));
  const gramsOf = (material: string, from: number, to: number, kind: Texture): number =>
    resultOf({ material, area: "1 m2", from: String(from), to: String(to), texture: kind }).gramsPerSquareMetre;

  test.each([
    ["CaCO3", limed],
    ["S", soured],
  ] as const)("conservation: %s in two steps is as much as in one", (material, three) => {
    fc.assert(
      fc.property(texture, three, (kind, [a, b, c]) => {
        const parts = gramsOf(material, a!, b!, kind) + gramsOf(material, b!, c!, kind);
        expect(Math.abs(parts - gramsOf(material, a!, c!, kind))).toBeLessThan(1e-9);
      }),
    );
  });

  test.each([
    ["CaCO3", limed],
    ["S", soured],
  ] as const)("order: a heavier texture never takes less %s, below pH 6.5 or above", (material, three) => {
    fc.assert(
      fc.property(three, ([a, , c]) => {
        const grams = TEXTURES.map((kind) => gramsOf(material, a!, c!, kind));
        for (const [index, value] of grams.entries())
          if (index > 0) expect(value).toBeGreaterThanOrEqual(grams[index - 1]! - 1e-9);
      }),
    );
  });

  test("order: a lower buffer pH, a greater acidity and a higher goal never take less", () => {
    const grid = { sikora: SIKORA, "mehlich-table": MEHLICH } as const;
    const place = fc.record({
      method: fc.constantFrom("sikora", "mehlich-table"),
      row: tenths(0, 1),
      column: tenths(0, 1),
    });
    fc.assert(
      fc.property(place, tenths(0, 1), ({ method, row, column }, further) => {
        const { rows, columns } = grid[method];
        const on = (scale: readonly number[], share: number) => scale[0]! + share * (scale.at(-1)! - scale[0]!);
        const at = (share: number, goal: number): number => {
          const figure = String(on(rows, method === "sikora" ? 1 - share : share));
          const asked = { material: "CaCO3", area: "1 m2", from: "5", to: String(on(columns, goal)), method };
          return resultOf(method === "sikora" ? { ...asked, bufferPh: figure } : { ...asked, acidity: figure })
            .gramsPerSquareMetre;
        };
        const here = at(row, column);
        expect(at(row + (1 - row) * further, column)).toBeGreaterThanOrEqual(here - 1e-9);
        expect(at(row, column + (1 - column) * further)).toBeGreaterThanOrEqual(here - 1e-9);
      }),
    );
  });

  const anything = fc
    .record({
      material: fc.constantFrom("CaCO3", "dolomitic-lime", "hydrated-lime", "MgO", "agricultural-lime"),
      squareMetres: fc.double({ min: 0.1, max: 1000, noNaN: true }),
      centimetres: fc.integer({ min: 5, max: 30 }),
      cce: fc.integer({ min: 20, max: 119 }),
      soil: fc.oneof(
        fc.record({ texture }),
        fc.record({ method: fc.constant("sikora"), bufferPh: tenths(4.8, 6.9).map(String) }),
        fc.record({ method: fc.constant("mehlich-table"), acidity: tenths(2, 25.7).map(String) }),
        fc.record({ method: fc.constant("mehlich-formula"), bufferPh: tenths(3, 6.6).map(String) }),
      ),
      from: tenths(5, 6),
      to: tenths(6.01, 6.5),
    })
    .map(({ squareMetres, centimetres, cce, soil, from, to, material }) => ({
      squareMetres,
      centimetres,
      cce,
      request: { material, from: String(from), to: String(to), ...soil } as LimeRequest,
    }));

  test("scaling: with the area, with the depth, and against the calcium carbonate equivalent", () => {
    fc.assert(
      fc.property(anything, ({ squareMetres, centimetres, cce, request }) => {
        const asked = { ...request, area: "1 m2", depth: "10 cm", cce: "100%" };
        const one = resultOf(asked).amounts[0]!;
        const much = resultOf({ ...asked, area: `${squareMetres} m2`, depth: `${centimetres} cm`, cce: `${cce}%` });
        const times = (squareMetres * centimetres * 10) / cce;
        near(much.amounts[0]!.massGrams, one.massGrams * times);
        near(much.amounts[0]!.rangeGrams[0], one.rangeGrams[0] * times);
        near(much.amounts[0]!.rangeGrams[1], one.rangeGrams[1] * times);
        near(much.gramsPerSquareMetre * squareMetres, much.amounts[0]!.massGrams);
        near(much.amounts[0]!.gramsPerSquareMetre, much.gramsPerSquareMetre);
        for (const end of [0, 1] as const)
          near(much.rangeGramsPerSquareMetre[end] * squareMetres, much.amounts[0]!.rangeGrams[end]);
      }),
    );
  });

  test("bounds: the amount lies in its range, and the goes make the whole", () => {
    fc.assert(
      fc.property(anything, ({ squareMetres, request }) => {
        const { amounts, applications } = resultOf({ ...request, area: `${squareMetres} m2` });
        const [{ massGrams, rangeGrams }] = amounts as [(typeof amounts)[number]];
        expect(rangeGrams[0]).toBeLessThanOrEqual(massGrams);
        expect(rangeGrams[1]).toBeGreaterThanOrEqual(massGrams);
        near(
          applications.reduce((sum, go) => sum + go.massGrams, 0),
          massGrams,
        );
        for (const go of applications) near(go.gramsPerSquareMetre * squareMetres, go.massGrams);
      }),
    );
  });

  test("second route: mathjs finds every line of the working, and the amount and its range are among them", () => {
    const sulfur = fc
      .tuple(soured, texture, fc.constantFrom("S", "sulfur"))
      .filter(([[a, , c]]) => a !== c)
      .map(([[a, , c], kind, material]) => ({
        squareMetres: 2,
        centimetres: 15,
        request: { material, from: String(a), to: String(c), texture: kind } as LimeRequest,
      }));
    fc.assert(
      fc.property(fc.oneof(anything, sulfur), ({ squareMetres, centimetres, request }) => {
        const { value, working } = outcomeOf({ ...request, area: `${squareMetres} m2`, depth: `${centimetres} cm` });
        for (const { expression, value: told, unit } of working) {
          const found: unknown = math.evaluate(expression);
          near(unit === "" ? Number(found) : (found as { toNumber(unit: string): number }).toNumber(unit), told);
        }
        expect(working.map((line) => line.value)).toContain(value.amounts[0]!.massGrams);
      }),
    );
  });
});
