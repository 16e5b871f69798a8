import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import { answer, type Caution, type CivilDate, type Outcome, type SeasonInput, type SeasonPlan } from "nutrient-core";
import type { Options } from "../command.ts";
import type { Io } from "../io.ts";
import { writeWhole } from "../record/write-whole.ts";

/** What the files are made from. */
export interface Planned {
  readonly input: SeasonInput;
  readonly plan: SeasonPlan;
  readonly cautions: readonly Caution[];
  readonly today: CivilDate;
  /** Lines of the record: with each of them the calendar's edition goes up. */
  readonly recordedLines: number;
}

/** A file that was written, and what it is. */
export interface Written {
  readonly kind: "table" | "calendar" | "sheet";
  readonly file: string;
}

/** Writes the files that were asked for, each whole or not at all; what one is made with is loaded only then. */
export async function writeOutputs(planned: Planned, options: Options, io: Io): Promise<Outcome<readonly Written[]>> {
  const { input, plan, cautions } = planned;
  const habit = options["units"] === "us" ? "us" : "metric";
  const written: Written[] = [];
  const jobs: readonly (readonly [kind: Written["kind"], file: unknown, make: (path: string) => Promise<string>])[] = [
    ["table", options["csv"], async () => (await import("../render/season-csv.ts")).seasonCsv(plan)],
    ["calendar", options["calendar"], (path) => calendarText(planned, path, io.now(), habit)],
    [
      "sheet",
      options["sheet"],
      async () => (await import("../render/sheet/sheet.ts")).seasonSheet(input, plan, cautions, habit),
    ],
  ];
  for (const [kind, file, make] of jobs) {
    if (typeof file !== "string") continue;
    const path = resolve(io.cwd, file);
    const outcome = await writeWhole(path, await make(path), file);
    if (!outcome.ok) return outcome;
    written.push({ kind, file });
  }
  return answer(written);
}

/** The calendar that replaces the one at this path: entries that fell away since are called off in it. */
async function calendarText(
  { input, plan, today, recordedLines }: Planned,
  path: string,
  stamp: Date,
  habit: "us" | "metric",
): Promise<string> {
  const { editionNumber, seasonCalendar } = await import("../render/season-calendar.ts");
  const { entriesOf } = await import("../render/season-calendar-earlier.ts");
  // A file that cannot be read is written anew, or its problem is told when it is written.
  const earlier = entriesOf(await readFile(path, "utf8").catch(() => ""));
  return seasonCalendar(input, plan, { stamp, sequence: editionNumber(today, recordedLines), earlier }, habit);
}
