import { term, type WorkingLine } from "../outcome/working.ts";
import { type CivilDate, dateOfDay, dayNumber } from "./civil-date.ts";
import type { DateRange } from "./season-plan.ts";
import { dayOfWarmth, type Indoors, type WarmthScenario, warmthOn } from "./warmth.ts";

/** Days on which so much warmth has come together, over all the ways in which the weather may go. */
export interface WarmthRange extends DateRange {
  /** The likely day's warmth, day by day, as a line of working. */
  readonly working: (label: string, source: string | null) => WorkingLine;
}

/**
 * When so much warmth has come together: the earliest day over all scenarios for the least amount, the latest for the
 * most, and for the likely amount the day that stands in the middle.
 *
 * @param from The day it counts from, itself perhaps a range.
 * @param indoors Of seedlings under cover.
 * @returns Undefined where no scenario reaches that far.
 */
export function warmthRange(
  scenarios: readonly WarmthScenario[],
  from: DateRange,
  [least, likely, most]: readonly [number, number, number],
  indoors: Indoors | undefined,
): WarmthRange | undefined {
  const reached = (start: CivilDate, amount: number) =>
    scenarios
      .flatMap((scenario) => {
        const day = dayOfWarmth(scenario, dayNumber(start), amount, indoors);
        return day === undefined ? [] : [{ day, scenario }];
      })
      .sort((a, b) => a.day - b.day);
  const early = reached(from.earliest, least)[0];
  const middle = reached(from.likely, likely);
  const late = reached(from.latest, most).at(-1);
  const central = middle[Math.floor((middle.length - 1) / 2)];
  if (!early || !central || !late) return undefined;
  return {
    earliest: dateOfDay(early.day),
    likely: dateOfDay(central.day),
    latest: dateOfDay(late.day),
    working: (label, source) => sumLine(label, source, central.scenario, dayNumber(from.likely), central.day, indoors),
  };
}

/** Runs of like days are written once: a house under cover is as warm on every day. */
function sumLine(
  label: string,
  source: string | null,
  scenario: WarmthScenario,
  from: number,
  until: number,
  indoors: Indoors | undefined,
): WorkingLine {
  const runs: { warmth: number; days: number }[] = [];
  let value = 0;
  for (let day = from + 1; day <= until; day += 1) {
    const warmth = warmthOn(scenario, day, indoors)!;
    value += warmth;
    const last = runs.at(-1);
    if (last && last.warmth === warmth) last.days += 1;
    else runs.push({ warmth, days: 1 });
  }
  const sum = runs.map(({ warmth, days }) => (days === 1 ? term(warmth) : `${days} * ${term(warmth)}`)).join(" + ");
  return { label, expression: sum === "" ? "0" : sum, value, unit: "", source };
}
