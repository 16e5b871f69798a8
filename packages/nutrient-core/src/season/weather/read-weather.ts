import { type Caution, raise } from "../../outcome/caution.ts";
import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import { dateInWords } from "../civil-date.ts";
import { weatherGaps } from "./cautions.ts";
import { gapsOf } from "./gaps.ts";
import { readWeatherTable } from "./read-csv.ts";
import { looksLikeGhcnDaily, readGhcnDaily } from "./read-ghcn-daily.ts";
import type { WeatherRecord } from "./weather.ts";

/**
 * Reads a daily weather file's text: a table with a heading, or the fixed layout of the open daily records.
 *
 * @param text The whole file.
 * @returns Its days in order, and the gaps with a note that names them.
 * @example
 * readWeather("date,min C,max C\n2027-05-01,8,19\n2027-05-03,9,20")  // => { gaps: [{ from: "2027-05-02", days: 1 }] }
 */
export function readWeather(text: string): Outcome<WeatherRecord> {
  const cautions: Caution[] = [];
  let record: Omit<WeatherRecord, "gaps">;
  if (looksLikeGhcnDaily(text)) {
    const read = readGhcnDaily(text);
    if (!read.ok) return read;
    record = read.value;
  } else {
    const read = readWeatherTable(text);
    if (!read.ok) return read;
    record = { rows: read.value };
    cautions.push(...read.cautions);
  }
  if (record.rows.length === 0) {
    return unusable({
      code: "weather-empty",
      path: "",
      message: "The weather file holds no day with both a minimum and a maximum.",
      expected: "at least one day",
      received: "none",
      hint: "check that the station measures temperatures",
    });
  }
  const gaps = gapsOf(record.rows);
  if (gaps.length > 0) {
    const spans = gaps
      .slice(0, 5)
      .map(({ from, to }) => (from === to ? dateInWords(from) : `${dateInWords(from)} to ${dateInWords(to)}`));
    const more = gaps.length > 5 ? [`and ${gaps.length - 5} more`] : [];
    const days = gaps.reduce((sum, gap) => sum + gap.days, 0);
    cautions.push(raise(weatherGaps, { days, spans: [...spans, ...more] }));
  }
  return answer({ ...record, gaps }, cautions);
}
