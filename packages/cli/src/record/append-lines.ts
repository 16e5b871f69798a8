import { type FileHandle, open } from "node:fs/promises";
import { dirname } from "node:path";
import { answer, type Outcome, type Problem, unusable } from "nutrient-core";
import { sealed } from "./log-line.ts";

/** What a person reads who opens a new log. */
const HEADING = `# What was done and seen this season. Lines are only added, by \`trug season FILE --record\`;
# a mistake is taken back by another line (\`--undo\`). The mark at each line's end shows that it is whole.
`;

const NO_PERMISSION = ["no permission", "give yourself permission to write there"] as const;
const REASONS: Readonly<Record<string, readonly [received: string, hint: string]>> = {
  EACCES: NO_PERMISSION,
  EPERM: NO_PERMISSION,
  EROFS: ["a disk that cannot be written to", "keep the log on another disk"],
  ENOSPC: ["a disk that is full", "free some space"],
  EISDIR: ["a folder", "name a file for the log"],
  ENOENT: ["a folder that is not there", "make the folder first"],
};

/** A line may come out of a shared folder damaged; so often it is written again before giving up. */
const ATTEMPTS = 3;

/**
 * Adds entries at the end of the log, each whole or not at all, and returns only when all are safely there.
 *
 * They go to the disk in a single write to a file opened for appending: two writers cannot mix their lines,
 * and a crash leaves at most one unfinished line at the end, which no reader counts and the next writer closes.
 * Nothing that stands in the file is ever read into memory and written back.
 *
 * @param path The log; it is begun where there is none.
 * @param entries What is to be recorded, without checksums.
 */
export async function appendLines(
  path: string,
  entries: readonly string[],
  shownAs: string,
): Promise<Outcome<readonly string[]>> {
  const lines = entries.map(sealed);
  try {
    for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
      if (await appendOnce(path, lines)) return answer(lines);
    }
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? String(error);
    return unusable(cannotRecord(shownAs, ...(REASONS[code] ?? [code, "keep the log in another folder"])));
  }
  return unusable(
    cannotRecord(shownAs, "a damaged line", "keep the log on a disk of this computer, then record it again"),
  );
}

/** One go: true when all lines can be read back whole. */
async function appendOnce(path: string, lines: readonly string[]): Promise<boolean> {
  const file = await open(path, "a+");
  try {
    const { size } = await file.stat();
    const start = size === 0 ? HEADING : (await endsWithBreak(file, size)) ? "" : "\n";
    const bytes = Buffer.from(`${start}${lines.join("\n")}\n`, "utf8");
    const { bytesWritten } = await file.write(bytes);
    await file.sync();
    if (size === 0) await syncFolder(dirname(path));
    return bytesWritten === bytes.length && (await contains(file, size, lines));
  } finally {
    await file.close();
  }
}

async function endsWithBreak(file: FileHandle, size: number): Promise<boolean> {
  const { buffer } = await file.read(Buffer.alloc(1), 0, 1, size - 1);
  return buffer[0] === 0x0a;
}

/** Whether the lines stand in what was added since the file had this size, by us or by others meanwhile. */
async function contains(file: FileHandle, size: number, lines: readonly string[]): Promise<boolean> {
  const { size: now } = await file.stat();
  if (now <= size) return false;
  const { buffer, bytesRead } = await file.read(Buffer.alloc(now - size), 0, now - size, size);
  const added = new Set(buffer.subarray(0, bytesRead).toString("utf8").split("\n"));
  return lines.every((line) => added.has(line));
}

/** A new file's name is safe only when its folder is on the disk too; some systems cannot, and need not. */
async function syncFolder(path: string): Promise<void> {
  try {
    const folder = await open(path, "r");
    try {
      await folder.sync();
    } finally {
      await folder.close();
    }
  } catch (error) {
    if (!["EISDIR", "EPERM", "EINVAL", "EACCES", "ENOTSUP"].includes((error as NodeJS.ErrnoException).code ?? ""))
      throw error;
  }
}

function cannotRecord(shownAs: string, received: string, hint: string): Problem {
  return {
    code: "log-not-writable",
    path: shownAs,
    message: `Nothing was recorded: ${shownAs} cannot be added to.`,
    expected: "a log that can be added to",
    received,
    hint,
  };
}
