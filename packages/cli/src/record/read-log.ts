import { readFile } from "node:fs/promises";
import { answer, type Caution, type LogEntry, type Outcome, unusable } from "nutrient-core";
import { readEntry } from "./entry-text.ts";
import { linesOf } from "./log-line.ts";

/** The record as it stands in its file. */
export interface SeasonLog {
  readonly entries: readonly LogEntry[];
  /** Every line that was ever written whole; it only grows. */
  readonly lines: number;
}

/** Reads a log; where there is none, nothing was recorded yet. Lines that are not whole are kept in it, not counted, and told. */
export async function readLog(path: string, shownAs: string): Promise<Outcome<SeasonLog>> {
  let text: string;
  try {
    text = await readFile(path, "utf8");
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === "ENOENT") return answer({ entries: [], lines: 0 });
    return unusable({
      code: "log-unreadable",
      path: shownAs,
      message: `${shownAs} cannot be read, and without it nothing can be planned.`,
      expected: "the season's log",
      received: code ?? String(error),
      hint: "give yourself permission to read it, or name another file in the season file under log",
    });
  }
  const entries: LogEntry[] = [];
  const cautions: Caution[] = [];
  const lines = linesOf(text);
  for (const line of lines) {
    const entry = line.whole ? readEntry(String(line.number), line.text) : undefined;
    if (entry?.ok) entries.push(entry.value);
    else cautions.push(notCounted(shownAs, line.number, line.text));
  }
  return answer({ entries, lines: lines.length }, cautions);
}

/** A line cut off by a crash was never acknowledged, and one changed by hand may say anything: neither may steer a feed. */
function notCounted(file: string, line: number, text: string): Caution {
  const said = text.length > 60 ? `${text.slice(0, 57)}...` : text;
  return {
    code: "log-line-not-counted",
    severity: "caution",
    facts: { file, line, said },
    message: `Line ${line} of ${file} is not as it was written, and is not counted: "${said}". If it was yours, record it again.`,
    source: "common-practice",
  };
}
