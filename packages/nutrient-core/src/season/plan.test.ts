import { describe, expect, test } from "vitest";
import sources from "../../../../test-data/sources.json" with { type: "json" };
import { addDays, type CivilDate, daysBetween } from "./civil-date.ts";
import { givenAsPlanned } from "./fed.ts";
import { fedOtherwise } from "./fed-otherwise.ts";
import type { LogEntry } from "./log.ts";
import { planSeason } from "./plan.ts";
import type { Programme } from "./programme.ts";
import { ppm } from "./programmes/ppm.ts";
import { PROGRAMMES } from "./programmes/programmes.ts";
import { TWO_PHASE } from "./programmes/two-phase.ts";
import type { Planting, SeasonInput } from "./season.ts";
import type { SeasonPlan } from "./season-plan.ts";
import { answered, BLOOM, day, fedWith, LEAFY, planting, product, SALTPETRE, season } from "./testing/demo.ts";

const FED_APART = fedWith(TWO_PHASE, { leaf: ["leafy-feed"], fruit: ["bloom-feed", "saltpetre"] });
const INPUT = season({ plantings: [planting({ programme: FED_APART })] });

const planned = (input: SeasonInput, log: readonly LogEntry[] = [], today: CivilDate | null = null): SeasonPlan =>
  answered(planSeason(input, log, today));
const codes = (input: SeasonInput, log: readonly LogEntry[] = [], today: CivilDate | null = null): string[] => {
  const plan = planSeason(input, log, today);
  return plan.ok ? plan.cautions.map(({ code }) => code) : plan.problems.map(({ code }) => code);
};
const fed = (plan: SeasonPlan, index: number, id: string, date?: CivilDate): LogEntry => {
  const event = plan.events[index]!;
  return { ...givenAsPlanned(event, date ?? event.date), id };
};
const near = (value: number, expected: number): void =>
  // Sums and products of a few numbers.
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(expected)));

describe("a season ahead", () => {
  const plan = planned(INPUT);

  test("begins two weeks after setting out and goes on every two weeks, until two weeks before the end", () => {
    expect(plan.events[0]!.date).toBe("2027-05-29");
    for (const [index, event] of plan.events.slice(1).entries()) {
      expect(daysBetween(plan.events[index]!.date, event.date)).toBe(14);
    }
    expect(plan.events.at(-1)!.date <= "2027-09-26").toBe(true);
    expect(addDays(plan.events.at(-1)!.date, 14) > "2027-09-26").toBe(true);
    expect(plan.events.every(({ status }) => status === "planned")).toBe(true);
  });

  test("switches on the predicted day: without weather 0, 23 and 45 days after setting out", () => {
    const flower = plan.milestones.find(({ milestone }) => milestone === "first-flower")!;
    expect(flower).toMatchObject({ earliest: "2027-05-15", likely: "2027-06-07", latest: "2027-06-29", basis: "days" });
    expect(plan.stages.map(({ id, begins, ends }) => [id, begins, ends])).toEqual([
      ["leaf", "2027-05-29", "2027-06-06"],
      ["fruit", "2027-06-07", "2027-09-26"],
    ]);
    expect(plan.events.map(({ stage }) => stage)).toEqual(["leaf", ...Array.from({ length: 8 }, () => "fruit")]);
    // What hangs on the unseen flower says so; the first stage does not.
    expect(plan.events.map(({ provisional }) => provisional)).toEqual([
      false,
      ...Array.from({ length: 8 }, () => true),
    ]);
  });

  test("20 plants with a litre each take two cans of 10 L; 200 mg/L of N from a 20 % feed are 10 g a can", () => {
    const [first] = plan.events;
    expect(first).toMatchObject({ cans: 2, canLitres: 10, litresPerPlant: 1, reached: "met" });
    near(first!.amounts[0]!.perCanGrams, 10);
    near(first!.amounts[0]!.massGrams, 20);
    near(first!.deliveredPpm.N!, 200);
    near(first!.deliveredPpm.P2O5!, 100);
    near(first!.nutrientGrams.N!, 4);
  });

  test("every caution and every programme names sources that are on file", () => {
    const made = planSeason(INPUT);
    const named = made.ok ? made.cautions.flatMap(({ source, facts }) => [source, ...listed(facts)]) : [];
    expect(named.length).toBeGreaterThan(4);
    expect(named.filter((id) => !(id in sources))).toEqual([]);
    expect(PROGRAMMES.flatMap((one) => one.sources).filter((id) => !(id in sources))).toEqual([]);
    expect(plan.reminders.filter(({ source }) => !(source in sources))).toEqual([]);
  });
});

const listed = (facts: Readonly<Record<string, unknown>>): string[] =>
  Object.entries(facts).flatMap(([key, value]) => (/^sources/.test(key) ? (value as string[]) : []));

test("within a tenth of every target is met, and further off is not", () => {
  const stage = TWO_PHASE.stages[0]!;
  const reached = (P2O5: number) => {
    const target = { ...stage.target, wanted: ppm({ N: 200, P2O5, K2O: 200 }) };
    const programme = { ...TWO_PHASE, stages: [{ ...stage, target, products: ["leafy-feed"] }] };
    return planned(season({ plantings: [planting({ programme })] })).events[0]!;
  };
  // The feed brings half as much P2O5 as N: 100 mg/L.
  expect(reached(91.5)).toMatchObject({ reached: "met", explanation: [] });
  expect(reached(90)).toMatchObject({ reached: "closest", explanation: ["P2O5 comes to 100 mg/L instead of 90.0."] });
  expect(reached(111)).toMatchObject({ reached: "met" });
  expect(reached(112)).toMatchObject({ reached: "closest" });
});

test("one product follows the nutrient that is named first, on the scale too", () => {
  const stage = TWO_PHASE.stages[0]!;
  const target = { ...stage.target, wanted: ppm({ N: 197, K2O: 400 }) };
  const programme = { ...TWO_PHASE, stages: [{ ...stage, target, products: ["leafy-feed"] }] };
  const input = season({ plantings: [planting({ programme })], measures: { scaleStepGrams: 1 } });
  // 9.85 g for the nitrogen; the potassium alone would want 20 g.
  expect(planned(input).events[0]!.amounts[0]!.perCanGrams).toBe(10);
});

describe("what is there already counts", () => {
  test("the water's nitrogen comes off the target, and stays in what is delivered", () => {
    const [first] = planned({ ...INPUT, water: { N: 20 } }).events;
    near(first!.amounts[0]!.perCanGrams, 9);
    near(first!.deliveredPpm.N!, 200);
  });

  test("the mix gives evenly from setting out; its share until the next feed comes off the can", () => {
    // 1.2 g of N a plant in 120 days: 0.14 g in 14 days, in a litre a plant 140 mg/L.
    const fromMix = { gramsPerPlant: { N: 1.2 }, overDays: 120 };
    const plan = planned({ ...INPUT, plantings: [planting({ programme: FED_APART, fromMix })] });
    near(plan.events[0]!.amounts[0]!.perCanGrams, 3);
    near(plan.events[0]!.deliveredPpm.N!, 60);
    // After 120 days it has given out: the last feed is that of a season without it.
    expect(daysBetween(day("2027-05-15"), plan.events.at(-1)!.date)).toBeGreaterThan(120);
    const without = planned(INPUT).events.at(-1)!;
    expect(plan.events.at(-1)!.amounts).toEqual(without.amounts);
    near(plan.budget.find(({ nutrient }) => nutrient === "N")!.fromMixGramsPerPlant, 1.2);
  });

  test("a mix that brings everything leaves plain water, and says so", () => {
    const fromMix = { gramsPerPlant: { N: 20, P: 20, K: 40 }, overDays: 120 };
    const [first] = planned({ ...INPUT, plantings: [planting({ programme: FED_APART, fromMix })] }).events;
    expect(first!.amounts).toEqual([]);
    expect(first!.cans).toBe(2);
  });
});

describe("the record", () => {
  const plan = planned(INPUT, [], null);

  test("with nothing recorded the past is assumed as planned, and said", () => {
    const later = planned(INPUT, [], day("2027-06-20"));
    expect(later.events.slice(0, 2).map(({ status }) => status)).toEqual(["assumed", "assumed"]);
    expect(later.events[2]!.status).toBe("planned");
    expect(codes(INPUT, [], day("2027-06-20"))).toContain("nothing-recorded");
  });

  test("a feed given late moves the ones after it; a missed one is due today, once, and says since when", () => {
    const log = [fed(plan, 0, "1", day("2027-06-01"))];
    const onTime = planned(INPUT, log, day("2027-06-02"));
    expect(onTime.events.map(({ date }) => date).slice(0, 3)).toEqual(["2027-06-01", "2027-06-15", "2027-06-29"]);
    const missed = planned(INPUT, log, day("2027-07-01"));
    expect(missed.events.map(({ date, status }) => [date, status]).slice(0, 3)).toEqual([
      ["2027-06-01", "given"],
      ["2027-07-01", "planned"],
      ["2027-07-15", "planned"],
    ]);
    expect(missed.events[1]!.dueSince).toBe("2027-06-15");
    expect(missed.events[2]!.dueSince).toBeUndefined();
  });

  test("what was recorded counts as it was: nutrients, totals, budget", () => {
    const given = answered(
      fedOtherwise(INPUT, {
        date: day("2027-05-30"),
        planting: "pots",
        cans: 3,
        amounts: [{ product: "leafy-feed", massGrams: 45 }],
      }),
    );
    // 45 g of a 20 % feed.
    near(given.nutrientGrams.N!, 9);
    const after = planned(INPUT, [{ ...given, id: "1" }], day("2027-05-31"));
    expect(after.events[0]).toMatchObject({ status: "given", reached: "as-recorded", cans: 3 });
    near(after.events[0]!.deliveredPpm.N!, 300);
    near(after.totals.products.find(({ product: id }) => id === "leafy-feed")!.givenGrams, 45);
    near(after.budget.find(({ nutrient }) => nutrient === "N")!.given.gramsPerPlant, 0.45);
  });

  test("a rained-out day is passed over; an undone line has never been", () => {
    const first = fed(plan, 0, "1");
    const rain: LogEntry = { kind: "rained-out", id: "2", date: day("2027-06-12") };
    expect(planned(INPUT, [first, rain], day("2027-06-12")).events[1]!.date).toBe("2027-06-13");
    const undo: LogEntry = { kind: "undone", id: "3", date: day("2027-06-12"), undoes: "2" };
    expect(planned(INPUT, [first, rain, undo], day("2027-06-12")).events[1]!.date).toBe("2027-06-12");
    // An undone undo undoes nothing.
    const redo: LogEntry = { kind: "undone", id: "4", date: day("2027-06-12"), undoes: "3" };
    expect(planned(INPUT, [first, rain, undo, redo], day("2027-06-12")).events[1]!.date).toBe("2027-06-13");
  });

  test("the observed flower wins, earlier or later, and moves what comes after", () => {
    const seen = (date: CivilDate): LogEntry => ({ kind: "observed", id: "9", date, milestone: "first-flower" });
    const early = planned(INPUT, [seen(day("2027-05-31"))], day("2027-05-31"));
    expect(early.stages.map(({ id, begins, provisional }) => [id, begins, provisional])).toEqual([
      ["leaf", "2027-05-29", false],
      ["fruit", "2027-05-31", false],
    ]);
    const late = planned(INPUT, [seen(day("2027-07-10"))], day("2027-07-10"));
    expect(late.events.filter(({ stage }) => stage === "leaf").map(({ date }) => date)).toEqual([
      "2027-05-29",
      "2027-06-12",
      "2027-06-26",
    ]);
    expect(late.milestones.find(({ milestone }) => milestone === "first-harvest")!.likely).toBe("2027-08-31");
    expect(late.events.every(({ provisional }) => !provisional)).toBe(true);
  });

  test("the first picking is the first harvest; harvests are added up", () => {
    const picked = (id: string, date: CivilDate, massGrams: number): LogEntry => ({
      kind: "harvested",
      id,
      date,
      massGrams,
    });
    const { milestones, totals, reminders } = planned(
      INPUT,
      [picked("1", day("2027-07-20"), 800), picked("2", day("2027-07-15"), 450)],
      day("2027-07-21"),
    );
    expect(milestones.find(({ milestone }) => milestone === "first-harvest")).toMatchObject({
      likely: "2027-07-15",
      basis: "observed",
    });
    expect(totals.harvestedGrams).toBe(1250);
    expect(reminders.find(({ kind }) => kind === "pick")!.from).toBe("2027-07-15");
  });

  test("a line of a day to come is counted, and asked about", () => {
    const log = [fed(plan, 0, "7", day("2028-05-29"))];
    expect(codes(INPUT, log, day("2027-06-01"))).toContain("recorded-ahead");
    expect(codes(INPUT, [fed(plan, 0, "7")], day("2027-06-01"))).not.toContain("recorded-ahead");
  });

  test("a line of a day before the plants can have been there is counted, and asked about", () => {
    const seen = (date: string): LogEntry[] => [
      { kind: "observed", id: "1", date: day(date), milestone: "first-flower" },
    ];
    const { setOut } = INPUT.plantings[0]!;
    const code = "recorded-before-planting";
    const bought = season({ plantings: [planting({ setOut: day(setOut) })] });
    expect(codes(bought, seen("2026-06-10"), day("2027-06-20"))).toContain(code);
    expect(codes(bought, seen("2027-06-10"), day("2027-06-20"))).not.toContain(code);
    const sown = season({ plantings: [planting({ sown: day("2027-03-10") })] });
    expect(codes(sown, seen("2027-03-09"), day("2027-06-20"))).toContain(code);
    expect(codes(sown, seen("2027-03-10"), day("2027-06-20"))).not.toContain(code);
    const earlier: LogEntry = { kind: "observed", id: "2", date: day("2027-03-01"), milestone: "sown" };
    expect(codes(sown, [earlier, ...seen("2027-03-09")], day("2027-06-20"))).not.toContain(code);
  });

  test("a flower not seen by today lies ahead of today, and the reminder says look", () => {
    const today = day("2027-07-20");
    const waiting = planned(INPUT, [fed(plan, 0, "1"), fed(plan, 1, "2")], today);
    const flower = waiting.milestones.find(({ milestone }) => milestone === "first-flower")!;
    expect(flower).toMatchObject({ earliest: today, likely: today, latest: today });
    expect(flower.expected!.latest).toBe("2027-06-29");
    const overdue = (day: CivilDate) => {
      const made = planSeason(INPUT, [fed(plan, 0, "1")], day);
      return made.ok
        ? made.cautions.filter(({ code }) => code === "milestone-overdue").map(({ facts }) => facts["milestone"])
        : [];
    };
    expect(overdue(today)).toEqual(["first flower"]);
    expect(overdue(day("2027-06-29"))).toEqual([]);
  });

  test("where fruit was picked the flower has been: it is not waited for, and the record is asked for its day", () => {
    const today = day("2027-07-20");
    const picked: LogEntry = { kind: "harvested", id: "2", date: day("2027-06-10"), massGrams: 300 };
    const made = planSeason(INPUT, [fed(plan, 0, "1"), picked], today);
    if (!made.ok) throw new Error(made.problems[0]!.message);
    const flower = made.value.milestones.find(({ milestone }) => milestone === "first-flower")!;
    expect(flower).toMatchObject({ basis: "implied", impliedBy: "first-harvest" });
    expect(flower.latest <= picked.date && flower.likely <= picked.date).toBe(true);
    expect(made.value.stages.find(({ id }) => id === "fruit")).toMatchObject({
      begins: flower.likely,
      provisional: false,
    });
    expect(made.value.reminders.map(({ kind }) => kind)).not.toContain("look-for-first-flower");
    const told = made.cautions.map(({ code }) => code);
    expect(told).toContain("milestone-implied");
    expect(told).not.toContain("milestone-overdue");
    // Its own day, once recorded, wins.
    const seen: LogEntry = { kind: "observed", id: "3", date: day("2027-06-01"), milestone: "first-flower" };
    expect(planned(INPUT, [picked, seen], today).milestones).toContainEqual(
      expect.objectContaining({ milestone: "first-flower", likely: "2027-06-01", basis: "observed" }),
    );
  });

  test("the switch is seen, not guessed: a feed that is due today stays the first one until the flower is on record", () => {
    for (const today of planned(INPUT).events.map(({ date }) => date)) {
      const due = (log: readonly LogEntry[]) => planned(INPUT, log, today).events.find(({ date }) => date === today)!;
      expect(due([])).toMatchObject({ stage: "leaf", provisional: false });
      const seen: LogEntry = { kind: "observed", id: "1", date: today, milestone: "first-flower" };
      expect(due([seen])).toMatchObject({ stage: "fruit", provisional: false });
    }
  });

  test("a flower that lets itself be waited for does not prolong the pinching", () => {
    const ends = (today: CivilDate) => planned(INPUT, [], today).reminders.find(({ kind }) => kind === "pinch")!.to;
    expect(ends(day("2027-07-20"))).toBe(ends(day("2027-05-16")));
    const { end } = INPUT.plantings[0]!;
    for (const { to } of planned(INPUT, [], end).reminders) expect(to <= end).toBe(true);
  });

  test("what is to be heeded in several plantings alike is said once", () => {
    const two = season({ plantings: [planting(), planting({ name: "beds" })] });
    const made = planSeason(two, [], day("2027-06-20"));
    const notes = made.ok ? made.cautions.filter(({ code }) => code === "nothing-recorded") : [];
    expect(notes.map(({ facts }) => facts["plantings"])).toEqual([[planting().name, "beds"]]);
  });

  test("undoing everything gives the plan of an empty record", () => {
    const log: LogEntry[] = [
      fed(plan, 0, "1"),
      { kind: "observed", id: "2", date: day("2027-06-01"), milestone: "first-flower" },
      { kind: "undone", id: "3", date: day("2027-06-02"), undoes: "1" },
      { kind: "undone", id: "4", date: day("2027-06-02"), undoes: "2" },
    ];
    expect(planned(INPUT, log, day("2027-06-20"))).toEqual(planned(INPUT, [], day("2027-06-20")));
  });

  test("a planting that is not there, or not named where there are two, is a problem", () => {
    const [first] = plan.events;
    const stranger: LogEntry = { ...givenAsPlanned(first!, first!.date), id: "1", planting: "roof" };
    expect(codes(INPUT, [stranger])).toEqual(["planting-unknown"]);
    const { planting: _, ...nameless } = { ...givenAsPlanned(first!, first!.date), id: "1" };
    const two = { ...INPUT, plantings: [planting(), planting({ name: "beds" })] };
    expect(codes(two, [nameless])).toEqual(["planting-missing"]);
    expect(codes(INPUT, [nameless])).not.toContain("planting-missing");
  });
});

describe("stages that share an amount", () => {
  const shared: Programme = {
    ...TWO_PHASE,
    stages: [
      {
        id: "all",
        name: "all season",
        begins: { kind: "days-after", milestone: "set-out", days: 0 },
        ends: { kind: "days-after", milestone: "set-out", days: 55 },
        target: { basis: "plant", per: "stage", wanted: ppm({ N: 2 }) },
        products: ["leafy-feed"],
      },
    ],
  };
  const input = season({ plantings: [planting({ programme: shared })] });

  test("2 g of N a plant over four feeds are half a gram each", () => {
    const { events, totals } = planned(input);
    expect(events).toHaveLength(4);
    for (const event of events) near(event.nutrientGrams.N!, 20 * 0.5);
    near(totals.nutrientGrams.N!, 40);
  });

  test("what was given comes off the rest, and the whole stays the whole", () => {
    const given = answered(
      fedOtherwise(input, {
        date: day("2027-05-15"),
        planting: "pots",
        cans: 2,
        amounts: [{ product: "leafy-feed", massGrams: 125 }],
      }),
    );
    const after = planned(input, [{ ...given, id: "1" }], day("2027-05-16"));
    near(after.events[0]!.nutrientGrams.N!, 25);
    for (const event of after.events.slice(1)) near(event.nutrientGrams.N!, 5);
    near(after.totals.nutrientGrams.N!, 40);
  });
});

describe("ceilings", () => {
  const outlook = (grams: number, basis: "plant" | "squareMetre" | "total") =>
    planned({ ...INPUT, ceilings: [{ nutrient: "N", basis, grams }] }).budget[0]!.ceilings[0]!;

  test("are passed with the first feed that goes over them; the three bases agree", () => {
    // 0.2 g of N a plant with the first feed; the fruit feed brings less.
    const perPlant = outlook(0.25, "plant");
    expect(perPlant.passedOn).toBe("2027-06-12");
    expect(outlook(0.25 * 20, "total").passedOn).toBe("2027-06-12");
    // 20 plants on 1.6 m2.
    expect(outlook((0.25 * 20) / 1.6, "squareMetre").passedOn).toBe("2027-06-12");
    near(outlook(0.25 * 20, "total").shareUsed, perPlant.shareUsed);
    expect(outlook(99, "plant")).toMatchObject({ passedOn: null, mayPassOn: null });
  });

  test("one that is kept to the last gram is not passed, but may be by what cans and scales can be off", () => {
    const { season: whole } = planned(INPUT).budget[0]!;
    const edge = outlook(whole.gramsPerPlant, "plant");
    expect(edge.passedOn).toBeNull();
    expect(edge.mayPassOn).toBe("2027-09-18");
    expect(codes({ ...INPUT, ceilings: [{ nutrient: "N", basis: "plant", grams: whole.gramsPerPlant }] })).toContain(
      "ceiling-near",
    );
    expect(codes({ ...INPUT, ceilings: [{ nutrient: "N", basis: "plant", grams: 0.1 }] })).toContain("ceiling-passed");
  });
});

describe("what a crop takes up", () => {
  const need = (more: Partial<Planting>, nutrient: "N" | "P" | "K") =>
    planned(season({ plantings: [planting(more)] })).budget.find((one) => one.nutrient === nutrient)!.need;

  test("from the fruit hoped for: 3 to 3.5 g of N for each kilogram", () => {
    expect(need({ harvestKilogramsPerPlant: 2 }, "N")).toEqual({ gramsPerPlant: [6, 7], source: "hegde-1997" });
    expect(need({ harvestKilogramsPerPlant: 2 }, "K")!.gramsPerPlant).toEqual([10, 12]);
  });

  test("else from the area: 20 plants on 1.6 m2 have 0.08 m2 each; nothing where neither is known", () => {
    const { gramsPerPlant, source } = need({}, "N")!;
    near(gramsPerPlant[0], 22.42 * 0.08);
    near(gramsPerPlant[1], 29.14 * 0.08);
    expect(source).toBe("uc-pepper-fertility");
    const { areaSquareMetres: _, ...unmeasured } = planting();
    const { budget } = planned(season({ plantings: [unmeasured] }));
    expect(budget.map((one) => one.need)).toEqual([null, null, null]);
    const { uptake: __, ...unknown } = planting().facts;
    expect(need({ facts: unknown }, "N")).toBeNull();
  });
});

describe("what to heed", () => {
  test("the rule of thumb is told with both sides, and only where it is followed", () => {
    expect(codes(INPUT)).toContain("rule-of-thumb");
    for (const programme of PROGRAMMES.filter(({ evidence }) => evidence !== "common-practice")) {
      expect(codes({ ...INPUT, plantings: [planting({ programme })] }), programme.id).not.toContain("rule-of-thumb");
    }
  });

  test("manure near harvest is a danger", () => {
    const manure = product("old-manure", "2-1-2", { hazards: ["pathogens"] });
    const input = season({ products: [manure], shelf: [manure] });
    expect(codes(input)[0]).toBe("manure-near-harvest");
    expect(codes(INPUT)).not.toContain("manure-near-harvest");
  });

  test("an amount below half a step of the scale is left out and said", () => {
    const tooCoarse = { ...INPUT, measures: { scaleStepGrams: 50 } };
    expect(codes(tooCoarse)).toContain("too-little-to-measure");
    expect(codes({ ...INPUT, measures: { scaleStepGrams: 0.1 } })).not.toContain("too-little-to-measure");
    for (const { amounts } of planned({ ...INPUT, measures: { scaleStepGrams: 0.5 } }).events) {
      for (const { perCanGrams } of amounts) near((perCanGrams / 0.5) % 1, 0);
    }
  });

  test("a recorded product that left the shelf still counts", () => {
    const log = [fed(planned(INPUT), 0, "1")];
    const without = { ...INPUT, shelf: [BLOOM, SALTPETRE], products: [BLOOM], plantings: [planting()] };
    expect(codes(without, log)).toContain("recorded-product-unknown");
    near(planned(without, log).events[0]!.nutrientGrams.N!, 4);
    expect(planned(without, log).totals.cost).toBeUndefined();
  });
});

describe("what cannot be planned", () => {
  test("a stage whose beginning nothing tells", () => {
    const input = season({ plantings: [planting({ crop: "sunflower", facts: { expected: {} } })] });
    expect(codes(input)).toEqual(["stage-without-date"]);
  });

  test("a stage that names a product the shelf does not hold", () => {
    const programme = fedWith(TWO_PHASE, { leaf: ["moon-dust"] });
    expect(codes(season({ plantings: [planting({ programme })] }))).toEqual(["product-unknown"]);
  });

  test("an amount per area where the area is not known", () => {
    const programme: Programme = {
      ...TWO_PHASE,
      stages: [{ ...TWO_PHASE.stages[0]!, target: { basis: "squareMetre", per: "feed", wanted: ppm({ N: 2 }) } }],
    };
    const { areaSquareMetres: _, ...unmeasured } = planting({ programme });
    expect(codes(season({ plantings: [unmeasured] }))).toEqual(["area-unknown"]);
  });
});

describe("shopping", () => {
  test("whole packs at least cost after the stock, from two sizes", () => {
    const packs = [
      { massGrams: 100, price: 3 },
      { massGrams: 250, price: 5 },
    ];
    const stocked = { ...LEAFY, stockGrams: 5, packs };
    const bloom = { ...BLOOM, packs };
    const input = season({
      products: [stocked, bloom, SALTPETRE],
      shelf: [stocked, bloom, SALTPETRE],
      plantings: [planting({ programme: fedWith(TWO_PHASE, { leaf: ["leafy-feed"], fruit: ["bloom-feed"] }) })],
    });
    const { shopping, shoppingCost } = planned(input);
    const [leafy, other] = shopping;
    // 20 g needed and 5 g there: one pack of 100 g.
    expect(leafy).toMatchObject({ packs: [{ packGrams: 100, count: 1 }], stockGrams: 5, cost: 3, missingGrams: 0 });
    near(leafy!.leftoverGrams, 85);
    // 8 feeds of two cans at 80 mg/L of N from 5 %: 16 g a can, 256 g: 250 g and 100 g cost less than any other.
    near(other!.neededGrams, 256);
    expect(other!.packs).toEqual([
      { packGrams: 100, count: 1, price: 3 },
      { packGrams: 250, count: 1, price: 5 },
    ]);
    expect(shoppingCost).toBe(11);
  });

  test("only what the stock does not hold is bought", () => {
    const packs = [{ massGrams: 100, price: 3 }];
    const bloom = { ...BLOOM, packs, stockGrams: 200 };
    const input = season({
      products: [LEAFY, bloom],
      shelf: [LEAFY, bloom],
      plantings: [planting({ programme: fedWith(TWO_PHASE, { leaf: ["leafy-feed"], fruit: ["bloom-feed"] }) })],
    });
    // 256 g needed and 200 g there: one pack of 100 g.
    const line = planned(input).shopping[1]!;
    expect(line.packs).toEqual([{ packGrams: 100, count: 1, price: 3 }]);
    near(line.leftoverGrams, 44);
  });

  test("what no pack is known for is missing, and the cost is not known", () => {
    const { packs: _, ...loose } = LEAFY;
    const { shopping, shoppingCost } = planned(season({ products: [loose], shelf: [loose] }));
    expect(shopping[0]!.missingGrams).toBe(shopping[0]!.neededGrams);
    expect(shoppingCost).toBeUndefined();
  });

  test("what was used before the stock was counted is not bought again", () => {
    const log = [fed(planned(INPUT), 0, "1")];
    const counted = planned({ ...INPUT, stockCounted: day("2027-06-01") }, log, day("2027-06-02"));
    expect(counted.shopping.map(({ product: id }) => id)).not.toContain("leafy-feed");
    expect(counted.totals.products.map(({ product: id }) => id)).toContain("leafy-feed");
  });
});
