import {
  answer,
  type CivilDate,
  type LogEntry,
  type Outcome,
  planSeason,
  type QuantityReader,
  unusable,
} from "nutrient-core";
import type { Options } from "../command.ts";
import type { SeasonFile } from "../input/season-file.ts";
import { appendLines } from "../record/append-lines.ts";
import { entryText, type NewEntry, readEntry } from "../record/entry-text.ts";
import { readLog } from "../record/read-log.ts";
import { entriesFor } from "./season-record.ts";
import { undoing } from "./season-undo.ts";

/** A line that was added to the record. */
export interface Recorded {
  readonly line: string;
  readonly told: string;
}

/**
 * Puts on record what the options say: first what is taken back, then what happened, in the order it was said.
 * Nothing is written unless all of it can be.
 *
 * @returns The new lines, as they stand in the log and as they are told to people.
 */
export async function recordAll(
  { input, log }: SeasonFile,
  options: Options,
  today: CivilDate,
  quantity: QuantityReader,
): Promise<Outcome<readonly Recorded[]>> {
  const undo = options["undo"];
  const said = (options["record"] ?? []) as readonly string[];
  if (undo === undefined && said.length === 0) return answer([]);
  const before = await readLog(log.path, log.shownAs);
  if (!before.ok) return before;
  const entries = [...before.value.entries];
  const added: NewEntry[] = [];
  const add = (entry: NewEntry): void => {
    added.push(entry);
    // Not its number in the file, which is given by the writing; here it only must be one of its own.
    entries.push({ ...entry, id: `new-${added.length}` } as LogEntry);
  };
  if (undo !== undefined) {
    const undone = undoing(typeof undo === "string" ? undo : undefined, entries, today);
    if (!undone.ok) return undone;
    add(undone.value);
  }
  for (const words of said) {
    const plan = planSeason(input, entries, today);
    if (!plan.ok) return plan;
    const meant = entriesFor(words, { input, plan: plan.value, entries, today, quantity });
    if (!meant.ok) return meant;
    meant.value.forEach(add);
  }
  // What is recorded must be plannable: a line that cannot be used would stand in the way of every plan after it.
  const plan = planSeason(input, entries, today);
  if (!plan.ok) return unusable(...plan.problems.map((problem) => ({ ...problem, path: `record ${problem.path}` })));
  const texts = added.map(entryText);
  for (const text of texts) {
    if (!readEntry("0", text).ok) throw new Error(`a line that cannot be read back: ${text}`);
  }
  const appended = await appendLines(log.path, texts, log.shownAs);
  if (!appended.ok) return appended;
  return answer(added.map((entry, index) => ({ line: texts[index]!, told: told(entry, before.value.entries) })));
}

/** What was recorded, without the figures that are there for the next plan; of an undo, what it took back. */
function told(entry: NewEntry, earlier: readonly LogEntry[]): string {
  const short = (text: string): string => text.replace(/ nutrient-grams=.*$/, "");
  if (entry.kind !== "undone") return `Recorded: ${short(entryText(entry))}`;
  const undone = earlier.find(({ id }) => id === entry.undoes)!;
  return `Took back line ${entry.undoes}: ${short(entryText(undone))}`;
}
