import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mix } from "../../mix/mix.ts";
import { readMix } from "../../mix/read-mix.ts";
import { gapOf } from "../../mix/testing/evaluate.ts";
import { readQuantity } from "../../quantity/expression.ts";
import { planSeason } from "../plan.ts";
import { PROGRAMMES } from "../programmes/programmes.ts";
import type { SeasonInput } from "../season.ts";
import { answered, BLOOM, LEAFY, SALTPETRE } from "../testing/demo.ts";
import { readCondition, readExpectation } from "./read-condition.ts";
import { readCeilings, readSeasonRates } from "./read-rates.ts";
import { readSeason } from "./read-season.ts";

const SHELF = [LEAFY, BLOOM, SALTPETRE];
const WHOLE = {
  kind: "season",
  name: "courtyard",
  crop: "sweet pepper",
  setOut: "2027-05-15",
  end: "2027-10-10",
  places: [
    { name: "pots", fill: "18 pots 32 cm x 26 cm x 30 cm" },
    { name: "beds", fill: "2 beds 1.2 m x 2.4 m x 30 cm", plants: 24 },
  ],
  programme: "two-phase",
  can: "10 L",
};

const CONTEXT = { shelf: SHELF, quantity: readQuantity };

const read = (more: object = {}, less: readonly string[] = []) => {
  const document: Record<string, unknown> = { ...WHOLE, ...more };
  for (const key of less) delete document[key];
  return readSeason(document, CONTEXT);
};
const input = (more: object = {}): SeasonInput => answered(read(more));
const told = (more: object = {}, less: readonly string[] = []): string[] => {
  const season = read(more, less);
  return season.ok ? [] : season.problems.map(({ code, path }) => `${code} at ${path}`);
};
/** A few multiplications. */
const near = (value: number, expected: number): void =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));

describe("a season document", () => {
  test("places that share dates and programme are one planting, called after the first", () => {
    const { plantings, products, leachingShare, reminders } = input();
    expect(plantings.map(({ name, plants }) => [name, plants])).toEqual([["pots", 42]]);
    near(plantings[0]!.areaSquareMetres!, 18 * Math.PI * 0.16 ** 2 + 2 * 1.2 * 2.4);
    expect(products.map(({ id }) => id)).toEqual(SHELF.map(({ id }) => id));
    expect([leachingShare, reminders]).toEqual([0.15, true]);
  });

  test("a place with its own date is a planting of its own", () => {
    const places = [WHOLE.places[0], { ...WHOLE.places[1], setOut: "2027-06-01" }];
    expect(input({ places }).plantings.map(({ name, setOut }) => [name, setOut])).toEqual([
      ["pots", "2027-05-15"],
      ["beds", "2027-06-01"],
    ]);
  });

  test("a mix is given by volume of mix: each planting has it by its litres a plant", () => {
    const { plantings } = input({ mix: { brings: "N 100 g/m3, P2O5 40 g/m3", over: "120 days" } });
    expect(plantings.map(({ name }) => name)).toEqual(["pots", "beds"]);
    // 2 beds of 864 L for 24 plants: 72 L a plant.
    near(plantings[1]!.fromMix!.gramsPerPlant.N!, 7.2);
    expect(plantings[1]!.fromMix!.overDays).toBe(120);
    const perPlant = input({ mix: { brings: "N 1 g/plant", over: "8 weeks" } }).plantings;
    expect(perPlant.map(({ fromMix }) => fromMix)).toEqual([{ gramsPerPlant: { N: 1 }, overDays: 56 }]);
  });

  describe("a mix by its recipe", () => {
    const withMix = (recipe: string, components: readonly unknown[] = []) =>
      readSeason({ ...WHOLE, mix: { recipe, over: "120 days" } }, { shelf: SHELF, quantity: readQuantity, components });
    const answer = (recipe: string, components?: readonly unknown[]) => {
      const season = withMix(recipe, components);
      if (!season.ok) throw new Error(season.problems[0]!.message);
      return season;
    };
    const nitrogen = (...mix: Parameters<typeof answer>): number =>
      answer(...mix).value.plantings[1]!.fromMix!.gramsPerPlant.N ?? 0;

    test("is reckoned as the mix room reckons it, at the lower end", () => {
      const read = readMix(
        { recipe: "compost 1, perlite 1, coir 1", fill: ["12 pots 20 L"] },
        { quantity: readQuantity },
      );
      const { firstSeason } = answered(mix(answered(read)));
      const [low] = firstSeason!.firstSeasonNitrogenGramsPerCubicMetre;
      // 72 L a plant.
      near(nitrogen("compost 1, perlite 1, coir 1"), low * 0.072);
      // By hand: a third of 0.393 kg/L in 1000 L / (0.9 * 0.85), 1.53 % N of it, 5 % of that in the first season.
      near(nitrogen("compost 1, perlite 1, coir 1"), ((1000 / 0.9 / 0.85 / 3) * 393 * 0.0153 * 0.05 * 72) / 1000);
    });

    test("says what it counts and what not, and shows its working, which an outside evaluator finds too", () => {
      const { cautions, working } = answer("compost 1, perlite 1 + 5-10-10 3 kg/m3, lime 2 kg/m3");
      expect(cautions.map(({ code, facts }) => [code, facts["additions"]])).toEqual([
        ["mix-additions-not-counted", ["5-10-10"]],
        ["mix-reckoned", undefined],
      ]);
      const labels = working.map(({ label }) => label);
      expect(labels).toContain("a cubic metre of the mix: dry compost in the mix");
      expect(labels).toContain("beds: N from the mix for each plant");
      for (const line of working) expect(gapOf(line), line.label).toBeLessThanOrEqual(1e-9);
    });

    test("a density that was measured counts; without compost nothing is counted, and said", () => {
      const measured = [{ name: "compost", density: "0.3 kg/L" }];
      near(nitrogen("compost 1", measured), (nitrogen("compost 1") * 0.3) / 0.393);
      const { cautions, value } = answer("peat 1, perlite 1");
      expect(cautions.map(({ code }) => code)).toEqual(["mix-without-compost"]);
      // What gives nothing keeps no places apart either.
      expect(value.plantings.map(({ fromMix }) => fromMix!.gramsPerPlant)).toEqual([{}]);
      expect(planSeason(value).ok).toBe(true);
    });

    test("what is wrong with it stands at its place", () => {
      const places = (season: ReturnType<typeof withMix>) => (season.ok ? [] : season.problems.map(({ path }) => path));
      expect(places(withMix("compost"))).toEqual(["mix.recipe"]);
      expect(places(withMix("compost 1", [{ name: "compost", density: "heavy" }]))[0]).toMatch(
        /^shelf components\[0\]/,
      );
      expect(told({ mix: { over: "9 days" } })).toEqual(["field-missing at mix"]);
      expect(told({ mix: { recipe: "compost 1", brings: "N 1 g/m3", over: "9 days" } })).toEqual([
        "options-conflict at mix",
      ]);
    });
  });

  test("a stage may call a product by any of its names", () => {
    const stages = [
      { name: "one", begins: "set out", target: "N 100 ppm", products: ["20-10-20"] },
      { name: "two", begins: "set out + 30 days", target: "P2O5 100 ppm", products: ["superphosphate", "leafy-feed"] },
    ];
    const read = answered(readSeason({ ...WHOLE, programme: undefined, stages, litresPerPlant: "1 L" }, CONTEXT));
    expect(read.plantings[0]!.programme.stages.map(({ products }) => products)).toEqual([
      ["20-10-20"],
      ["single-superphosphate", "leafy-feed"],
    ]);
    expect(planSeason(read).ok).toBe(true);
  });

  test("water, can, scale, spoons, ceilings, leaching and products of stages", () => {
    const read = input({
      water: "N 5 ppm, Ca 60 mg/L",
      can: "2 US gal",
      scale: "0.5 g",
      spoons: "metric",
      ceilings: ["N 20 g/m2", "P2O5 3 g/plant", "K 500 g in all"],
      leaching: "20%",
      stageProducts: { leaf: ["leafy-feed"], fruit: ["bloom-feed", "10-52-10"] },
      stockCounted: "2027-05-01",
    });
    expect(read.water).toEqual({ N: 5, Ca: 60 });
    near(read.canLitres, 2 * 3.785411784);
    expect(read.measures).toMatchObject({ scaleStepGrams: 0.5, spoons: { name: "metric" } });
    expect(read.leachingShare).toBe(0.2);
    expect(read.ceilings.map(({ nutrient, basis }) => [nutrient, basis])).toEqual([
      ["N", "squareMetre"],
      ["P", "plant"],
      ["K", "total"],
    ]);
    near(read.ceilings[1]!.grams, 3 * 0.4364287072979999);
    // A grade that stands on no shelf can be named too.
    expect(read.shelf.map(({ id }) => id)).toContain("10-52-10");
    expect(read.plantings[0]!.programme.stages.map(({ products }) => products)).toEqual([
      ["leafy-feed"],
      ["bloom-feed", "10-52-10"],
    ]);
    expect(planSeason(read).ok).toBe(true);
  });

  test("stages of one's own, with a rhythm and litres of their own", () => {
    const stages = [
      { name: "First weeks", begins: "set out + 7 days", target: "N 0.1 g/plant", everyDays: 7 },
      { name: "in fruit", begins: "first flower", ends: "end - 2 weeks", target: "N 2 g/m2", per: "stage" },
    ];
    const more = { stages, litresPerPlant: "0.5 L" };
    const season = read(more, ["programme"]);
    const { programme } = answered(season).plantings[0]!;
    expect(programme).toMatchObject({ id: "own", evidence: "own", everyDays: 14, litresPerPlant: 0.5 });
    expect(programme.stages[0]).toMatchObject({
      id: "first-weeks",
      everyDays: 7,
      begins: { kind: "days-after", milestone: "set-out", days: 7 },
      target: { basis: "plant", per: "feed" },
    });
    expect(programme.stages[1]).toMatchObject({
      begins: { kind: "observed", milestone: "first-flower" },
      ends: { kind: "days-after", milestone: "end", days: -14 },
      target: { basis: "squareMetre", per: "stage" },
    });
  });

  test("the crop's figures can be replaced", () => {
    const read = input({
      crop: "sunflower",
      expect: { "first flower": "30 to 50 days after set out" },
      thresholdsCelsius: [8, 28],
    });
    const { facts } = read.plantings[0]!;
    expect(facts.thresholds).toEqual({ lowerCelsius: 8, upperCelsius: 28 });
    expect(facts.expected["first-flower"]).toEqual([
      { after: "set-out", unit: "days", amounts: [30, 40, 50], source: null },
    ]);
    expect(planSeason(read).ok).toBe(true);
  });

  test("every programme that comes along can be named and planned", () => {
    for (const { id } of PROGRAMMES) expect(planSeason(input({ programme: id })).ok, id).toBe(true);
  });
});

describe("what cannot be used is told with its place", () => {
  test.each([
    [{ setOut: "2027-15-05" }, "date-unreadable at setOut"],
    [{ end: "2027-05-15" }, "dates-out-of-order at end"],
    [{ sown: "2027-06-01" }, "dates-out-of-order at sown"],
    [{ programme: "moon" }, "programme-unknown at programme"],
    [{ can: "10" }, "unit-missing at can"],
    [{ can: "10 kg" }, "dimension-mismatch at can"],
    [{ water: "N 5 g/m2" }, "target-basis-mismatch at water"],
    [{ scale: "1 L" }, "dimension-mismatch at scale"],
    [{ ceilings: ["N 20 ppm"] }, "ceiling-basis at ceilings[0]"],
    [{ ceilings: ["Mg 20 g/m2"] }, "ceiling-nutrient at ceilings[0]"],
    [{ leaching: "15" }, "share-unreadable at leaching"],
    [{ everyDays: 0 }, "field-unusable at everyDays"],
    [{ everyDays: 3.5 }, "field-unusable at everyDays"],
    [{ litresPerPlant: "1 kg" }, "dimension-mismatch at litresPerPlant"],
    [{ products: ["moon-dust"] }, "product-unknown at products[0]"],
    [{ stageProducts: { leaf: ["moon-dust"] } }, "product-unknown at stageProducts.leaf[0]"],
    [{ stageProducts: { moon: ["leafy-feed"] } }, "stage-unknown at stageProducts.moon"],
    [{ mix: { brings: "N 5 ppm", over: "9 days" } }, "target-basis-mismatch at mix.brings"],
    [{ mix: { brings: "N 5 g/m3", over: "9 kg" } }, "dimension-mismatch at mix.over"],
    [{ expect: { moon: "3 days after sown" } }, "milestone-unknown at expect.moon"],
    [{ expect: { "first flower": "soon" } }, "expectation-unreadable at expect.first flower"],
    [{ thresholdsCelsius: [30, 10] }, "thresholds-out-of-order at thresholdsCelsius"],
    [{ stages: [{ name: "a", begins: "sown", target: "N 1 ppm" }] }, "options-conflict at programme"],
    [{ colour: "red" }, "field-unknown at colour"],
    [{ places: [] }, "field-unusable at places"],
    [{ places: [{ name: "a", fill: "2 beds 1 m x 1 m x 30 cm" }] }, "field-missing at places[0].plants"],
    [{ places: [{ name: "a", fill: "5 pots 20 L", plants: 2.5 }] }, "field-unusable at places[0].plants"],
    [{ places: [WHOLE.places[0], WHOLE.places[0]] }, "id-twice at places"],
    [
      { places: [{ name: "a", fill: "a heap", plants: 3 }] },
      /^shape-unknown at places\[0\]\.fill|.* at places\[0\]\.fill/,
    ],
  ])("%j: %s", (more, expected) => {
    const problems = told(more);
    if (typeof expected === "string") expect(problems).toContain(expected);
    else expect(problems.some((problem) => expected.test(problem))).toBe(true);
  });

  test.each([
    [{ begins: "whenever" }, "condition-unreadable at stages[0].begins"],
    [{ ends: "2027-02-30" }, "date-unreadable at stages[0].ends"],
    [{ target: "N 5 g/m3" }, "target-basis-mismatch at stages[0].target"],
    [{ per: "stage" }, "target-basis-mismatch at stages[0].target"],
    [{ everyDays: 400 }, "field-unusable at stages[0].everyDays"],
    [{ litresPerPlant: "much" }, /at stages\[0\]\.litresPerPlant/],
  ])("a stage with %j: %s", (more, expected) => {
    const stages = [{ name: "a", begins: "sown", target: "N 100 ppm", litresPerPlant: "1 L", ...more }];
    const problems = told({ stages, sown: "2027-03-01" }, ["programme"]);
    if (typeof expected === "string") expect(problems).toContain(expected);
    else expect(problems.join()).toMatch(expected);
  });

  test("own stages without litres, or twice the same, or nothing at all", () => {
    const stage = { name: "a", begins: "set out", target: "N 100 ppm" };
    expect(told({ stages: [stage] }, ["programme"])).toContain("field-missing at litresPerPlant");
    expect(told({ stages: [stage, stage] }, ["programme"])).toContain("id-twice at stages");
    expect(told({}, ["programme"])).toContain("field-missing at programme");
    expect(told({}, ["can", "name"])).toEqual(
      expect.arrayContaining(["field-missing at can", "field-missing at name"]),
    );
  });

  test("several mistakes are told in one go", () => {
    expect(told({ can: "10", water: "N", leaching: "x", setOut: "soon" }).length).toBeGreaterThanOrEqual(4);
  });

  test("property: anything at all gives an answer or problems, never a throw", () => {
    const anyField = fc.oneof(
      fc.string(),
      fc.integer(),
      fc.double(),
      fc.boolean(),
      fc.constant(null),
      fc.array(fc.string()),
    );
    const keys = [...Object.keys(WHOLE), "mix", "stages", "ceilings", "expect", "stageProducts", "everyDays", "scale"];
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom(...keys), anyField), (more) => {
        const season = read(more);
        if (!season.ok) for (const problem of season.problems) expect(problem.hint).not.toBe("");
      }),
      { numRuns: 300 },
    );
  });
});

describe("words", () => {
  test("conditions", () => {
    const meant = (text: string) => answered(readCondition(text));
    expect(meant("2027-06-01")).toEqual({ kind: "date", date: "2027-06-01" });
    expect(meant("Set out")).toEqual({ kind: "days-after", milestone: "set-out", days: 0 });
    expect(meant("first flower + 3 days")).toEqual({ kind: "days-after", milestone: "first-flower", days: 3 });
    expect(meant("10 days after set-out")).toEqual({ kind: "days-after", milestone: "set-out", days: 10 });
    expect(meant("2 weeks before end")).toEqual({ kind: "days-after", milestone: "end", days: -14 });
    expect(meant("400 degree days after sown")).toEqual({
      kind: "degree-days-after",
      milestone: "sown",
      degreeDays: 400,
    });
    expect(meant("first-fruit set")).toEqual({ kind: "observed", milestone: "first-fruit-set" });
    expect(readCondition("").ok).toBe(false);
  });

  test("expectations", () => {
    expect(answered(readExpectation("500 to 700 degree days after sown"))).toEqual({
      after: "sown",
      unit: "degree-days",
      amounts: [500, 600, 700],
      source: null,
    });
    expect(answered(readExpectation("3 weeks after set out")).amounts).toEqual([21, 21, 21]);
    expect(readExpectation("50 to 20 days after set out").ok).toBe(false);
  });

  test("rates per plant, in all, and as everywhere", () => {
    expect(answered(readSeasonRates("N 0.2 g per plant, K2O 0.3 g/plant")).basis).toBe("plant");
    expect(answered(readSeasonRates("N 1 kg in all"))).toMatchObject({ basis: "total", wanted: [{ rate: 1000 }] });
    expect(answered(readSeasonRates("N 150 ppm")).basis).toBe("litre");
    expect(readSeasonRates("N 0.2 g/plant, K 3 ppm").ok).toBe(false);
    expect(readSeasonRates("N 200 mg/plant").ok).toBe(false);
    expect(answered(readCeilings("N 20 g/m2, K2O 30 g/m2"))).toHaveLength(2);
  });
});
