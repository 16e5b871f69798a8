import { describe, expect, test } from "vitest";
import { gapOf } from "../mix/testing/evaluate.ts";
import { addDays, type CivilDate, dateOfDay, dayNumber } from "./civil-date.ts";
import { cropFacts } from "./crop.ts";
import { type DailyTemperature, degreeDays } from "./degree-days.ts";
import { milestoneCalendar } from "./milestones.ts";
import { planSeason } from "./plan.ts";
import { surroundingsOf } from "./surroundings.ts";
import { answered, day, planting, season } from "./testing/demo.ts";

/** So many years of weather by a rule: `warmth(day of the year, year)` is the minimum, ten degrees below the maximum. */
function weather(from: string, until: string, minimum: (ofYear: number, year: number) => number): DailyTemperature[] {
  const rows: DailyTemperature[] = [];
  for (let number = dayNumber(day(from)); number <= dayNumber(day(until)); number += 1) {
    const date = dateOfDay(number);
    const year = Number(date.slice(0, 4));
    const low = minimum(number - dayNumber(day(`${year}-01-01`)), year);
    rows.push({ date, minimumCelsius: low, maximumCelsius: low + 10 });
  }
  return rows;
}

const FACTS = cropFacts("pepper");
/** A crop that flowers 100, 150 or 200 degree days above 10 °C after setting out. */
const SIMPLE = {
  thresholds: { lowerCelsius: 10 },
  expected: {
    "first-flower": [{ after: "set-out", unit: "degree-days", amounts: [100, 150, 200], source: null }],
  },
} as const;
const POTS = planting({ facts: SIMPLE, setOut: day("2027-05-15") });

const flower = (rows: readonly DailyTemperature[], plants = POTS, today: CivilDate | null = null, raised?: number) =>
  milestoneCalendar(
    surroundingsOf({ weather: rows, ...(raised === undefined ? {} : { raisedAtCelsius: raised }) }),
    plants,
    [],
    today,
  ).dateOf("first-flower");

describe("a flower predicted from warmth", () => {
  test("recorded weather of 10 degree days a day: 10, 15 and 20 days after setting out", () => {
    // 15 to 25 °C: a mean of 20, ten above the threshold.
    const steady = weather("2027-01-01", "2027-12-31", () => 15);
    expect(flower(steady)).toMatchObject({
      earliest: "2027-05-25",
      likely: "2027-05-30",
      latest: "2027-06-04",
      basis: "degree-days",
    });
  });

  test("a gap of up to a week is filled between its neighbours; a longer one stops the prediction", () => {
    const steady = weather("2027-01-01", "2027-12-31", () => 15);
    const without = (from: string, until: string) => steady.filter(({ date }) => date < from || date > until);
    expect(flower(without("2027-05-18", "2027-05-24"))!.likely).toBe("2027-05-30");
    expect(flower(without("2027-05-18", "2027-05-25"))).toBeUndefined();
  });

  test("days to come: each earlier year is one way it may go, and the range spans them", () => {
    // 2025 was warm (15 degree days a day), 2026 cool (5); 2027 is recorded to the day of setting out only.
    const rows = weather("2025-01-01", "2027-05-15", (_, year) => (year === 2025 ? 20 : year === 2026 ? 10 : 15));
    expect(flower(rows)).toMatchObject({
      earliest: addDays(day("2027-05-15"), Math.ceil(100 / 15)),
      latest: addDays(day("2027-05-15"), 200 / 5),
    });
  });

  test("of several earlier years the one in the middle is the likely one", () => {
    const minima: Readonly<Record<number, number>> = { 2024: 25, 2025: 15, 2026: 10 };
    const rows = weather("2024-01-01", "2027-05-15", (_, year) => minima[year] ?? 15);
    // 20, 10 and 5 degree days a day: 150 in 8, 15 and 30 days.
    expect(flower(rows)!.likely).toBe("2027-05-30");
  });

  test("without an earlier year the last two weeks go on, and the plan says so", () => {
    const rows = weather("2027-05-01", "2027-05-20", () => 15);
    expect(flower(rows)!.likely).toBe("2027-05-30");
    const plan = planSeason(season({ plantings: [POTS], weather: rows }));
    expect(plan.ok && plan.cautions.map(({ code }) => code)).toContain("weather-carried-on");
    // All that is needed was recorded: nothing to say.
    const whole = planSeason(season({ plantings: [POTS], weather: weather("2027-05-01", "2027-08-01", () => 15) }));
    expect(whole.ok && whole.cautions.map(({ code }) => code)).not.toContain("weather-carried-on");
  });

  test("weather that cannot be used is said with the reason: no warmth of the house, or days that are missing", () => {
    const rows = weather("2027-01-01", "2027-12-31", () => 15);
    const sown = planting({ sown: day("2027-03-15"), setOut: day("2027-05-15") });
    const missing = (input: Parameters<typeof season>[0]) => {
      const plan = planSeason(season({ plantings: [sown], ...input }));
      if (!plan.ok) throw new Error(plan.problems[0]!.message);
      return plan.cautions.filter(({ code }) => code === "weather-not-used").map(({ facts }) => facts["missing"]);
    };
    expect(missing({ weather: rows })).toEqual(["house"]);
    expect(missing({ weather: rows, raisedAtCelsius: 19 })).toEqual([]);
    expect(missing({ weather: rows.slice(150), raisedAtCelsius: 19 })).toEqual(["days"]);
    expect(missing({ weather: [] })).toEqual([]);
  });

  test("over a year's end and a leap day, in a southern summer", () => {
    const south = planting({ facts: SIMPLE, setOut: day("2027-12-20"), end: day("2028-05-01") });
    const rows = weather("2027-12-01", "2028-04-30", () => 12.5);
    // 7.5 degree days a day: 20 days for 150.
    expect(flower(rows, south)!.likely).toBe("2028-01-09");
    const leap = planting({ facts: SIMPLE, setOut: day("2028-02-15"), end: day("2028-06-01") });
    expect(flower(rows, leap)!.likely).toBe("2028-03-06");
    // From earlier years without that day: 29 February is taken as the 28th.
    const earlier = weather("2025-01-01", "2027-12-31", () => 12.5);
    expect(flower(earlier, leap)!.likely).toBe("2028-03-06");
  });

  test("a second route: the published pepper figures, added up by hand over the demo's kind of weather", () => {
    const rows = weather("2026-01-01", "2027-12-31", (n) => 12 + 8 * Math.sin(((n - 110) / 365) * 2 * Math.PI));
    const plants = planting({ sown: day("2027-03-15"), setOut: day("2027-05-15") });
    const predicted = flower(rows, plants, null, 19)!;
    const [least, likely, most] = FACTS.expected["first-flower"]![0]!.amounts;
    const reached = (amount: number): CivilDate => {
      let [total, at] = [0, day("2027-03-15")];
      while (total < amount) {
        at = addDays(at, 1);
        const row = rows.find(({ date }) => date === at)!;
        const [low, high] = at <= "2027-05-15" ? [19, 19] : [row.minimumCelsius, row.maximumCelsius];
        total += degreeDays(low, high, FACTS.thresholds!);
      }
      return at;
    };
    const input = season({ plantings: [plants], weather: rows, raisedAtCelsius: 19 });
    const plan = planSeason(input);
    const line = plan.ok ? plan.working.find(({ label }) => label.includes("likely first flower")) : undefined;
    // The day's warmth is added up in the order of the days; the sum is the first that reaches the likely figure.
    expect(line!.value).toBeGreaterThanOrEqual(likely);
    expect(line!.value - likely).toBeLessThan(18);
    expect(gapOf(line!)).toBeLessThanOrEqual(1e-12);
    const oneDay = plan.ok
      ? plan.working.find(({ label }) => label === `degree days of ${predicted.likely}`)
      : undefined;
    expect(gapOf(oneDay!)).toBeLessThanOrEqual(1e-12);
    expect(predicted).toMatchObject({ earliest: reached(least), likely: reached(likely), latest: reached(most) });
  });

  test("seedlings raised at an unknown warmth, or no weather at all: days after setting out instead", () => {
    const rows = weather("2026-01-01", "2027-12-31", () => 15);
    const plants = planting({ sown: day("2027-03-15") });
    expect(flower(rows, plants)!.basis).toBe("days");
    expect(flower([], plants, null, 19)!.basis).toBe("days");
    expect(flower(rows, plants, null, 19)!.basis).toBe("degree-days");
  });
});

test("a stage may begin by degree days of its own", () => {
  const base = POTS.programme;
  const programme = {
    ...base,
    stages: [
      { ...base.stages[0]!, begins: { kind: "degree-days-after", milestone: "set-out", degreeDays: 50 } as const },
    ],
  };
  const rows = weather("2027-01-01", "2027-12-31", () => 15);
  const plan = answered(planSeason(season({ plantings: [{ ...POTS, programme }], weather: rows })));
  expect(plan.stages[0]!.begins).toBe("2027-05-20");
  const without = planSeason(season({ plantings: [{ ...POTS, programme }] }));
  expect(!without.ok && without.problems[0]!.code).toBe("stage-without-date");
});
