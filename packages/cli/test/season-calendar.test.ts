import ICAL from "ical.js";
import type { CivilDate, SeasonInput, SeasonPlan } from "nutrient-core";
import { describe, expect, test } from "vitest";
import { EXAMPLE_PLAN } from "../../nutrient-core/src/season/testing/example-plan.ts";
import { editionNumber, seasonCalendar } from "../src/render/season-calendar.ts";
import { entriesOf } from "../src/render/season-calendar-earlier.ts";

/** Calendar files are judged by ical.js, which shares no code with the library that writes them. */
const day = (text: string): CivilDate => text as CivilDate;
const input = { name: "Courtyard, Café; 2027", plantings: [{ end: day("2027-10-10") }] } as unknown as SeasonInput;
const stamp = new Date("2027-06-10T08:00:00Z");
const write = (plan: SeasonPlan, sequence = 1, earlier: string | undefined = undefined): string =>
  seasonCalendar(input, plan, { stamp, sequence, earlier: earlier ? entriesOf(earlier) : [] }, "metric");
const read = (text: string): ICAL.Event[] =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents("vevent").map((part) => new ICAL.Event(part));
const moved = (days: Record<string, string>): SeasonPlan => ({
  ...EXAMPLE_PLAN,
  events: EXAMPLE_PLAN.events.map((event) => ({ ...event, date: day(days[event.id] ?? event.date) })),
});

describe("the season as a calendar", () => {
  const text = write(EXAMPLE_PLAN);
  const events = read(text);

  test("has an all-day entry for each feed and reminder, by its days", () => {
    expect(events).toHaveLength(EXAMPLE_PLAN.events.length + EXAMPLE_PLAN.reminders.length);
    for (const { id, date, planting, cans } of EXAMPLE_PLAN.events) {
      const entry = events.find(({ uid }) => uid.startsWith(`${id}.`))!;
      expect(entry.startDate.isDate).toBe(true);
      expect(entry.startDate.toString()).toBe(date);
      expect(entry.duration.toSeconds()).toBe(86_400);
      expect(entry.summary).toContain(`${planting}: ${cans} can`);
    }
    const look = events.find(({ uid }) => uid.startsWith("pots-look-for-first-flower."))!;
    expect([look.startDate.toString(), look.endDate.toString()]).toEqual(["2027-06-15", "2027-07-05"]);
  });

  test("has what the standard asks of every entry: a name of its own, a stamp in universal time, a sequence", () => {
    const calendar = new ICAL.Component(ICAL.parse(text));
    expect(calendar.getFirstPropertyValue("version")).toBe("2.0");
    expect(calendar.getFirstPropertyValue("prodid")).toBeTruthy();
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
    for (const entry of events) {
      expect(String(entry.component.getFirstPropertyValue("dtstamp"))).toBe("2027-06-10T08:00:00Z");
      expect(entry.sequence).toBe(1);
    }
  });

  test("no line is longer than 75 octets, and lines end as the standard says", () => {
    const wide = write({
      ...EXAMPLE_PLAN,
      events: EXAMPLE_PLAN.events.map((event) => ({
        ...event,
        explanation: ["Größe äöü 🌶 ".repeat(30), "a\nb; c, d\\"],
      })),
    });
    expect(wide.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    expect(Math.max(...wide.split("\r\n").map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
    expect(read(wide)[0]!.description).toContain(`${"Größe äöü 🌶 ".repeat(30)}\na\nb; c, d\\`);
  });

  test("texts cannot add lines of their own", () => {
    const name = "pots\r\nATTENDEE:mailto:a@example.org\r\nX:";
    const forged = write({
      ...EXAMPLE_PLAN,
      events: EXAMPLE_PLAN.events.map((event) => ({ ...event, planting: name, id: name })),
    });
    expect(forged).not.toMatch(/^(ATTENDEE|X):/m);
    expect(read(forged)).toHaveLength(events.length);
  });

  test("an entry of one day in a leap year, at a year's end, and at the end of February", () => {
    for (const [date, next] of [
      ["2028-02-28", "2028-02-29"],
      ["2028-02-29", "2028-03-01"],
      ["2027-02-28", "2027-03-01"],
      ["2027-12-31", "2028-01-01"],
    ] as const) {
      const entry = read(write(moved({ "pots-2": date }))).find(({ uid }) => uid.startsWith("pots-2."))!;
      expect([entry.startDate.toString(), entry.endDate.toString()]).toEqual([date, next]);
    }
  });
});

describe("a calendar written again after the plan moved", () => {
  const first = write(EXAMPLE_PLAN, 10);

  test("names the same feeds the same, on their new days, with a higher number", () => {
    const second = write(moved({ "pots-3": "2027-07-01" }), 11, first);
    const uids = (text: string): string[] =>
      read(text)
        .map(({ uid }) => uid)
        .sort();
    expect(uids(second)).toEqual(uids(first));
    const entry = read(second).find(({ uid }) => uid.startsWith("pots-3."))!;
    expect([entry.startDate.toString(), entry.sequence]).toEqual(["2027-07-01", 11]);
  });

  test("calls off what is no longer planned, and goes on doing so", () => {
    const shorter = { ...EXAMPLE_PLAN, events: EXAMPLE_PLAN.events.slice(0, 2) };
    const second = write(shorter, 11, first);
    const third = write(shorter, 12, second);
    for (const text of [second, third]) {
      const gone = read(text).find(({ uid }) => uid.startsWith("pots-3."))!;
      expect(gone.component.getFirstPropertyValue("status")).toBe("CANCELLED");
      expect([gone.startDate.toString(), gone.endDate.toString()]).toEqual(["2027-06-26", "2027-06-27"]);
      expect(gone.summary).toContain("pots: 1 can, flower and fruit");
    }
    const back = read(write(EXAMPLE_PLAN, 13, third)).find(({ uid }) => uid.startsWith("pots-3."))!;
    expect(back.component.getFirstPropertyValue("status")).toBeNull();
  });

  test("calls off entries whose names are folded over several lines", () => {
    const long = (plan: SeasonPlan): SeasonPlan => ({
      ...plan,
      events: plan.events.map((event) => ({ ...event, id: `${"behind the glasshouse ".repeat(6)}${event.id}` })),
    });
    const second = read(write(long({ ...EXAMPLE_PLAN, events: [] }), 11, write(long(EXAMPLE_PLAN), 10)));
    const gone = second.filter(({ component }) => component.getFirstPropertyValue("status") === "CANCELLED");
    expect(gone.map(({ uid }) => uid.length > 75)).toEqual([true, true, true]);
  });

  test("leaves other people's entries, and files that are no calendar, alone", () => {
    expect(read(write(EXAMPLE_PLAN, 2, first.replaceAll("@trug", "@elsewhere")))).toHaveLength(read(first).length);
    expect(entriesOf("not a calendar\r\nEND:VEVENT\r\n")).toEqual([]);
  });

  test("its number grows from day to day, and within a day with each recorded line", () => {
    expect(editionNumber(day("2027-06-11"), 4)).toBe(editionNumber(day("2027-06-10"), 4) + 1);
    expect(editionNumber(day("2027-06-10"), 5)).toBe(editionNumber(day("2027-06-10"), 4) + 1);
    expect(editionNumber(day("1999-01-01"), 0)).toBe(0);
  });
});
