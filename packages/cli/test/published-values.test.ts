import { afterAll, describe, expect, test } from "vitest";
import { runCli } from "../src/run-cli.ts";
import {
  inPrintedUnit,
  judge,
  loadNotRun,
  loadPublished,
  loadReferenceIds,
  loadSources,
  readValue,
} from "./support/published.ts";

/** Published values, run against the command as a person runs it. The data and its rules are in test-data/README.md. */

const topics = loadPublished();
const cases = [...topics.values()].flat();
const sources = loadSources();

async function answerOf(run: readonly string[]): Promise<unknown> {
  let out = "";
  let err = "";
  const code = await runCli([...run, "--json"], {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    env: {},
    // Folders without a shelf: a grower's own products must not answer here.
    cwd: import.meta.dirname,
    home: import.meta.dirname,
    isTerminal: false,
    columns: 100,
    now: () => new Date(0),
  });
  if (code !== 0) throw new Error(`trug ${run.join(" ")} ended with ${code}: ${err}`);
  return JSON.parse(out);
}

interface Row {
  topic: string;
  cases: number;
  traps: number;
  checks: number;
  sources: number;
  worstShareOfTolerance: number;
  worstCase: string;
}

const rows = new Map<string, Row>();

for (const [topic, published] of topics) {
  const row: Row = { topic, cases: 0, traps: 0, checks: 0, sources: 0, worstShareOfTolerance: 0, worstCase: "" };
  rows.set(topic, row);
  row.sources = new Set(published.map(({ source }) => source)).size;
  describe(`published ${topic}`, () => {
    for (const entry of published) {
      test(`${entry.id}: ${entry.printed} (${entry.source}, ${entry.locator})`, async () => {
        const document = await answerOf(entry.run);
        const verdicts = entry.checks.map((check) => judge(check, document));
        row.cases += 1;
        row.traps += entry.kind === "trap" ? 1 : 0;
        for (const verdict of verdicts) {
          row.checks += 1;
          if (verdict.shareOfTolerance > row.worstShareOfTolerance) {
            row.worstShareOfTolerance = verdict.shareOfTolerance;
            row.worstCase = entry.id;
          }
        }
        expect(verdicts.filter(({ passed }) => !passed).map(({ text }) => text)).toEqual([]);
      });
    }
  });
}

describe("the collection", () => {
  test("every id is used once", () => {
    const ids = cases.map(({ id }) => id);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  });

  test("every case names a source that is on file", () => {
    expect(cases.filter(({ source }) => !(source in sources)).map(({ id, source }) => `${id}: ${source}`)).toEqual([]);
  });

  test("every collected case is either run or listed with a reason, and not both", () => {
    const run = new Set(cases.flatMap(({ covers }) => covers));
    const notRun = loadNotRun();
    const collected = Object.entries(loadReferenceIds()).flatMap(([file, ids]) => ids.map((id) => ({ file, id })));
    const listed = new Map(notRun.map(({ id, file }) => [id, file]));
    expect(collected.filter(({ id, file }) => !run.has(id) && listed.get(id) !== file)).toEqual([]);
    expect(notRun.filter(({ id }) => run.has(id))).toEqual([]);
    const known = new Set(collected.map(({ id }) => id));
    expect([...run, ...listed.keys()].filter((id) => !known.has(id))).toEqual([]);
  });

  test("a remembered value is never the only check of a topic", () => {
    for (const [topic, published] of topics) {
      expect(published.filter(({ status }) => status === "memory").length, topic).toBeLessThan(published.length / 2);
    }
  });
});

describe("the comparison itself", () => {
  const document = { result: { amounts: [{ massGrams: 2 }, { massGrams: 3 }] } };

  test("reads paths and carries out sums from left to right", () => {
    expect(readValue("result.amounts.1.massGrams", document)).toBe(3);
    expect(readValue("result.amounts.0.massGrams + result.amounts.1.massGrams * 10", document)).toBe(50);
    expect(readValue("100 / result.amounts.0.massGrams", document)).toBe(50);
    expect(() => readValue("result.amounts.2.massGrams", document)).toThrow("no number");
    expect(() => readValue("result.amounts", document)).toThrow("no number");
  });

  test("knows only the units that are written down", () => {
    expect(inPrintedUnit(453.59237, "lb")).toBe(1);
    expect(() => inPrintedUnit(1, "stone")).toThrow("stone");
  });

  test("accepts half a place, refuses more, and refuses a reproduced error", () => {
    const agreement = {
      read: "result.amounts.0.massGrams",
      unit: "g",
      printed: 2.5,
      tolerance: 0.5,
      why: "half a place",
    };
    expect(judge(agreement, document).passed).toBe(true);
    expect(judge({ ...agreement, printed: 2.51 }, document).passed).toBe(false);
    const trap = { read: agreement.read, unit: "g", right: 2, notPrinted: 2.05, tolerance: 0.01, why: agreement.why };
    expect(judge(trap, document).passed).toBe(true);
    expect(judge({ ...trap, notPrinted: 2.005 }, document).passed).toBe(false);
  });
});

afterAll(() => {
  const run = new Set(cases.flatMap(({ covers }) => covers)).size;
  const table = [...rows.values()].map((row) => ({
    ...row,
    worstShareOfTolerance: Number(row.worstShareOfTolerance.toFixed(3)),
  }));
  // biome-ignore lint/suspicious/noConsole: the totals are the point of this run.
  console.table(table);
  const used = new Set(cases.map(({ source }) => source));
  const byAuthority = ["A", "B", "C"].map(
    (letter) => `${[...used].filter((id) => sources[id]?.authority === letter).length} ${letter}`,
  );
  const checks = cases.reduce((sum, { checks }) => sum + checks.length, 0);
  // biome-ignore lint/suspicious/noConsole: as above.
  console.log(
    `${cases.length} cases, ${checks} checks, ${used.size} sources (authority ${byAuthority.join(", ")}); ` +
      `${run} collected ids run, ${loadNotRun().length} listed as not run`,
  );
});
