import { type CivilDate, dateOfDay, dayNumber, readCivilDate } from "./civil-date.ts";
import { type DailyTemperature, degreeDays, type Thresholds } from "./degree-days.ts";

/** Gaps of up to so many days are filled by the mean of their two neighbours. */
const FILLED_GAP_DAYS = 7;
/** So many recorded days, the latest, stand for days to come where no earlier year is on record. */
const RECENT_DAYS = 14;
/** Nothing in a plant takes longer than this. */
const LONGEST_DAYS = 500;

/** Degree days of each day, for one way the weather may go. */
export interface WarmthScenario {
  /** What stands for the days to come: an earlier year's weather, or the latest days going on. */
  readonly basis: "earlier-year" | "recent-days";
  /** Undefined where it cannot say. */
  readonly on: (day: number) => number | undefined;
}

/** Warmth outdoors as it was, and as it may go on: one scenario for each earlier year on record. */
export function warmthScenarios(weather: readonly DailyTemperature[], thresholds: Thresholds): WarmthScenario[] {
  const known = warmthByDay(weather, thresholds);
  if (known.size === 0) return [];
  const days = [...known.keys()];
  const [first, last] = [days[0]!, days.at(-1)!];
  const recorded = (day: number): number | undefined => known.get(day);
  const years = Number(dateOfDay(last).slice(0, 4)) - Number(dateOfDay(first).slice(0, 4));
  const scenarios: WarmthScenario[] = [];
  for (let back = 1; back <= years + LONGEST_DAYS / 365; back += 1) {
    // A year that ends before a whole one was recorded cannot stand for the days to come.
    if (last - 365 * back < first) break;
    scenarios.push({
      basis: "earlier-year",
      on: remembered(
        (day) => recorded(day) ?? recorded(yearsBefore(day, back)) ?? recorded(yearsBefore(day, back + 1)),
      ),
    });
  }
  if (scenarios.length > 0) return scenarios;
  const latest = days.slice(-RECENT_DAYS).map((day) => known.get(day)!);
  const mean = latest.reduce((sum, one) => sum + one, 0) / latest.length;
  return [{ basis: "recent-days", on: (day) => recorded(day) ?? (day > last ? mean : undefined) }];
}

/** Each day is worked out once: a thousand plantings ask for the same days. */
function remembered(on: WarmthScenario["on"]): WarmthScenario["on"] {
  const known = new Map<number, number | undefined>();
  return (day) => {
    if (!known.has(day)) known.set(day, on(day));
    return known.get(day);
  };
}

function warmthByDay(weather: readonly DailyTemperature[], thresholds: Thresholds): Map<number, number> {
  const known = new Map<number, number>();
  let before: { day: number; warmth: number } | undefined;
  for (const row of weather) {
    const day = dayNumber(row.date);
    const warmth = degreeDays(row.minimumCelsius, row.maximumCelsius, thresholds);
    if (before && day - before.day - 1 <= FILLED_GAP_DAYS) {
      for (let missing = before.day + 1; missing < day; missing += 1) known.set(missing, (before.warmth + warmth) / 2);
    }
    known.set(day, warmth);
    before = { day, warmth };
  }
  return known;
}

/** The same day of the calendar some years before; 29 February becomes the 28th where there is none. */
function yearsBefore(day: number, years: number): number {
  const date = dateOfDay(day);
  const moved = `${String(Number(date.slice(0, 4)) - years).padStart(4, "0")}${date.slice(4)}`;
  const read = readCivilDate(moved);
  return read.ok ? dayNumber(read.value) : dayNumber(`${moved.slice(0, 8)}28` as CivilDate);
}

/** Plants under cover: the warmth of each day there, up to and including the last one. */
export interface Indoors {
  readonly warmth: number;
  readonly until: number;
}

/** Degree days of one day, under cover or outdoors; undefined where the scenario cannot say. */
export function warmthOn(scenario: WarmthScenario, day: number, indoors: Indoors | undefined): number | undefined {
  return indoors && day <= indoors.until ? indoors.warmth : scenario.on(day);
}

/**
 * The day on which so much warmth has come together, counted from the day after `from`.
 *
 * @param indoors Left out for what grows outdoors.
 * @returns Undefined where the scenario has no weather for a day before that.
 */
export function dayOfWarmth(
  scenario: WarmthScenario,
  from: number,
  amount: number,
  indoors?: Indoors,
): number | undefined {
  let sum = 0;
  for (let day = from; day < from + LONGEST_DAYS; day += 1) {
    if (sum >= amount) return day;
    const warmth = warmthOn(scenario, day + 1, indoors);
    if (warmth === undefined) return undefined;
    sum += warmth;
  }
  return undefined;
}
