import { term, type WorkingLine } from "../outcome/working.ts";
import type { CivilDate } from "./civil-date.ts";

/** A day's lowest and highest air temperature, °C. */
export interface DailyTemperature {
  readonly date: CivilDate;
  readonly minimumCelsius: number;
  readonly maximumCelsius: number;
}

/** Between these temperatures a crop develops in step with the warmth; above the upper one no faster. */
export interface Thresholds {
  readonly lowerCelsius: number;
  /** Where left out, warmth counts without end. */
  readonly upperCelsius?: number;
}

/**
 * How a day's warmth is worked out.
 * `single-sine`: the area between the thresholds under one sine through the day's minimum and maximum.
 * `average`: the mean of the two, less the lower threshold.
 * `clamped-average`: the same after both were moved between the thresholds.
 */
export type DegreeDayMethod = "single-sine" | "average" | "clamped-average";

/**
 * Degree days of one day: how much warmth a crop can use of it, with a horizontal cutoff at the upper threshold.
 *
 * @param minimum, maximum Of the day, in one scale (°C, or °F with thresholds in °F); minimum at most maximum.
 * @returns Degree days of that scale, 0 or more. Sources: single sine `baskerville-emin-1969`, `snyder-single-sine`;
 *   averages `msu-growing-degree-days`, `isu-growing-degree-days`.
 * @example
 * degreeDays(10, 20, { lowerCelsius: 10 }, "average")  // => 5
 */
export function degreeDays(
  minimum: number,
  maximum: number,
  { lowerCelsius: lower, upperCelsius: upper = Number.POSITIVE_INFINITY }: Thresholds,
  method: DegreeDayMethod = "single-sine",
): number {
  if (method === "single-sine") {
    return areaAbove(lower, minimum, maximum) - areaAbove(upper, minimum, maximum);
  }
  const inside = (value: number): number => Math.min(Math.max(value, lower), upper);
  const mean = method === "average" ? (minimum + maximum) / 2 : (inside(minimum) + inside(maximum)) / 2;
  return Math.min(Math.max(0, mean - lower), upper - lower);
}

/** The area over one day between a threshold and the part of the day's sine that lies above it. */
function areaAbove(threshold: number, minimum: number, maximum: number): number {
  const mean = (minimum + maximum) / 2;
  if (minimum >= threshold) return mean - threshold;
  if (maximum <= threshold) return 0;
  const amplitude = (maximum - minimum) / 2;
  const crossing = Math.asin((threshold - mean) / amplitude);
  return ((mean - threshold) * (Math.PI / 2 - crossing) + amplitude * Math.cos(crossing)) / Math.PI;
}

/** The working of {@link degreeDays} by the single sine. */
export function degreeDaysWorking(day: DailyTemperature, thresholds: Thresholds): WorkingLine {
  const { minimumCelsius: minimum, maximumCelsius: maximum } = day;
  const { lowerCelsius: lower, upperCelsius: upper } = thresholds;
  const above = areaExpression(lower, minimum, maximum);
  return {
    label: `degree days of ${day.date}`,
    expression: upper === undefined ? above : `${above} - ${areaExpression(upper, minimum, maximum)}`,
    value: degreeDays(minimum, maximum, thresholds),
    unit: "",
    source: "baskerville-emin-1969",
  };
}

function areaExpression(threshold: number, minimum: number, maximum: number): string {
  const mean = `(${term(minimum)} + ${term(maximum)}) / 2`;
  if (minimum >= threshold) return `(${mean} - ${term(threshold)})`;
  if (maximum <= threshold) return "0";
  const amplitude = `(${term(maximum)} - ${term(minimum)}) / 2`;
  const crossing = `asin((${term(threshold)} - ${mean}) / (${amplitude}))`;
  return `(((${mean} - ${term(threshold)}) * (pi / 2 - ${crossing}) + ${amplitude} * cos(${crossing})) / pi)`;
}
