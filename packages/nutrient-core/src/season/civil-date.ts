import { answer, type Outcome, unusable } from "../outcome/outcome.ts";

/**
 * A day of the calendar as `YYYY-MM-DD`: no clock, no time zone. Such texts sort as their days do.
 * Years 1900 to 2199, which is what a garden's records and plans can hold.
 */
export type CivilDate = string & { readonly civilDate: true };

const DAY_MS = 86_400_000;
const FORM = /^(\d{4})-(\d{2})-(\d{2})$/;

/**
 * Reads a day, strictly: the form must be right, and the day must exist.
 *
 * @param text `2028-02-29`.
 * @example
 * readCivilDate("2028-02-29")  // => "2028-02-29"
 */
export function readCivilDate(text: string): Outcome<CivilDate> {
  const match = FORM.exec(text.trim());
  if (!match) return unusable(problem(text, "it is not written as year-month-day", "write for example 2027-05-14"));
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (year < 1900 || year > 2199) {
    return unusable(problem(text, "its year is out of range", "write a year from 1900 to 2199"));
  }
  const date = new Date(Date.UTC(year, month - 1, day));
  // A day that does not exist rolls over into another month: 30 February becomes 1 or 2 March.
  if (date.getUTCMonth() !== month - 1) {
    return unusable(problem(text, "there is no such day", "check the month's length, and the leap year"));
  }
  return answer(text.trim() as CivilDate);
}

/**
 * Days since 1970-01-01; the arithmetic of all dates.
 *
 * Only the universal-time methods of Date are used, so that neither a time zone nor summer time can move a day.
 */
export function dayNumber(date: CivilDate): number {
  return Date.UTC(Number(date.slice(0, 4)), Number(date.slice(5, 7)) - 1, Number(date.slice(8, 10))) / DAY_MS;
}

/** The day of this number. */
export function dateOfDay(day: number): CivilDate {
  return new Date(day * DAY_MS).toISOString().slice(0, 10) as CivilDate;
}

/**
 * The day so many days later, or earlier where the number is negative.
 *
 * @example
 * addDays("2027-12-25", 14)  // => "2028-01-08"
 */
export function addDays(date: CivilDate, days: number): CivilDate {
  return dateOfDay(dayNumber(date) + days);
}

/** How many days from one day to another; negative where the other is earlier. */
export function daysBetween(from: CivilDate, to: CivilDate): number {
  return dayNumber(to) - dayNumber(from);
}

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sept", "Oct", "Nov", "Dec"] as const;

/**
 * A day as a sentence says it, with its year: records and plans run over the turn of one.
 *
 * @example
 * dateInWords("2027-09-18")  // => "18 Sept 2027"
 */
export function dateInWords(date: CivilDate): string {
  return `${Number(date.slice(8))} ${MONTHS[Number(date.slice(5, 7)) - 1]!} ${date.slice(0, 4)}`;
}

function problem(text: string, reason: string, hint: string) {
  return {
    code: "date-unreadable",
    path: "",
    message: `"${text}" is not a date: ${reason}.`,
    expected: "a day as YYYY-MM-DD",
    received: text === "" ? "nothing" : text,
    hint,
  };
}
