import { describe, expect, test } from "vitest";
import { planSeason } from "./plan.ts";
import type { SeasonInput } from "./season.ts";
import type { Reminder } from "./season-plan.ts";
import { answered, day, planting, season } from "./testing/demo.ts";

const SOWN = planting({ sown: day("2027-03-15") });
const reminders = (more: Partial<SeasonInput> = {}, log = [] as Parameters<typeof planSeason>[1]) =>
  new Map<Reminder["kind"], Reminder>(
    answered(planSeason(season({ plantings: [SOWN], ...more }), log)).reminders.map((one) => [one.kind, one]),
  );
const span = (one: Reminder | undefined): string => `${one?.from} to ${one?.to}`;

describe("what to do beside feeding", () => {
  test("from sowing to picking, each in its range", () => {
    const found = reminders({ sowingCelsius: 25 });
    expect(span(found.get("soak-seed"))).toBe("2027-03-14 to 2027-03-15");
    // 8 days at 25 °C by the published table, a day either way.
    expect(span(found.get("germination"))).toBe("2027-03-22 to 2027-03-24");
    expect(found.get("germination")!.source).toBe("knott-emergence");
    expect(span(found.get("set-out"))).toBe("2027-05-15 to 2027-05-15");
    // Without weather the flower is expected 0, 23 and 45 days after setting out.
    expect(span(found.get("look-for-first-flower"))).toBe("2027-05-15 to 2027-06-29");
    expect(span(found.get("pinch"))).toBe("2027-05-15 to 2027-06-07");
    expect(span(found.get("clear-lowest-leaves"))).toBe("2027-06-07 to 2027-06-21");
    // 52 days from flower to green fruit, to the end.
    expect(span(found.get("pick"))).toBe("2027-07-29 to 2027-10-10");
    expect(found.get("pick")!.everyDays).toEqual([3, 7]);
  });

  test("emergence by soil temperature: 13 days at 20 °C, 8 to 13 where it is not known, none where nothing comes up", () => {
    expect(span(reminders({ sowingCelsius: 20 }).get("germination"))).toBe("2027-03-27 to 2027-03-29");
    expect(span(reminders().get("germination"))).toBe("2027-03-23 to 2027-03-28");
    expect(reminders({ sowingCelsius: 10 }).has("germination")).toBe(false);
  });

  test("an observed flower ends the looking and moves pruning and picking", () => {
    const seen = { kind: "observed", id: "1", date: day("2027-06-20"), milestone: "first-flower" } as const;
    const found = reminders({}, [seen]);
    expect(found.has("look-for-first-flower")).toBe(false);
    expect(span(found.get("clear-lowest-leaves"))).toBe("2027-06-20 to 2027-07-04");
    expect(found.get("pick")!.from).toBe("2027-08-11");
  });

  test("none where they are not wanted, and no sowing where nothing is said of it", () => {
    expect(reminders({ reminders: false }).size).toBe(0);
    expect(reminders({ plantings: [planting()] }).has("soak-seed")).toBe(false);
  });
});
