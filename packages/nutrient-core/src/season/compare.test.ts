import { describe, expect, test } from "vitest";
import { compareProgrammes } from "./compare.ts";
import { planSeason } from "./plan.ts";
import { followsRuleOfThumb } from "./planting-cautions.ts";
import { PROGRAMMES, programmeNamed } from "./programmes/programmes.ts";
import { answered, planting, season } from "./testing/demo.ts";

describe("programmes side by side", () => {
  const input = season({ plantings: [planting(), planting({ name: "beds", plants: 30 })] });
  const compared = answered(compareProgrammes(input, PROGRAMMES));

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
