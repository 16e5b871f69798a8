import {
  answer,
  type CivilDate,
  effectiveEntries,
  type LogEntry,
  type Outcome,
  type Problem,
  unusable,
} from "nutrient-core";
import type { NewEntry } from "../record/entry-text.ts";

/**
 * The entry that takes a line of the record back.
 *
 * @param line The log's line; the last one that holds where it is left out.
 */
export function undoing(line: string | undefined, entries: readonly LogEntry[], today: CivilDate): Outcome<NewEntry> {
  const holding = effectiveEntries(entries);
  if (line === undefined) {
    const last = holding.at(-1);
    if (last) return answer({ kind: "undone", date: today, undoes: last.id });
    return unusable(
      undoProblem("nothing-to-undo", "Nothing is on record that could be taken back.", "a recorded line", "nothing"),
    );
  }
  const found = entries.find(({ id }) => id === line);
  const lines = holding.map(({ id }) => id).join(", ") || "none";
  if (!found)
    return unusable(
      undoProblem("line-unknown", `Line ${line} of the log is no entry.`, `one of the lines ${lines}`, line),
    );
  const holds = found.kind === "undone" || holding.some(({ id }) => id === line);
  if (!holds)
    return unusable(
      undoProblem("line-undone", `Line ${line} of the log is taken back already.`, `one of the lines ${lines}`, line),
    );
  return answer({ kind: "undone", date: today, undoes: line });
}

function undoProblem(code: string, message: string, expected: string, received: string): Problem {
  return {
    code,
    path: "undo",
    message,
    expected,
    received,
    hint: "the log is a text file: its lines are counted from 1",
  };
}
