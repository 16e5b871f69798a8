import { raise } from "../../outcome/caution.ts";
import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import type { Problem } from "../../outcome/problem.ts";
import { readCivilDate } from "../civil-date.ts";
import type { DailyTemperature } from "../degree-days.ts";
import { temperatureReadAsCelsius } from "./cautions.ts";

const NAMES = {
  date: /^(date|day)$/,
  minimum: /^(t[ _-]?min|min|minimum|low)(imum)?([ _-]?temp(erature)?)?$/,
  maximum: /^(t[ _-]?max|max|maximum|high)(imum)?([ _-]?temp(erature)?)?$/,
} as const;

/** Colder and warmer than any air that was ever measured: such a number is a mistake of unit or typing. */
const COLDEST = -90;
const WARMEST = 60;

/**
 * Reads daily temperatures from text with a heading: `date,min,max`, fields parted by commas, semicolons or tabs.
 *
 * The heading may carry the unit (`min C`, `tmax_F`); without one the numbers are degrees Celsius, with a note.
 * With semicolons or tabs a decimal comma is understood. An empty field is a gap.
 *
 * @returns Rows in order of date, days without both temperatures left out; or all problems with their lines.
 * @example
 * readWeatherTable("date,min C,max C\n2027-05-01,8,19")  // => [{ minimumCelsius: 8, maximumCelsius: 19 }]
 */
export function readWeatherTable(text: string): Outcome<readonly DailyTemperature[]> {
  const lines = text.replace(/^\uFEFF/, "").split(/\r?\n/);
  const heading = lines.findIndex((line) => line.trim() !== "" && !line.startsWith("#"));
  const parted = [";", "\t", ","].find((sign) => lines[heading]?.includes(sign)) ?? ",";
  const fieldsOf = (line: string): string[] =>
    line.split(parted).map((field) => field.trim().replace(/^"(.*)"$/, "$1"));
  const columns = fieldsOf(lines[heading] ?? "").map(readHeading);
  const at = (what: keyof typeof NAMES): number => columns.findIndex((column) => NAMES[what].test(column.name));
  const [date, minimum, maximum] = [at("date"), at("minimum"), at("maximum")];
  if (date < 0 || minimum < 0 || maximum < 0) return unusable(headingProblem(lines[heading] ?? "", heading));
  const problems: Problem[] = [];
  const rows = new Map<string, DailyTemperature>();
  lines.slice(heading + 1).forEach((line, index) => {
    if (line.trim() === "" || line.startsWith("#")) return;
    const path = `line ${heading + index + 2}`;
    const fields = fieldsOf(line);
    const day = readCivilDate(fields[date] ?? "");
    if (!day.ok) {
      problems.push(...day.problems.map((problem) => ({ ...problem, path })));
      return;
    }
    const low = celsius(fields[minimum], columns[minimum]!.fahrenheit, parted);
    const high = celsius(fields[maximum], columns[maximum]!.fahrenheit, parted);
    if (low === undefined || high === undefined) return;
    if (Number.isNaN(low) || Number.isNaN(high)) problems.push(temperatureProblem(line, path));
    else if (low > high) problems.push(orderProblem(line, path));
    else if (rows.has(day.value)) problems.push(twiceProblem(day.value, path));
    else rows.set(day.value, { date: day.value, minimumCelsius: low, maximumCelsius: high });
  });
  if (problems.length > 0) return unusable(...problems.slice(0, 20));
  const inOrder = [...rows.values()].sort((a, b) => (a.date < b.date ? -1 : 1));
  const unitSaid = columns[minimum]!.unitSaid && columns[maximum]!.unitSaid;
  return answer(inOrder, unitSaid ? [] : [raise(temperatureReadAsCelsius, {})]);
}

function readHeading(field: string): { name: string; fahrenheit: boolean; unitSaid: boolean } {
  const [, name = "", unit] = /^(.*?)[ _([]*(?:°|deg(?:rees)? ?)?([cf]|celsius|fahrenheit)?[)\]]?$/i.exec(field) ?? [];
  return {
    name: name.trim().toLowerCase(),
    fahrenheit: unit?.toLowerCase().startsWith("f") ?? false,
    unitSaid: unit !== undefined,
  };
}

/** Undefined for an empty field, NaN for one that cannot be a temperature. */
function celsius(field: string | undefined, fahrenheit: boolean, parted: string): number | undefined {
  if (field === undefined || field === "" || /^(na|nan|-)$/i.test(field)) return undefined;
  const plain = (parted === "," ? field : field.replace(",", ".")).replace("−", "-");
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) return Number.NaN;
  const value = fahrenheit ? ((Number(plain) - 32) * 5) / 9 : Number(plain);
  return value >= COLDEST && value <= WARMEST ? value : Number.NaN;
}

function headingProblem(line: string, index: number): Problem {
  return {
    code: "weather-heading-unknown",
    path: `line ${Math.max(0, index) + 1}`,
    message: "The weather file does not begin with a heading that names the date, the minimum and the maximum.",
    expected: "date,min C,max C",
    received: line.slice(0, 60) || "nothing",
    hint: "write a first line such as: date,min C,max C",
  };
}

function temperatureProblem(line: string, path: string): Problem {
  return {
    code: "temperature-unusable",
    path,
    message: "This line has a temperature that cannot be.",
    expected: `numbers from ${COLDEST} to ${WARMEST} °C, or an empty field for a gap`,
    received: line.slice(0, 60),
    hint: "check the number, and the unit in the heading (min C or min F)",
  };
}

function orderProblem(line: string, path: string): Problem {
  return {
    code: "temperature-order",
    path,
    message: "The minimum of this day is above its maximum.",
    expected: "a minimum of at most the maximum",
    received: line.slice(0, 60),
    hint: "check whether the columns are exchanged",
  };
}

function twiceProblem(date: string, path: string): Problem {
  return {
    code: "weather-day-twice",
    path,
    message: `${date} stands twice in the weather file.`,
    expected: "each day once",
    received: date,
    hint: "leave one of the two lines out",
  };
}
