import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays, dateInWords, dateOfDay, dayNumber, daysBetween, readCivilDate } from "./civil-date.ts";
import { day } from "./testing/demo.ts";

/** Every day of the calendar here, 1900-01-01 to 2199-12-31. */
const [FIRST, LAST] = [dayNumber(day("1900-01-01")), dayNumber(day("2199-12-31"))];
const anyDay = fc.integer({ min: FIRST, max: LAST });

describe("reading", () => {
  test.each(["2027-05-14", "2028-02-29", "2000-02-29", "1999-12-31"])("%s is a day", (text) => {
    expect(readCivilDate(text)).toMatchObject({ ok: true, value: text });
  });

  test.each([
    "2027-02-29",
    "2100-02-29", // a hundredth year without a leap day
    "2027-04-31",
    "2027-13-01",
    "2027-00-10",
    "2027-1-5",
    "14.05.2027",
    "2027-05-14T00:00:00Z",
    "1899-12-31",
    "2200-01-01",
    "",
    "tomorrow",
  ])("%j is none", (text) => {
    const read = readCivilDate(text);
    expect(read.ok).toBe(false);
    expect(!read.ok && read.problems[0]!.code).toBe("date-unreadable");
    expect(!read.ok && read.problems[0]!.hint).not.toBe("");
  });
});

test("in words a day is what the platform's own calendar says", () => {
  const words = new Intl.DateTimeFormat("en-GB", { timeZone: "UTC", day: "numeric", month: "short", year: "numeric" });
  for (let number = FIRST; number <= LAST; number += 13) {
    const date = dateOfDay(number);
    expect(dateInWords(date)).toBe(words.format(new Date(`${date}T00:00:00Z`)));
  }
});

describe("arithmetic", () => {
  test("the Gregorian calendar repeats after 400 years of 146,097 days (by its definition)", () => {
    expect(dayNumber(day("2199-03-01")) - dayNumber(day("1900-03-01"))).toBe(
      // 299 years with 72 leap days: 74 fourth years from 1904 to 2196, less 2100; 2000 is kept.
      299 * 365 + 73,
    );
    expect(dayNumber(day("1970-01-01"))).toBe(0);
    // Julian day number 2,451,545 at noon of 2000-01-01, and 2,440,588 at noon of 1970-01-01 (from memory).
    expect(dayNumber(day("2000-01-01"))).toBe(2_451_545 - 2_440_588);
  });

  test("over leap days and year ends", () => {
    expect(addDays(day("2028-02-28"), 1)).toBe("2028-02-29");
    expect(addDays(day("2027-02-28"), 1)).toBe("2027-03-01");
    expect(addDays(day("2027-12-31"), 1)).toBe("2028-01-01");
    expect(addDays(day("2028-03-01"), -1)).toBe("2028-02-29");
    expect(daysBetween(day("2027-12-25"), day("2028-01-08"))).toBe(14);
  });

  test("property: a second way of counting agrees, day by day", () => {
    // Days of the months, counted on their own: no Date involved.
    const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
    const lengths = (year: number): number[] => [31, isLeap(year) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    let number = FIRST;
    for (let year = 1900; year <= 2199; year += 1) {
      for (const [month, length] of lengths(year).entries()) {
        for (const date of [1, length]) {
          const text = `${year}-${String(month + 1).padStart(2, "0")}-${String(date).padStart(2, "0")}`;
          expect(dateOfDay(number + date - 1)).toBe(text);
          expect(dayNumber(day(text))).toBe(number + date - 1);
        }
        number += length;
      }
    }
    expect(number - 1).toBe(LAST);
  });

  test("property: there and back, and sorting as text sorts by time", () => {
    fc.assert(
      fc.property(anyDay, anyDay, (a, b) => {
        expect(dayNumber(dateOfDay(a))).toBe(a);
        expect(dateOfDay(a) < dateOfDay(b)).toBe(a < b);
        expect(addDays(dateOfDay(a), b - a)).toBe(dateOfDay(b));
        expect(readCivilDate(dateOfDay(a)).ok).toBe(true);
      }),
    );
  });
});
