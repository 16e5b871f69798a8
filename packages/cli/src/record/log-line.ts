import { crc32 } from "node:zlib";

/** A line of the log that carries the checksum it was written with. */
export interface WholeLine {
  readonly whole: true;
  /** Counted from 1 over the whole file: lines are only ever added at the end, so it never changes. */
  readonly number: number;
  /** The line without its checksum. */
  readonly text: string;
}

/** A line that is not as it was written: cut off by a crash, or typed by hand. It is kept, and not counted. */
export interface BrokenLine {
  readonly whole: false;
  readonly number: number;
  readonly text: string;
}

export type LogLine = WholeLine | BrokenLine;

/** Everything the log says before its checksum stands on one line: an entry with a line break in it would become two. */
const BREAKS = /[\r\n\u2028\u2029]+/g;

/**
 * One entry as it stands in the log, with its checksum and without a line break.
 *
 * @example
 * sealed("2026-06-01 fed 3 cans")  // => "2026-06-01 fed 3 cans ~5e0bd12f"
 */
export function sealed(entry: string): string {
  const text = entry.replace(BREAKS, " ").trim();
  return `${text} ~${checksum(text)}`;
}

/** Takes a log apart: blank lines and lines that begin with # are for people and say nothing. */
export function linesOf(log: string): LogLine[] {
  return log.split("\n").flatMap((line, index): LogLine[] => {
    const number = index + 1;
    const text = line.trim();
    if (text === "" || text.startsWith("#")) return [];
    const [, entry, sum] = /^(.*) ~([0-9a-f]{8})$/.exec(text) ?? [];
    if (entry !== undefined && checksum(entry) === sum) return [{ whole: true, number, text: entry }];
    return [{ whole: false, number, text }];
  });
}

function checksum(text: string): string {
  return crc32(text).toString(16).padStart(8, "0");
}
