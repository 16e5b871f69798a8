import { describe, expect, test } from "vitest";
import { EXAMPLE_PLAN } from "../../nutrient-core/src/season/testing/example-plan.ts";
import { seasonCsv } from "../src/render/season-csv.ts";

/** Reads a table as any spreadsheet does: quotes hold commas, line breaks and doubled quotes. */
function cellsOf(csv: string): string[][] {
  const rows: string[][] = [[]];
  for (const [, quoted, plain = "", end = ""] of csv
    .replace(/^\uFEFF/, "")
    .matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/g)) {
    rows.at(-1)!.push(quoted === undefined ? plain : quoted.replaceAll('""', '"'));
    if (end !== ",") rows.push([]);
  }
  return rows.slice(0, -1);
}

const evil = (name: string) => ({
  ...EXAMPLE_PLAN,
  events: EXAMPLE_PLAN.events.map((event) => ({ ...event, planting: name })),
  reminders: EXAMPLE_PLAN.reminders.map((reminder) => ({ ...reminder, text: name })),
});

describe("the season as a table", () => {
  const [head, ...rows] = cellsOf(seasonCsv(EXAMPLE_PLAN));
  const column = (name: string): number => head!.indexOf(name);

  test("has a row for each product of each feed and each reminder, as wide as its heading, by date", () => {
    const products = EXAMPLE_PLAN.events.reduce((sum, { amounts }) => sum + amounts.length, 0);
    expect(rows).toHaveLength(products + EXAMPLE_PLAN.reminders.length);
    expect(rows.filter(({ length }) => length !== head!.length)).toEqual([]);
    const dates = rows.map((row) => row[column("date")]!);
    expect(dates).toEqual([...dates].sort());
  });

  test("its masses add up to the plan's, digit by digit", () => {
    const grams = rows.reduce((sum, row) => sum + Number(row[column("mass_grams")]), 0);
    const planned = EXAMPLE_PLAN.events.flatMap(({ amounts }) => amounts).reduce((sum, a) => sum + a.massGrams, 0);
    expect(grams).toBe(planned);
  });

  test("begins with the mark that tells spreadsheets the encoding, and ends its lines as RFC 4180 says", () => {
    const csv = seasonCsv(EXAMPLE_PLAN);
    expect(csv.startsWith("\uFEFFdate,")).toBe(true);
    expect(csv.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  });
});

describe("texts that a spreadsheet would run", () => {
  // The ways a cell begins a formula or a command in common spreadsheets (OWASP, "CSV injection").
  test.each([
    '=HYPERLINK("http://example.org","x")',
    "+1+1",
    "-2+3",
    "@SUM(A1)",
    "\t=1+1",
    "\r=1+1",
    "\uff1d1+1",
    "=cmd|' /C calc'!A0",
  ])("%j begins with an apostrophe", (name) => {
    const cells = cellsOf(seasonCsv(evil(name))).flat();
    expect(cells.filter((cell) => /^\s*[=+\-@\uff1d]/.test(cell))).toEqual([]);
    expect(cells.some((cell) => cell.startsWith("'"))).toBe(true);
  });

  test.each(["pots;=1+1", "pots\t+1+1", 'pots";=1+1', "pots,@SUM(A1)", "pots|-1", "a\n=1"])(
    "%j stays harmless where columns are parted at another sign",
    (name) => {
      const csv = seasonCsv(evil(name));
      for (const sign of [";", "\t", "|", ","]) {
        const pieces = csv.split(/\r?\n/).flatMap((line) => line.split(sign));
        expect(
          pieces.map((piece) => piece.replace(/^"+/, "")).filter((piece) => /^\s*[=+@]|^\s*-\D/.test(piece)),
        ).toEqual([]);
      }
    },
  );

  test("numbers stay numbers, below zero too", () => {
    const plan = {
      ...EXAMPLE_PLAN,
      events: EXAMPLE_PLAN.events.map((event) => ({ ...event, deliveredPpm: { N: -1.5 } })),
    };
    expect(cellsOf(seasonCsv(plan)).flat()).toContain("-1.5");
  });
});
