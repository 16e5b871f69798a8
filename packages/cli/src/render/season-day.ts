import type { CivilDate } from "nutrient-core";

/** The words of a day, whatever the language of the machine: a civil date is shown in universal time, which has no summer. */
const WORDS = {
  short: new Intl.DateTimeFormat("en-GB", { timeZone: "UTC", weekday: "short", day: "numeric", month: "short" }),
  long: new Intl.DateTimeFormat("en-GB", {
    timeZone: "UTC",
    weekday: "long",
    day: "numeric",
    month: "long",
    year: "numeric",
  }),
  plain: new Intl.DateTimeFormat("en-GB", { timeZone: "UTC", day: "numeric", month: "short" }),
} as const;

/** Midnight in universal time of a civil date: what scales and formatters of dates take. */
export function asInstant(date: CivilDate): Date {
  return new Date(`${date}T00:00:00Z`);
}

/** "Sat 12 Jun", "Saturday 12 June 2027" or "12 Jun". */
export function dayText(date: CivilDate, form: keyof typeof WORDS = "short"): string {
  return WORDS[form]
    .formatToParts(asInstant(date))
    .filter(({ type }) => type !== "literal")
    .map(({ value }) => value)
    .join(" ");
}

/** "15 Jun to 4 Jul", or the one day. */
export function spanText(from: CivilDate, to: CivilDate): string {
  return from === to ? dayText(from) : `${dayText(from, "plain")} to ${dayText(to, "plain")}`;
}
