import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import type { Problem } from "../../outcome/problem.ts";
import { type CivilDate, readCivilDate } from "../civil-date.ts";
import type { DailyTemperature } from "../degree-days.ts";

const MISSING = "-9999";
const LINE = /^([A-Z]{2}[A-Z0-9_-]{9})(\d{4})(\d{2})([A-Z0-9]{4})/;

/** Whether the text is laid out like the open daily records: station, year, month and element at fixed columns. */
export function looksLikeGhcnDaily(text: string): boolean {
  return LINE.test(text);
}

/**
 * Reads the fixed layout of the open Global Historical Climatology Network daily files (`.dly`), as they come.
 *
 * One line per station, month and element: columns 1-11 station, 12-15 year, 16-17 month, 18-21 element, and then
 * 31 times a value (5), a measurement flag, a quality flag and a source flag. TMIN and TMAX are tenths of a degree
 * Celsius, -9999 is missing, and a quality flag means that the value failed a check: it counts as missing too.
 *
 * @returns Rows in order of date, days without both temperatures left out. Source: `ghcn-daily-readme`.
 */
export function readGhcnDaily(text: string): Outcome<{ rows: readonly DailyTemperature[]; station: string }> {
  const lowest = new Map<CivilDate, number>();
  const highest = new Map<CivilDate, number>();
  const problems: Problem[] = [];
  const stations = new Set<string>();
  text.split(/\r?\n/).forEach((line, index) => {
    if (line.trim() === "") return;
    const head = LINE.exec(line);
    if (!head) {
      problems.push(lineProblem(line, index));
      return;
    }
    const [, station, year, month, element] = head as unknown as [string, string, string, string, string];
    stations.add(station);
    if (element !== "TMIN" && element !== "TMAX") return;
    const days = element === "TMIN" ? lowest : highest;
    for (let day = 1; day <= 31; day += 1) {
      const start = 21 + (day - 1) * 8;
      const value = line.slice(start, start + 5).trim();
      const qualityFlag = line.slice(start + 6, start + 7).trim();
      if (value === "" || value === MISSING || qualityFlag !== "") continue;
      const date = readCivilDate(`${year}-${month}-${String(day).padStart(2, "0")}`);
      if (!/^-?\d+$/.test(value) || !date.ok) problems.push(lineProblem(line, index));
      else days.set(date.value, Number(value) / 10);
    }
  });
  if (stations.size > 1) problems.push(stationsProblem([...stations]));
  if (problems.length > 0) return unusable(...problems.slice(0, 20));
  const rows = [...lowest.keys()]
    .filter((date) => highest.has(date) && lowest.get(date)! <= highest.get(date)!)
    .sort()
    .map((date) => ({ date, minimumCelsius: lowest.get(date)!, maximumCelsius: highest.get(date)! }));
  return answer({ rows, station: [...stations][0] ?? "" });
}

function lineProblem(line: string, index: number): Problem {
  return {
    code: "weather-line-unreadable",
    path: `line ${index + 1}`,
    message: "This line does not have the fixed columns of a daily weather file.",
    expected: "station (11), year (4), month (2), element (4), then 31 values with their flags (8 each)",
    received: line.slice(0, 40),
    hint: "use the station's file as it was downloaded, without editing its columns",
  };
}

function stationsProblem(stations: readonly string[]): Problem {
  return {
    code: "weather-stations-mixed",
    path: "",
    message: "The weather file holds more than one station.",
    expected: "one station",
    received: stations.slice(0, 4).join(", "),
    hint: "keep the lines of the nearest station only",
  };
}
