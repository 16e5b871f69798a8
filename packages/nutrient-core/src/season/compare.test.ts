import { describe, expect, test } from "vitest";
import { compareProgrammes } from "./compare.ts";
import { cropFacts } from "./crop.ts";
import { fedOtherwise } from "./fed-otherwise.ts";
import { planSeason } from "./plan.ts";
import { followsRuleOfThumb } from "./planting-cautions.ts";
import type { Programme } from "./programme.ts";
import { ppm } from "./programmes/ppm.ts";
import { PROGRAMMES, programmeNamed } from "./programmes/programmes.ts";
import { TWO_PHASE } from "./programmes/two-phase.ts";
import { answered, day, planting, season } from "./testing/demo.ts";

describe("programmes side by side", () => {
  const input = season({ plantings: [planting(), planting({ name: "beds", plants: 30 })] });
  const [asPlanned, ...compared] = answered(compareProgrammes(input, PROGRAMMES));

  test("each says what its own plan says", () => {
    expect(compared.map(({ id }) => id)).toEqual(PROGRAMMES.map(({ id }) => id));
    for (const one of compared) {
      const programme = programmeNamed(one.id)!;
      const plan = answered(
        planSeason({ ...input, plantings: input.plantings.map((each) => ({ ...each, programme })) }),
      );
      expect(one.cost).toBe(plan.totals.cost);
      expect(one.feeds).toBe(plan.events.length);
      // Divided by the plants and multiplied again.
      expect(Math.abs(one.gramsPerPlant.N * 50 - plan.totals.nutrientGrams.N!)).toBeLessThan(
        1e-12 * plan.totals.nutrientGrams.N!,
      );
      expect(one.shoppingCost).toBe(plan.shoppingCost);
      expect(one.feedsMet).toBe(plan.events.filter(({ reached }) => reached === "met").length);
    }
  });

  test("the season as it is planned comes first, with its own plan's figures", () => {
    const plan = answered(planSeason(input));
    expect(asPlanned).toMatchObject({ id: "as-planned", name: input.plantings[0]!.programme.name });
    expect([asPlanned!.cost, asPlanned!.feeds]).toEqual([plan.totals.cost, plan.events.length]);
  });

  test("they differ in what counts: nitrogen, phosphorus, cost and feeds", () => {
    for (const of of [
      (one: (typeof compared)[number]) => one.gramsPerPlant.N,
      (one: (typeof compared)[number]) => one.gramsPerPlant.P,
      (one: (typeof compared)[number]) => one.cost,
    ]) {
      expect(new Set(compared.map(of)).size).toBe(PROGRAMMES.length);
    }
  });

  test("only the rule of thumb follows the rule of thumb", () => {
    expect(PROGRAMMES.filter(followsRuleOfThumb).map(({ evidence }) => evidence)).toEqual(["common-practice"]);
  });
});

describe("the season's own stages and its record", () => {
  const own: Programme = {
    ...TWO_PHASE,
    id: "own",
    name: "own stages",
    evidence: "own",
    sources: [],
    stages: [{ ...TWO_PHASE.stages[0]!, id: "all", target: { basis: "plant", per: "feed", wanted: ppm({ N: 0.3 }) } }],
  };
  const input = season({ plantings: [planting({ programme: own })] });

  test("own stages are compared, with the products that they name", () => {
    const [first, second, ...more] = answered(compareProgrammes(input, [TWO_PHASE]));
    expect(more).toEqual([]);
    expect([first!.id, first!.name, first!.evidence]).toEqual(["as-planned", "own stages", "own"]);
    expect(second!.id).toBe("two-phase");
    // 0.3 g of N for each plant in each feed.
    expect(Math.abs(first!.gramsPerPlant.N - 0.3 * first!.feeds)).toBeLessThanOrEqual(1e-12 * 0.3 * first!.feeds);
  });

  test("several programmes are named with their places", () => {
    const two = season({ plantings: [planting(), planting({ name: "beds", programme: own })] });
    const [first] = answered(compareProgrammes(two, []));
    expect(first).toMatchObject({ evidence: "own", name: `${TWO_PHASE.name} (pots); own stages (beds)` });
    expect(first!.sources).toEqual(TWO_PHASE.sources);
  });

  test("what was given stands under every programme, and only the rest differs", () => {
    const today = day("2027-07-20");
    const amounts = [{ product: "leafy-feed", massGrams: 60 }];
    const fed = answered(fedOtherwise(input, { date: day("2027-06-15"), planting: "pots", cans: 3, amounts }));
    const log = [{ ...fed, id: "1" }];
    const compared = answered(compareProgrammes(input, PROGRAMMES, log, today));
    for (const one of compared) {
      const named = programmeNamed(one.id);
      const plantings = [planting({ programme: named ?? own })];
      const { events, totals } = answered(planSeason({ ...input, plantings }, log, today));
      // 12 g of N on 20 plants.
      expect(one.recorded).toMatchObject({ feeds: 1, cans: 3, gramsPerPlant: { N: 0.6 } });
      expect(events.filter(({ status }) => status === "given")).toHaveLength(1);
      expect([one.feeds, one.cost]).toEqual([totals.feeds, totals.cost]);
      expect(one.feedsMet).toBeLessThan(one.feeds);
    }
    expect(new Set(compared.map(({ gramsPerPlant }) => gramsPerPlant.N)).size).toBe(compared.length);
    // Without the record the whole season is ahead.
    expect(answered(compareProgrammes(input, []))[0]!.recorded.feeds).toBe(0);
    // What is only assumed to have been given is not on record.
    expect(answered(compareProgrammes(input, [], [], today))[0]!.recorded.feeds).toBe(0);
  });

  test("a programme whose stages nothing tells for this crop is left out and named; the others stay", () => {
    const tomatoes = season({ plantings: [planting({ programme: own, crop: "tomato", facts: cropFacts("tomato") })] });
    const made = compareProgrammes(tomatoes, PROGRAMMES);
    if (!made.ok) throw new Error(made.problems[0]!.message);
    expect(made.value.map(({ id }) => id)).toEqual(["as-planned", "steady-in-pots", "steady-in-soil"]);
    expect(made.cautions.map(({ code, facts }) => `${code} ${facts["programme"]}`)).toEqual(
      ["two-phase", "rising-nitrogen", "published-by-stage"].map((id) => `programme-not-compared ${id}`),
    );
  });

  test("a season that cannot be planned cannot be compared", () => {
    const sunflowers = planting({ crop: "sunflower", facts: { expected: {} } });
    expect(compareProgrammes(season({ plantings: [sunflowers] }), PROGRAMMES).ok).toBe(false);
  });
});

test("programmes carry the figures that their sources print, element by element", () => {
  const rates = (id: string) =>
    programmeNamed(id)!.stages.map(({ target }) =>
      Object.fromEntries(target.wanted.map(({ asked: { form, rate } }) => [form, rate])),
    );
  // Xu 2001: 6, 1 and 2.5 mmol/L of N, P and K, as printed and rounded in the collection.
  expect(rates("steady-in-pots")).toEqual([{ N: 84, P: 31, K: 98 }]);
  // Yasuor 2013: 56.2 mg/L.
  expect(rates("steady-in-soil")).toEqual([{ N: 56.2 }]);
  // Florida, rockwool: 60, 90, 120 mg/L by stage; potassium 1.3 times nitrogen (Szeged).
  expect(rates("rising-nitrogen")).toEqual([
    { N: 60, P: 31, K: 78 },
    { N: 90, P: 31, K: 117 },
    { N: 120, P: 31, K: 156 },
  ]);
  // A growers' newsletter, 2001.
  expect(rates("published-by-stage")).toEqual([
    { N: 80, P: 20, K: 60 },
    { N: 110, P: 20, K: 40 },
    { N: 120, P: 20, K: 40 },
  ]);
});
