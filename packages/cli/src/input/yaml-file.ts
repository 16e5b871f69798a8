import { open } from "node:fs/promises";
import { answer, type Outcome, type Problem, unusable } from "nutrient-core";
import { isNode, LineCounter, parseDocument } from "yaml";

/** Larger than any season's file; a file above it is a mistake, and is not read into memory. */
const LARGEST_BYTES = 2_000_000;

export interface YamlFile {
  readonly document: unknown;
  /** Puts file, line and column before the path of each problem. */
  readonly locate: <T>(outcome: Outcome<T>) => Outcome<T>;
}

/** Reads a YAML file whole, or says what is wrong with it and in which line. `shownAs` is the name the grower used. */
export async function readYamlFile(path: string, shownAs: string): Promise<Outcome<YamlFile>> {
  const text = await readTextFile(path, shownAs, "a YAML file that can be read", LARGEST_BYTES);
  if (!text.ok) return text;
  return readYaml(text.value, shownAs);
}

/** Reads YAML text, or says what is wrong with it and in which line. */
export function readYaml(text: string, shownAs: string): Outcome<YamlFile> {
  const lines = new LineCounter();
  const document = parseDocument(text, {
    lineCounter: lines,
    prettyErrors: false,
    strict: true,
    uniqueKeys: true,
  });
  const at = (offset: number): string => {
    const { line, col } = lines.linePos(offset);
    return `${shownAs}:${line}:${col}`;
  };
  if (document.errors.length > 0) {
    return unusable(
      ...document.errors.map((error) => yamlProblem(error.code, error.message, at(error.pos[0]), text, error.pos[0])),
    );
  }
  let value: unknown;
  try {
    // A bound on aliases: a small file must not unfold into a huge one.
    value = document.toJS({ maxAliasCount: 100 });
  } catch {
    return unusable(yamlProblem("ALIASES", "the file repeats its parts too often", `${shownAs}:1:1`, "", 0));
  }
  const place = (dotted: string): string => {
    const keys = [...dotted.matchAll(/[^.[\]]+/g)].map(([key]) => (/^\d+$/.test(key) ? Number(key) : key));
    for (let depth = keys.length; depth > 0; depth--) {
      const node: unknown = document.getIn(keys.slice(0, depth), true);
      if (isNode(node) && node.range) return at(node.range[0]);
    }
    return `${shownAs}:1:1`;
  };
  const locate = <T>(outcome: Outcome<T>): Outcome<T> => {
    if (outcome.ok) return outcome;
    return unusable(
      ...outcome.problems.map((problem) => ({ ...problem, path: `${place(problem.path)} ${problem.path}`.trim() })),
    );
  };
  return answer({ document: value, locate });
}

/** Reads a text file whole, if it is one and not larger than `largestBytes`. */
export async function readTextFile(
  path: string,
  shownAs: string,
  expected: string,
  largestBytes: number,
): Promise<Outcome<string>> {
  const cannot = (code: string, message: string, received: string, hint: string): Outcome<never> =>
    unusable({ code, path: shownAs, message, expected, received, hint });
  try {
    const file = await open(path, "r");
    try {
      const stat = await file.stat();
      if (stat.isDirectory())
        return cannot("file-is-folder", `${shownAs} is a folder, not a file.`, "a folder", "name the file in it");
      if (stat.size > largestBytes) {
        return cannot(
          "file-too-large",
          `${shownAs} is far larger than such a file needs to be.`,
          `${Math.round(stat.size / 1e6)} MB`,
          "check that it is the right file",
        );
      }
      const text = await file.readFile("utf8");
      if (text.includes("\u0000"))
        return cannot("file-not-text", `${shownAs} is not a text file.`, "bytes that are no text", "name a text file");
      return answer(text.replace(/^\uFEFF/, ""));
    } finally {
      await file.close();
    }
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === "ENOENT" || code === "ENOTDIR") {
      return cannot(
        "file-missing",
        `${shownAs} is not there.`,
        "no file of this name",
        "check the name and the folder",
      );
    }
    if (code === "EACCES" || code === "EPERM") {
      return cannot(
        "file-not-permitted",
        `${shownAs} may not be read.`,
        "no permission",
        "give yourself permission to read it",
      );
    }
    return cannot("file-unreadable", `${shownAs} cannot be read.`, String(code ?? error), "check the file");
  }
}

function yamlProblem(code: string, message: string, path: string, text: string, offset: number): Problem {
  const line = text.slice(text.lastIndexOf("\n", offset - 1) + 1).split("\n")[0] ?? "";
  const isTab = /tab/i.test(message) || /^\s*\t/.test(line);
  return {
    code: code === "DUPLICATE_KEY" ? "yaml-key-twice" : isTab ? "yaml-tab" : "yaml-unreadable",
    path,
    message: isTab
      ? "This line is indented with a tab; YAML takes spaces only."
      : `The YAML does not read: ${message.split("\n")[0]}.`.replace("..", "."),
    expected: "YAML",
    received: line.trim().slice(0, 60) || "a file of this form",
    hint: isTab ? "replace the tab by two spaces" : "check the indentation, quotes and colons of this line",
  };
}
