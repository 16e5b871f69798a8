import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { daysBetween } from "../civil-date.ts";
import { answered } from "../testing/demo.ts";
import { readWeather } from "./read-weather.ts";

const file = (name: string): string =>
  readFileSync(new URL(`../../../../../test-data/weather/${name}`, import.meta.url), "utf8");
const codes = (text: string): string[] => {
  const read = readWeather(text);
  return read.ok ? [] : read.problems.map(({ code, path }) => `${code} at ${path}`);
};

describe("a table with a heading", () => {
  test("commas, semicolons with decimal commas, tabs; any order of columns; units from the heading", () => {
    const [row] = answered(readWeather("date,min C,max C\n2027-05-01,8.5,19")).rows;
    expect(row).toEqual({ date: "2027-05-01", minimumCelsius: 8.5, maximumCelsius: 19 });
    expect(answered(readWeather("Date;Tmax (°C);Tmin (°C)\n2027-05-01;19;8,5")).rows).toEqual([row]);
    expect(
      answered(readWeather('"date"\t"low F"\t"high F"\n"2027-05-01"\t"47.3"\t"66.2"')).rows[0]!.maximumCelsius,
    ).toBe(19);
    expect(answered(readWeather("\uFEFF# note\r\ndate,tmin_c,tmax_c\r\n\r\n2027-05-01,8.5,19\r\n")).rows).toEqual([
      row,
    ]);
  });

  test("no unit is read as Celsius, and said", () => {
    const read = readWeather("date,min,max\n2027-05-01,8,19");
    expect(read.ok && read.cautions.map(({ code }) => code)).toEqual(["temperature-read-as-celsius"]);
  });

  test("rows are put in order; empty fields and missing days are gaps that are named", () => {
    const read = readWeather("date,min C,max C\n2027-05-06,1,2\n2027-05-01,8,19\n2027-05-02,,19\n2027-05-03,9,NA");
    expect(answered(read).rows.map(({ date }) => date)).toEqual(["2027-05-01", "2027-05-06"]);
    expect(answered(read).gaps).toEqual([{ from: "2027-05-02", to: "2027-05-05", days: 4 }]);
    expect(read.ok && read.cautions[0]!.message).toContain("4 days (2 May 2027 to 5 May 2027)");
  });

  test("what cannot be is told with its line, all at once", () => {
    expect(codes("date,min C,max C\n2027-02-30,1,2\n2027-05-01,80,90\n2027-05-02,9,8\n2027-05-03,x,9")).toEqual([
      "date-unreadable at line 2",
      "temperature-unusable at line 3",
      "temperature-order at line 4",
      "temperature-unusable at line 5",
    ]);
    expect(codes("date,min C,max C\n2027-05-01,1,2\n2027-05-01,1,2")).toEqual(["weather-day-twice at line 3"]);
    expect(codes("day,rain\n2027-05-01,3")).toEqual(["weather-heading-unknown at line 1"]);
    expect(codes("")).toEqual(["weather-heading-unknown at line 1"]);
    expect(codes("date,min C,max C\n2027-05-01,,")).toEqual(["weather-empty at "]);
  });

  test("the courtyard's file, with its three empty days", () => {
    const { rows, gaps } = answered(readWeather(file("courtyard.csv")));
    expect(gaps.map(({ from, days }) => [from, days])).toEqual([
      ["2026-07-03", 2],
      ["2027-05-09", 1],
    ]);
    expect(rows).toHaveLength(daysBetween(rows[0]!.date, rows.at(-1)!.date) + 1 - 3);
  });
});

describe("the fixed layout of the open daily records", () => {
  test("tenths of a degree, a missing day, a failed check, a leap day, over a year's end", () => {
    const { rows, gaps, station } = answered(readWeather(file("southern.dly")));
    expect(station).toBe("XX000000001");
    expect(rows[0]).toMatchObject({ date: "2027-12-01", maximumCelsius: 23.6 });
    expect(rows.some(({ date }) => date === "2028-02-29")).toBe(true);
    // 2028-01-10 is -9999, and the minimum of 2028-02-03 has the flag of a failed check.
    expect(gaps).toEqual([
      { from: "2028-01-10", to: "2028-01-10", days: 1 },
      { from: "2028-02-03", to: "2028-02-03", days: 1 },
    ]);
    expect(rows).toHaveLength(31 + 31 + 29 + 31 - 2);
  });

  test("two stations, or a line that is not laid out so, are told", () => {
    const line = file("southern.dly").split("\n")[0]!;
    expect(codes(`${line}\n${line.replace("XX000000001", "XX000000002")}`)).toEqual(["weather-stations-mixed at "]);
    expect(codes(`${line}\nsomething else`)).toEqual(["weather-line-unreadable at line 2"]);
    expect(codes(line.replace("  236", "  2x6"))).toEqual(["weather-line-unreadable at line 1"]);
  });
});
