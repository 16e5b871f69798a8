import type { CautionKind } from "../../outcome/caution.ts";

export const weatherGaps: CautionKind<{ readonly days: number; readonly spans: readonly string[] }> = {
  code: "weather-gaps",
  severity: "note",
  source: "common-practice",
  sentence: ({ days, spans }) =>
    `The weather record has no usable minimum and maximum for ${days} ${days === 1 ? "day" : "days"} (${spans.join(", ")}). Gaps of up to a week are filled between their neighbours.`,
};

export const temperatureReadAsCelsius: CautionKind<Record<string, never>> = {
  code: "temperature-read-as-celsius",
  severity: "note",
  source: "common-practice",
  sentence: () =>
    'The weather file names no unit: its temperatures were read as degrees Celsius. Write the unit into the heading, such as "min F".',
};
