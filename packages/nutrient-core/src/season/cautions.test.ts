import { describe, expect, test } from "vitest";
import type { Caution } from "../outcome/caution.ts";
import type { Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
import { givenAsPlanned } from "./fed.ts";
import { fedOtherwise } from "./fed-otherwise.ts";
import type { FedEntry, LogEntry } from "./log.ts";
import { planSeason } from "./plan.ts";
import { plantingLabel } from "./planting-label.ts";
import type { Programme, StageTarget } from "./programme.ts";
import { ppm } from "./programmes/ppm.ts";
import { TWO_PHASE } from "./programmes/two-phase.ts";
import type { SeasonInput } from "./season.ts";
import { answered, day, fedWith, planting, product, season } from "./testing/demo.ts";

/** What is told beside a plan: of the record, of groups of places, of labels and of feeds. */
const cautions = (input: SeasonInput, log: readonly LogEntry[] = [], today = day("2027-06-20")): readonly Caution[] => {
  const plan = planSeason(input, log, today);
  if (!plan.ok) throw new Error(plan.problems[0]!.message);
  return plan.cautions;
};
const told = (code: string, ...[input, log, today]: Parameters<typeof cautions>): readonly Caution[] =>
  cautions(input, log, today).filter((caution) => caution.code === code);

/** A programme whose stages follow each other every four weeks, each with a product of its own. */
function stagesOf(...stages: readonly { readonly feed: string; readonly target: StageTarget["wanted"] }[]): Programme {
  return {
    ...TWO_PHASE,
    stages: stages.map(({ feed, target }, index) => ({
      id: `stage-${index}`,
      name: `stage ${index}`,
      begins: { kind: "days-after", milestone: "set-out", days: 28 * index },
      target: { basis: "litre", per: "feed", wanted: target },
      products: [feed],
    })),
  };
}

const FED_APART = fedWith(TWO_PHASE, { leaf: ["leafy-feed"], fruit: ["bloom-feed", "saltpetre"] });

describe("a recorded feed that no plan would give", () => {
  const input = season({ plantings: [planting({ programme: FED_APART })] });
  const given = (cans: number, massGrams: number, id = "7", date = "2027-05-29"): LogEntry => ({
    ...answered(
      fedOtherwise(input, {
        date: day(date),
        planting: "pots",
        cans,
        amounts: [{ product: "leafy-feed", massGrams }],
      }),
    ),
    id,
  });
  const large = (...log: readonly LogEntry[]): readonly Caution[] => told("recorded-feed-large", input, log);

  test("is kept, counted, and told beside what the plan gives", () => {
    // 20 plants with a litre each: two cans of 10 L, with 200 mg/L of N in them: 4 g.
    const log = [given(2000, 20_000)];
    const [caution] = large(...log);
    expect(caution).toMatchObject({ severity: "caution", facts: { planting: "pots", line: "7" } });
    expect(caution!.facts["compared"]).toEqual([
      `2000 cans of 10 L, where the plan for "${FED_APART.stages[0]!.name}" gives 2 of 10 L (1000 times)`,
      "N 4000 g, where by the plan such a feed brings 4 g (1000 times)",
    ]);
    const plan = answered(planSeason(input, log, day("2027-06-20")));
    expect(plan.events[0]).toMatchObject({ status: "given", cans: 2000 });
    // 20 kg of a 20 % feed on 20 plants.
    expect(plan.budget.find(({ nutrient }) => nutrient === "N")!.given.gramsPerPlant).toBe(200);
  });

  test("in water alone, or in strength alone: up to three times is a generous feed", () => {
    expect(large(given(6, 60))).toEqual([]);
    expect(large(given(7, 20))[0]!.facts["compared"]).toHaveLength(1);
    expect(large(given(7, 20))[0]!.message).toContain("7 cans of 10 L");
    const [tank] = large({ ...(given(1, 20) as FedEntry), canLitres: 100 });
    expect(tank!.message).toContain("says 1 can of 100 L, where");
    // 60 g of a 20 % feed are 12 g of N, three times 4 g.
    expect(large(given(2, 60))).toEqual([]);
    const [strong] = large(given(2, 62));
    expect(strong!.facts["compared"]).toEqual(["N 12.4 g, where by the plan such a feed brings 4 g (3.1 times)"]);
  });

  test("of several the furthest off in numbers, the others by their lines", () => {
    const [one, ...more] = large(given(7, 20, "4"), given(90, 20, "5", "2027-06-12"), given(2, 20, "6", "2027-06-01"));
    expect(more).toEqual([]);
    expect(one!.facts).toMatchObject({ line: "5", otherLines: ["line 4 (29 May 2027)"] });
  });

  test("what the plan itself gives is never far off, whatever water and product bring along", () => {
    // Water with 90 mg/L of calcium where 5 are wanted; a feed along with which ten times the wanted potassium comes.
    const programme = stagesOf({ feed: "leafy-feed", target: ppm({ N: 20, K2O: 1, Ca: 5 }) });
    const odd = season({ plantings: [planting({ programme })], water: { N: 10, Ca: 90 } });
    const plan = answered(planSeason(odd));
    const log = plan.events.map((event, index): LogEntry => ({ ...givenAsPlanned(event, event.date), id: `${index}` }));
    expect(log.length).toBeGreaterThan(3);
    expect(told("recorded-feed-large", odd, log, day("2027-10-10"))).toEqual([]);
    const more = log.map((line) => (line.kind === "fed" ? { ...line, nutrientGrams: { K: 10 } } : line));
    expect(told("recorded-feed-large", odd, more, day("2027-10-10"))).toHaveLength(1);
  });

  test("a line that was undone is not asked about", () => {
    const undone: LogEntry = { kind: "undone", id: "8", date: day("2027-06-01"), undoes: "7" };
    expect(large(given(2000, 20_000), undone)).toEqual([]);
  });

  test("where a stage's feeds share an amount, one that brings it all at once is not yet far off", () => {
    const [stage] = TWO_PHASE.stages;
    const target: StageTarget = { basis: "plant", per: "stage", wanted: ppm({ N: 2 }) };
    const programme = { ...TWO_PHASE, stages: [{ ...stage!, target, products: ["leafy-feed"] }] };
    const shared = season({ plantings: [planting({ programme })] });
    // 2 g of N for each of 20 plants are 200 g of a 20 % feed.
    expect(told("recorded-feed-large", shared, [given(2, 200)])).toEqual([]);
    expect(told("recorded-feed-large", shared, [given(2, 601)])[0]!.message).toContain(
      "N 120 g, where by the plan all feeds of the stage together bring 40 g (3 times)",
    );
  });
});

describe("a group of places", () => {
  const places = ["pots", "tubs", "bed"].map((name) => ({ ...planting().places[0]!, name }));
  const group = planting({ places, programme: FED_APART });

  test("is called by all its places wherever it is cautioned about, and by its own name in the facts", () => {
    const input = season({ plantings: [group], ceilings: [{ nutrient: "N", basis: "plant", grams: 0.1 }] });
    const named = cautions(input, [], day("2027-07-20")).filter(
      ({ facts }) => facts["planting"] !== undefined || facts["plantings"] !== undefined,
    );
    expect(named.map(({ code }) => code)).toEqual(
      expect.arrayContaining(["ceiling-passed", "nothing-recorded", "milestone-overdue", "target-not-reached"]),
    );
    for (const { message, facts } of named) {
      expect(message).toContain("pots + tubs + bed");
      expect([facts["planting"] ?? facts["plantings"]].flat()).toEqual(["pots"]);
    }
  });

  test("one place keeps its name; of many the first are named and the others counted", () => {
    expect(plantingLabel(planting())).toBe("pots");
    const many = Array.from({ length: 9 }, (_, n) => ({ name: `tub ${n}` }));
    expect(plantingLabel({ name: "tub 0", places: many })).toBe("tub 0 + tub 1 + tub 2 and 6 more");
  });
});

describe("labels that cannot be as they were read", () => {
  const odd = product("odd-feed", "60-60-60", { name: "odd feed" });
  const programme = stagesOf({ feed: "odd-feed", target: ppm({ N: 150 }) });

  test("are told by the season as by a dose", () => {
    const input = season({ products: [odd], shelf: [odd], plantings: [planting({ programme })] });
    expect(told("label-over-100", input)).toHaveLength(1);
    expect(told("label-over-100", season({ plantings: [planting({ programme: FED_APART })] }))).toEqual([]);
  });

  test("also of a product that is only on record, and not of one that stands on the shelf unused", () => {
    const input = season({ shelf: [...season().shelf, odd], plantings: [planting({ programme: FED_APART })] });
    expect(told("label-over-100", input)).toEqual([]);
    const amounts = [{ product: "odd-feed", massGrams: 5 }];
    const given = answered(fedOtherwise(input, { date: day("2027-05-29"), planting: "pots", cans: 2, amounts }));
    expect(told("label-over-100", input, [{ ...given, id: "1" }])).toHaveLength(1);
  });
});

describe("the strongest feed speaks for the weaker ones", () => {
  const material = (id: string): Product => answered(readProduct(id));
  const shelf = ["gypsum", "rock-phosphate", "bone-meal-steamed"].map(material);
  const under = (programme: Programme): SeasonInput =>
    season({ products: shelf, shelf, plantings: [planting({ programme })] });

  test("but not for another product: each that does not dissolve is named", () => {
    const programme = stagesOf(
      { feed: "gypsum", target: ppm({ Ca: 3000 }) },
      { feed: "rock-phosphate", target: ppm({ P2O5: 300 }) },
      { feed: "bone-meal-steamed", target: ppm({ P2O5: 300 }) },
    );
    const messages = told("does-not-dissolve", under(programme)).map(({ message }) => message.toLowerCase());
    expect(messages).toHaveLength(3);
    for (const { name } of shelf) {
      expect(messages.filter((message) => message.includes(name.toLowerCase()))).toHaveLength(1);
    }
  });

  test("of one product in several feeds the one that holds most of it", () => {
    const programme = stagesOf(
      { feed: "gypsum", target: ppm({ Ca: 2000 }) },
      { feed: "gypsum", target: ppm({ Ca: 3000 }) },
    );
    const [one, ...more] = told("does-not-dissolve", under(programme));
    expect(more).toEqual([]);
    // Calcium sulfate dihydrate holds 23.28 % Ca: 3 g of it in a litre take 12.9 g; the material may be less pure.
    expect(one!.facts["gramsPerLitre"]).toBeGreaterThan(12.8);
  });

  test("nor for another nutrient; a weaker feed with the same ones is covered", () => {
    const salts = [product("urea-feed", "46-0-0"), product("potash", "0-0-60")];
    const strong = (...targets: readonly [string, StageTarget["wanted"]][]): number =>
      told(
        "feed-strength",
        season({
          products: salts,
          shelf: salts,
          plantings: [planting({ programme: stagesOf(...targets.map(([feed, target]) => ({ feed, target }))) })],
        }),
      ).length;
    expect(strong(["urea-feed", ppm({ N: 600 })])).toBe(1);
    expect(strong(["urea-feed", ppm({ N: 600 })], ["potash", ppm({ K2O: 900 })])).toBe(2);
    expect(strong(["urea-feed", ppm({ N: 600 })], ["urea-feed", ppm({ N: 550 })])).toBe(1);
  });
});
