import { type CivilDate, dateOfDay, dayNumber } from "../civil-date.ts";
import type { DailyTemperature } from "../degree-days.ts";
import type { Gap } from "./weather.ts";

/**
 * The spans of days that are missing between the first and the last of these.
 *
 * @param rows In order of date.
 */
export function gapsOf(rows: readonly DailyTemperature[]): Gap[] {
  const gaps: Gap[] = [];
  let before: CivilDate | undefined;
  for (const { date } of rows) {
    if (before !== undefined) {
      const first = dayNumber(before) + 1;
      const days = dayNumber(date) - first;
      if (days > 0) gaps.push({ from: dateOfDay(first), to: dateOfDay(first + days - 1), days });
    }
    before = date;
  }
  return gaps;
}
