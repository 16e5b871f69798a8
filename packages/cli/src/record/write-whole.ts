import { randomUUID } from "node:crypto";
import { constants, copyFile, link, open, realpath, rename, stat, unlink } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { answer, type Outcome, type Problem, unusable } from "nutrient-core";

/**
 * Writes a file whole or not at all: the text goes to a file beside it, to the disk, and only then takes the name.
 * Whoever reads meanwhile sees the old file or the new one.
 *
 * @param shownAs The name the grower used, for the problem when it cannot be written.
 * @param mode `replace` what stands there, or only write where nothing is (`new`).
 */
export async function writeWhole(
  path: string,
  text: string,
  shownAs: string,
  mode: "replace" | "new" = "replace",
): Promise<Outcome<string>> {
  try {
    const target = mode === "replace" ? await targetOf(path) : path;
    const beside = join(dirname(target), `.${basename(target)}.${randomUUID()}`);
    try {
      await writeToDisk(beside, text, await modeOf(target));
      if (mode === "new") await giveNewName(beside, target);
      else await rename(beside, target);
    } finally {
      await unlink(beside).catch(() => undefined);
    }
    return answer(target);
  } catch (error) {
    return unusable(writeProblem((error as NodeJS.ErrnoException).code ?? String(error), shownAs));
  }
}

/** A link to a file stays a link: what it points to is written. */
async function targetOf(path: string): Promise<string> {
  try {
    return await realpath(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return path;
    throw error;
  }
}

/** A name given by link fails where there is one already, so that two at once cannot overwrite each other either. */
async function giveNewName(from: string, to: string): Promise<void> {
  try {
    await link(from, to);
  } catch (error) {
    // Some disks know no second names for a file.
    if (!["EPERM", "ENOTSUP", "ENOSYS", "EOPNOTSUPP"].includes((error as NodeJS.ErrnoException).code ?? ""))
      throw error;
    await copyFile(from, to, constants.COPYFILE_EXCL);
  }
}

async function modeOf(path: string): Promise<number> {
  const found = await stat(path).catch(() => undefined);
  if (found?.isDirectory()) throw Object.assign(new Error("a folder"), { code: "EISDIR" });
  return found ? found.mode & 0o777 : 0o666;
}

async function writeToDisk(path: string, text: string, mode: number): Promise<void> {
  const file = await open(path, "wx", mode);
  try {
    await file.writeFile(text, "utf8");
    await file.sync();
  } finally {
    await file.close();
  }
}

const REASONS: Readonly<Record<string, readonly [received: string, hint: string]>> = {
  EEXIST: ["a file that is there already", "choose another name; nothing is overwritten"],
  ENOENT: ["a folder that is not there", "make the folder first, or choose another one"],
  ENOTDIR: ["a file where a folder is named", "check the path"],
  EISDIR: ["a folder", "add a file name to it"],
  EACCES: ["no permission", "choose a folder that you may write to"],
  EPERM: ["no permission", "choose a folder that you may write to"],
  EROFS: ["a disk that cannot be written to", "choose another disk"],
  ENOSPC: ["a disk that is full", "free some space"],
};

function writeProblem(code: string, shownAs: string): Problem {
  const [received, hint] = REASONS[code] ?? [code, "choose another file"];
  return {
    code: code === "EEXIST" ? "file-exists" : "file-not-writable",
    path: shownAs,
    message: `${shownAs} was not written.`,
    expected: "a file name in a folder that may be written to",
    received,
    hint,
  };
}
