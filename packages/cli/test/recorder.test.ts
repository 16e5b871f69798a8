import { spawn } from "node:child_process";
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { appendLines } from "../src/record/append-lines.ts";
import { linesOf, sealed } from "../src/record/log-line.ts";
import { writeWhole } from "../src/record/write-whole.ts";

const folder = mkdtempSync(join(tmpdir(), "trug-recorder-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** 500 kills with TRUG_FULL=1; fewer in everyday runs. */
const KILLS = process.env["TRUG_FULL"] === "1" ? 500 : 30;
const writer = join(folder, "writer.mjs");
beforeAll(async () => {
  await build({
    entryPoints: [join(import.meta.dirname, "support/writer.ts")],
    outfile: writer,
    bundle: true,
    format: "esm",
    platform: "node",
    conditions: ["trug-source"],
    logLevel: "error",
  });
});

/** When a writer is killed: so many milliseconds after its first acknowledgement, or after it was started. */
interface Kill {
  readonly after: "acknowledgement" | "start";
  readonly milliseconds: number;
}

/** Runs a writer to its end, or kills it. Returns what it acknowledged. */
async function runWriter(path: string, name: string, how: { count?: number; kill?: Kill }): Promise<string[]> {
  const { count, kill } = how;
  const child = spawn(process.execPath, [writer, path, name, ...(count === undefined ? [] : [String(count)])]);
  const killSoon = (): void => {
    setTimeout(() => child.kill("SIGKILL"), kill!.milliseconds);
  };
  let said = "";
  child.stdout.setEncoding("utf8");
  child.stdout.on("data", (text: string) => {
    if (said === "" && kill?.after === "acknowledgement") killSoon();
    said += text;
  });
  if (kill?.after === "start") killSoon();
  await new Promise((resolve) => child.on("close", resolve));
  return said.split("\n").slice(0, -1);
}

const entriesIn = (path: string) => linesOf(readFileSync(path, "utf8"));
const wholeTexts = (path: string) => entriesIn(path).flatMap((line) => (line.whole ? [line.text] : []));

describe("the recorder killed and hurried", () => {
  test(`killed at ${KILLS} random moments, two writers at once: every acknowledged line is there, and none is torn`, async () => {
    const path = join(folder, "killed.log");
    const acknowledged: string[] = [];
    // Fixed seed, so that a failure can be looked at again; the moment itself is the machine's.
    const moments = fc.sample(fc.double({ min: 0, max: 12, noNaN: true }), { numRuns: KILLS, seed: 20260601 });
    for (let i = 0; i < KILLS; i += 2) {
      const both = await Promise.all([
        runWriter(path, `w${i}`, { kill: { after: "acknowledgement", milliseconds: moments[i]! } }),
        // Around the time in which a process comes up and writes its first line.
        runWriter(path, `w${i + 1}`, { kill: { after: "start", milliseconds: 30 + 5 * moments[i + 1]! } }),
      ]);
      acknowledged.push(...both.flat());
    }
    const present = new Set(wholeTexts(path));
    expect(acknowledged.length).toBeGreaterThanOrEqual(KILLS / 2);
    // An acknowledged entry ends in spaces when its filling is empty; the log keeps it trimmed.
    expect(acknowledged.filter((entry) => !present.has(entry.trim()))).toEqual([]);
    expect(entriesIn(path).filter(({ whole }) => !whole)).toEqual([]);
    expect(readFileSync(path, "utf8").endsWith("\n")).toBe(true);
  }, 600_000);

  test("two writers that finish: each line once, in each writer's order", async () => {
    const path = join(folder, "two.log");
    const [a, b] = await Promise.all([runWriter(path, "a", { count: 150 }), runWriter(path, "b", { count: 150 })]);
    const texts = wholeTexts(path);
    expect(texts).toHaveLength(300);
    expect(texts.filter((text) => text.includes(" a-"))).toEqual(a.map((text) => text.trim()));
    expect(texts.filter((text) => text.includes(" b-"))).toEqual(b.map((text) => text.trim()));
  }, 60_000);
});

describe("a log cut off in the middle of a line", () => {
  test("keeps every line before the cut, counts none that is not whole, and takes further lines", async () => {
    const path = join(folder, "cut.log");
    const entries = ["2026-06-01 fed 3 cans", "2026-06-08 note Blüte, 🌶", "2026-06-14 fed 4 cans"];
    const full = Buffer.from(entries.map((entry) => `${sealed(entry)}\n`).join(""));
    for (let length = 0; length <= full.length; length++) {
      writeFileSync(path, full.subarray(0, length));
      const before = wholeTexts(path);
      // A line counts from its last letter on, with or without the break after it.
      const ends = entries.map(
        (_, i) =>
          Buffer.byteLength(
            entries
              .slice(0, i + 1)
              .map((e) => `${sealed(e)}\n`)
              .join(""),
          ) - 1,
      );
      expect(before).toEqual(entries.slice(0, ends.filter((end) => end <= length).length));
      const added = await appendLines(path, ["2026-06-20 observed first flower", "2026-06-21 fed"], "cut.log");
      expect(added.ok).toBe(true);
      expect(wholeTexts(path)).toEqual([...before, "2026-06-20 observed first flower", "2026-06-21 fed"]);
      expect(readFileSync(path).subarray(0, length)).toEqual(full.subarray(0, length));
    }
  });
});

describe("a line of the log", () => {
  test("comes back as it went in, whatever is written in it, on one line", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 80 }), (text) => {
        const entry = `2026-06-01 note ${text}`;
        const line = sealed(entry);
        expect(line).not.toMatch(/[\r\n]/);
        const [read] = linesOf(line);
        expect(read).toMatchObject({ whole: true, number: 1 });
        expect(read!.text.replace(/\s/g, "")).toBe(entry.replace(/\s/g, ""));
      }),
    );
  });

  test("cannot be made two by what is written in it", () => {
    for (const breaking of ["\n", "\r\n", "\r", "\u2028", "\n\n"]) {
      const forged = sealed(`2026-06-01 note a${breaking}2026-06-02 fed`);
      expect(linesOf(forged)).toEqual([{ whole: true, number: 1, text: "2026-06-01 note a 2026-06-02 fed" }]);
    }
  });

  test("a changed letter is noticed", () => {
    const line = sealed("2026-06-01 fed 3 cans");
    expect(linesOf(line.replace("3", "8"))).toEqual([{ whole: false, number: 1, text: line.replace("3", "8") }]);
  });

  test("headings and blank lines are nothing, yet count as lines", () => {
    expect(linesOf(`# heading\n\n${sealed("2026-06-01 fed")}\r\n`)).toEqual([
      { whole: true, number: 3, text: "2026-06-01 fed" },
    ]);
  });
});

describe("a file written whole", () => {
  test("replaces what was there, through a link, with the same permissions, and leaves nothing beside it", async () => {
    const inside = join(folder, "whole");
    mkdirSync(inside);
    writeFileSync(join(inside, "real.csv"), "old");
    chmodSync(join(inside, "real.csv"), 0o640);
    symlinkSync("real.csv", join(inside, "link.csv"));
    expect((await writeWhole(join(inside, "link.csv"), "new", "link.csv")).ok).toBe(true);
    expect(readFileSync(join(inside, "real.csv"), "utf8")).toBe("new");
    expect(statSync(join(inside, "real.csv")).mode & 0o777).toBe(0o640);
    expect(readdirSync(inside).sort()).toEqual(["link.csv", "real.csv"]);
  });

  test("does not overwrite when asked for a new file", async () => {
    const path = join(folder, "there.yaml");
    writeFileSync(path, "mine");
    const outcome = await writeWhole(path, "other", "there.yaml", "new");
    expect(outcome).toMatchObject({ ok: false, problems: [{ code: "file-exists", path: "there.yaml" }] });
    expect(readFileSync(path, "utf8")).toBe("mine");
  });

  test("of many that want one new name at once, one gets it", async () => {
    const path = join(folder, "contested.yaml");
    const outcomes = await Promise.all(
      Array.from({ length: 20 }, (_, i) => writeWhole(path, `text ${i}`, "contested.yaml", "new")),
    );
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1);
    expect(readFileSync(path, "utf8")).toBe(`text ${outcomes.findIndex(({ ok }) => ok)}`);
    expect(readdirSync(folder).filter((name) => name.startsWith("."))).toEqual([]);
  });

  test.each([
    ["a folder that is not there", "missing/file.csv"],
    ["a folder's own name", "whole"],
    ["a file taken for a folder", "there.yaml/file.csv"],
  ])("%s is a problem, and nothing is left behind", async (_what, name) => {
    const before = readdirSync(folder);
    const outcome = await writeWhole(join(folder, name), "text", name);
    expect(outcome).toMatchObject({ ok: false, problems: [{ code: "file-not-writable", path: name }] });
    expect(readdirSync(folder)).toEqual(before);
  });

  test("a log in a folder that is not there is a problem", async () => {
    const outcome = await appendLines(join(folder, "missing/season.log"), ["2026-06-01 fed"], "missing/season.log");
    expect(outcome).toMatchObject({ ok: false, problems: [{ code: "log-not-writable" }] });
  });
});
