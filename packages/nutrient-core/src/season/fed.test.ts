import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays, type CivilDate } from "./civil-date.ts";
import { feedsMeant, givenAsPlanned } from "./fed.ts";
import { EXAMPLE_PLAN } from "./testing/example-plan.ts";

const day = (text: string): CivilDate => text as CivilDate;
const { events } = EXAMPLE_PLAN;

describe("which feed of the plan was given", () => {
  test.each([
    ["its own day", "2027-06-12", ["pots-2"]],
    ["a day late", "2027-06-13", ["pots-2"]],
    ["nearer to the next one", "2027-06-20", ["pots-3"]],
    ["as near to both: the earlier", "2027-06-19", ["pots-2"]],
    ["a day on which one is recorded already: the next one that is not", "2027-05-29", ["pots-2"]],
  ])("%s", (_what, date, ids) => {
    expect(feedsMeant(events, day(date)).map(({ id }) => id)).toEqual(ids);
  });

  test("plantings due on the same day together, else the one that is due, or the one that is named", () => {
    const beds = { ...events[1]!, id: "beds-1", planting: "beds" };
    const together = [...events, beds];
    const apart = [...events, { ...beds, date: day("2027-06-14") }];
    const ids = (...[all, date, planting]: Parameters<typeof feedsMeant>): string[] =>
      feedsMeant(all, date, planting).map(({ id }) => id);
    expect(ids(together, day("2027-06-12"))).toEqual(["pots-2", "beds-1"]);
    expect(ids(apart, day("2027-06-12"))).toEqual(["pots-2"]);
    expect(ids(apart, day("2027-06-12"), "beds")).toEqual(["beds-1"]);
    expect(ids(apart, day("2027-06-12"), "roof")).toEqual([]);
  });

  test("an overdue one, on the day it was due as well as today", () => {
    const late = { ...events[1]!, date: day("2027-06-24"), dueSince: day("2027-06-12") };
    for (const date of ["2027-06-12", "2027-06-24"]) {
      expect(feedsMeant([late, { ...events[2]!, date: day("2027-07-08") }], day(date))).toEqual([late]);
    }
  });
});

describe("what was given", () => {
  test("as planned: the plan's own amounts, on the day it was given", () => {
    const entry = givenAsPlanned(events[2]!, addDays(events[2]!.date, 1));
    expect(entry).toMatchObject({ planting: "pots", date: "2027-06-27", cans: 1, canLitres: 10 });
    expect(entry.amounts).toEqual([
      { product: "bloom-feed", massGrams: 11 },
      { product: "saltpetre", massGrams: 2 },
    ]);
    expect(entry.nutrientGrams).toEqual(events[2]!.nutrientGrams);
  });

  test("more cans bring more of everything, in proportion", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 50 }), (cans) => {
        const entry = givenAsPlanned(events[1]!, events[1]!.date, cans);
        expect(entry.amounts[0]!.massGrams).toBe(8 * cans);
        // One multiplication and one division in other order: within two units of the last place.
        expect(Math.abs(entry.nutrientGrams.N! - 1.6 * cans)).toBeLessThanOrEqual(1.6 * cans * 2 ** -51);
      }),
    );
  });
});
