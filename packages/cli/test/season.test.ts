import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ICAL from "ical.js";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { type Ran, runTrug } from "./support/run.ts";

/** The season command from the words to the files, on the courtyard's season and on seasons of our own. */
const TEST_DATA = join(import.meta.dirname, "../../../test-data");
const root = mkdtempSync(join(tmpdir(), "trug-season-"));
afterAll(() => rmSync(root, { recursive: true, force: true }));

let folder = "";
let count = 0;
beforeEach(() => {
  folder = join(root, String(count++));
  for (const name of ["courtyard", "weather"]) cpSync(join(TEST_DATA, name), join(folder, name), { recursive: true });
  rmSync(join(folder, LOG), { force: true });
});

const FILE = "courtyard/season.yaml";
const LOG = "courtyard/season.log";
const TODAY = ["--today", "2027-06-10"];
const run = (...words: string[]): Promise<Ran> => runTrug(["season", ...words], { cwd: folder });
const read = (name: string): string => readFileSync(join(folder, name), "utf8");

interface Event {
  readonly id: string;
  readonly date: string;
  readonly planting: string;
  readonly stage: string;
  readonly status: string;
  readonly cans: number;
  readonly amounts: readonly { readonly product: string; readonly massGrams: number }[];
  readonly deliveredPpm: Readonly<Record<string, number>>;
}
interface Document {
  readonly command: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly result: {
    readonly events: readonly Event[];
    readonly totals: {
      readonly cans: number;
      readonly products: readonly { product: string; massGrams: number }[];
      readonly harvestedGrams: number;
    };
    readonly shopping: readonly {
      product: string;
      neededGrams: number;
      stockGrams: number;
      boughtGrams: number;
      leftoverGrams: number;
    }[];
    readonly budget: readonly unknown[];
    readonly stages: readonly { planting: string; id: string; begins: string; provisional: boolean }[];
    readonly recorded: readonly string[];
    readonly comparison?: readonly {
      id: string;
      feeds: number;
      gramsPerPlant: Record<string, number>;
      recorded: object;
      cost?: number;
    }[];
  };
  readonly cautions: readonly { code: string; severity: string; message: string; source: string }[];
  readonly working: readonly unknown[];
}
async function json(...words: string[]): Promise<Document> {
  const ran = await run(...words, "--json");
  expect(ran.err).toBe("");
  expect(ran.code).toBe(0);
  return JSON.parse(ran.out) as Document;
}
async function problem(...words: string[]): Promise<{ code: string; path: string }> {
  const ran = await run(...words, "--json");
  expect([ran.code, ran.out]).toEqual([2, ""]);
  return (JSON.parse(ran.err) as { error: { code: string; path: string } }).error;
}

describe("the courtyard's season", () => {
  test("--json has the contract's fields, and what goes into the cans is what the totals and the order say", async () => {
    const { command, result, working } = await json(FILE, ...TODAY);
    expect(command).toBe("season");
    expect(result.events.length).toBeGreaterThan(10);
    expect(working.length).toBeGreaterThan(0);
    expect(result.budget.length).toBeGreaterThan(0);
    for (const { date, stage, cans, amounts, deliveredPpm } of result.events) {
      expect(date).toMatch(/^2027-\d\d-\d\d$/);
      expect(stage).not.toBe("");
      expect(Number.isInteger(cans)).toBe(true);
      expect(amounts.length).toBeGreaterThan(0);
      expect(deliveredPpm["N"]).toBeGreaterThan(0);
    }
    expect(result.totals.products.length).toBeGreaterThan(1);
    for (const { product, massGrams } of result.totals.products) {
      const inCans = result.events.flatMap(({ amounts }) => amounts).filter((amount) => amount.product === product);
      const sum = inCans.reduce((grams, amount) => grams + amount.massGrams, 0);
      // Sums in another order: rounding of doubles only.
      expect(Math.abs(sum - massGrams)).toBeLessThanOrEqual(1e-12 * massGrams);
      const { neededGrams, stockGrams, boughtGrams, leftoverGrams } = result.shopping.find(
        (line) => line.product === product,
      )!;
      expect(Math.abs(stockGrams + boughtGrams - leftoverGrams - neededGrams)).toBeLessThanOrEqual(1e-9);
    }
  });

  test("the screen: the day, today, next, stage, limits, what to buy; cautions under it", async () => {
    const { out, code } = await run(FILE, ...TODAY);
    expect(code).toBe(0);
    const lines = out.split("\n");
    expect(lines[0]).toContain("Thursday 10 June 2027");
    const at = (start: string): number => lines.findIndex((line) => line.startsWith(start));
    const order = ["Today ", "Next ", "Stage ", "Limits", "Buy ", "Take care: "].map(at);
    expect(order.every((line) => line > 0)).toBe(true);
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(lines[at("Next ")]).toContain("Sat 12 Jun");
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(80);
    // A glance is one screen: everything before the cautions.
    expect(at("Take care: ")).toBeLessThanOrEqual(24);
    // What begins on one day stands under that day, and what goes on to a second line under its own text.
    expect(lines[at("Next ") + 1]).toMatch(/^ {19}3 cans for beds, each 10 L with 5 g leafy feed/);
    expect(lines.filter((line) => line.includes("Sat 12 Jun"))).toHaveLength(1);
  });

  test("notes are short on the screen and whole with --all; what keeps from harm is never shortened", async () => {
    const { cautions } = await json(FILE, ...TODAY);
    const flat = ({ out }: Ran): string => out.replace(/\s+/g, " ");
    const [glance, whole] = [flat(await run(FILE, ...TODAY)), flat(await run(FILE, ...TODAY, "--all"))];
    for (const { message } of cautions) expect(whole).toContain(message);
    for (const { code, severity, message } of cautions) {
      if (severity !== "note" || ["runoff", "leaching"].includes(code)) expect(glance).toContain(message);
    }
    expect(glance).not.toContain("Against it:");
    expect(glance).toContain("These notes in full, and each feed: --all.");
    expect(whole).not.toContain("These notes in full");
    expect(glance + whole).not.toMatch(/\d{4}-\d\d-\d\d/);
  });

  test("a miss that the mix makes says which part is the mix's, in figures that add up", async () => {
    const { cautions, result } = await json(FILE, ...TODAY);
    const beds = cautions.find(({ message }) => message.startsWith("beds, building the frame: K2O"))!;
    const [, total, can, mix] = /comes to (\d+) mg\/L instead of 200 \(can (\d+), mix (\d+)\)/.exec(beds.message)!;
    expect(Number(total)).toBe(Number(can) + Number(mix));
    const feed = result.events.find(({ planting, stage }) => planting === "beds" && stage === "leaf")!;
    expect(Number(can)).toBe(Math.round(feed.deliveredPpm["K2O"]!));
    // By hand: 2 beds of 864 L, 40 g K2O in a cubic metre over 120 days, 14 of them, in 3 cans of 10 L.
    expect(Number(mix)).toBe(Math.round(((2 * 0.864 * 40 * 14) / 120 / 30) * 1000));
  });

  test("on the day of a feed it stands under today, the day after no more", async () => {
    const todayLine = async (day: string): Promise<string> => {
      const { out } = await run(FILE, "--today", day);
      return /^Today (.*(?:\n {7}.*)*)/m.exec(out)![1]!;
    };
    expect(await todayLine("2027-06-12")).toContain("8 g leafy feed");
    expect(await todayLine("2027-06-11")).not.toContain("leafy feed");
    expect(await todayLine("2027-06-13")).not.toContain("leafy feed");
  });

  test("--all adds every feed; US units say gallons and ounces", async () => {
    const { result } = await json(FILE, ...TODAY);
    const { out } = await run(FILE, ...TODAY, "--all");
    const days = new Set(result.events.map(({ date }) => date));
    expect(out.split("\n").filter((line) => /^ {2}\w{3} \d/.test(line)).length).toBeGreaterThanOrEqual(days.size);
    const us = await run(FILE, ...TODAY, "--units", "us");
    expect(us.out).toMatch(/cans for pots, each 2\.64 US gal with [\d.]+ oz \(\d+ g\) leafy\s+feed/);
  });

  test("a glance stays one with very many beds: the first are named, the cans of all are told; --all names them all", async () => {
    const bed = (n: number): string =>
      `  - {name: bed ${n}, fill: bed 1 m x 2 m x 30 cm, plants: 10, end: 2027-10-0${n}}\n`;
    const beds = [1, 2, 3, 4, 5, 6].map(bed).join("");
    writeFileSync(join(folder, FILE), read(FILE).replace(/^places:\n(?: .*\n)+/m, `places:\n${beds}`));
    const flat = async (...more: string[]): Promise<string> =>
      (await run(FILE, ...TODAY, ...more)).out.replace(/\s+/g, " ");
    const glance = await flat();
    expect(glance).toMatch(
      /1 can for bed 1, 1 can for bed 2, 1 can for bed 3 and so on for 3 more, 6 cans together, each/,
    );
    expect(glance).toContain("bed 1, bed 2, bed 3 and 3 more: Look for the first open flower");
    expect(await flat("--all")).toContain("1 can for bed 5, 1 can for bed 6, each 10 L");
  });

  test("a number without its unit is refused with the remedy", async () => {
    writeFileSync(join(folder, FILE), read(FILE).replace("can: 10 L", "can: 10"));
    const { err, code } = await run(FILE, ...TODAY);
    expect(code).toBe(2);
    expect(err.replace(/\s+/g, " ")).toContain('give a quantity its unit, such as "10 L"');
  });

  test("before the season, on its last day and after it", async () => {
    expect((await run(FILE, "--today", "2027-01-01")).out).toContain("Next   Thu 11 Mar");
    expect((await run(FILE, "--today", "2027-06-30")).out).toContain("(last day)");
    expect((await run(FILE, "--today", "2027-10-10")).out).toContain("Next   nothing more this season");
    // Long overdue: no day is expected any more.
    expect((await run(FILE, "--today", "2027-08-01")).out).toMatch(/first flower expected\s+by 13 Jul, not seen yet/);
    const after = await run(FILE, "--today", "2028-03-01");
    expect(after.code).toBe(0);
    expect(after.out).toContain("nothing more this season");
  });

  test("the day is the clock's where none is named, and a day that does not exist is a problem", async () => {
    const { inputs } = JSON.parse(
      (await runTrug(["season", FILE, "--json"], { cwd: folder, now: new Date(2027, 6, 1, 23, 59) })).out,
    ) as Document;
    expect(inputs["today"]).toBe("2027-07-01");
    expect(await problem(FILE, "--today", "2027-02-29")).toMatchObject({ path: "--today" });
  });

  test("--compare: the season under each programme, in what it gives and costs", async () => {
    const { result } = await json(FILE, ...TODAY, "--compare");
    expect(result.comparison!.length).toBeGreaterThan(2);
    for (const { gramsPerPlant, feeds, cost } of result.comparison!) {
      expect(feeds).toBeGreaterThan(0);
      expect(gramsPerPlant["N"]).toBeGreaterThan(0);
      expect(cost).toBeGreaterThan(0);
    }
    expect((await run(FILE, ...TODAY, "--compare")).out).toContain("two-phase");
  });

  test("--compare begins with the season as planned, and counts the record in every line", async () => {
    const { result } = await json(FILE, ...TODAY, "--record", "fed 3 cans in pots 2027-06-01", "--compare");
    const [first, ...others] = result.comparison!;
    expect([first!.id, first!.feeds]).toEqual(["as-planned", result.events.length]);
    for (const { recorded } of [first!, ...others]) expect(recorded).toEqual({ ...first!.recorded, feeds: 1, cans: 3 });
    const { out } = await run(FILE, ...TODAY, "--compare");
    expect(out).toMatch(/^On record, and counted in each of these: 1 feed, 3 cans: N /);
    expect(out).toContain("\nas planned: leaf first, then flower and fruit (common practice, no source)\n");
    expect(out.replace(/\s+/g, " ")).toMatch(/two-phase: .*? 18 feeds, \d+ of the other 17 as wanted/);
  });

  test("--compare of own stages for a crop whose flowering nothing tells: the programmes that need it are named", async () => {
    const own = read(FILE)
      .replace("crop: sweet pepper", "crop: tomato")
      .replace("programme: two-phase", "stages: [{name: steady, begins: set out, target: N 120 ppm}]")
      .replace(/stageProducts:\n(?: .*\n)+/, "")
      .replace("log: season.log", "log: own.log");
    writeFileSync(join(folder, "courtyard/own.yaml"), own);
    const { out, code } = await run("courtyard/own.yaml", ...TODAY, "--compare");
    expect(code).toBe(0);
    expect(out).toContain("as planned: own stages (your own)");
    expect(out.replace(/\s+/g, " ")).toContain('Note: "two-phase" is not among the programmes compared.');
  });

  test("a mix by its recipe: its compost is counted, said and worked out", async () => {
    const mixed = read(FILE).replace(/ {2}brings: .*/, "  recipe: compost 1, perlite 1, coir 1");
    writeFileSync(join(folder, "courtyard/mixed.yaml"), mixed);
    const { out, code } = await run("courtyard/mixed.yaml", ...TODAY, "--working");
    expect(code).toBe(0);
    expect(out.replace(/\s+/g, " ")).toContain("Note: The mix is counted with N 131 g/m3, reckoned from its recipe");
    expect(out).toContain("a cubic metre of the mix: dry compost in the mix:");
    expect(out).toContain("beds: N from the mix for each plant:");
  });
});

describe("recording", () => {
  test("a feed: the plan's own amounts for every planting due, and the next one counts from it", async () => {
    const before = await json(FILE, "--today", "2027-06-13");
    const after = await json(FILE, "--today", "2027-06-13", "--record", "fed");
    const given = after.result.events.filter(({ status }) => status === "given");
    expect(given.map(({ planting, date }) => `${planting} ${date}`)).toEqual(["pots 2027-06-13", "beds 2027-06-13"]);
    for (const { planting, amounts, cans } of given) {
      const planned = before.result.events.find((event) => event.planting === planting && event.status === "planned")!;
      expect([cans, amounts.map(({ massGrams }) => massGrams)]).toEqual([
        planned.cans,
        planned.amounts.map(({ massGrams }) => massGrams),
      ]);
    }
    expect(after.result.events.find(({ status }) => status === "planned")!.date).toBe("2027-06-27");
    // The same words again do not count twice.
    expect(await problem(FILE, "--today", "2027-06-13", "--record", "fed")).toMatchObject({
      code: "already-recorded",
      path: "--record",
    });
    const again = await json(FILE, "--today", "2027-06-13", "--record", "fed again 1 can in pots");
    expect(again.result.recorded).toHaveLength(1);
  });

  test("a slip of the pen is kept, and told at once beside what the plan gives", async () => {
    const { out, code } = await run(FILE, ...TODAY, "--record", "fed 2000 cans in pots");
    expect(code).toBe(0);
    expect(read(LOG)).toContain("cans=2000 ");
    expect(out.replace(/\s+/g, " ")).toContain(
      'Take care: pots: line 3 of the record (10 Jun 2027) says 2000 cans of 10 L, where the plan for "building the frame" gives 2 of 10 L (1000 times)',
    );
    const { cautions, result } = await json(FILE, ...TODAY, "--undo", "--record", "fed 2 cans in pots");
    expect(cautions.map((caution) => caution.code)).not.toContain("recorded-feed-large");
    expect(result.events.find(({ status }) => status === "given")!.cans).toBe(2);
  });

  test("a feed other than the planned one, in spoons and grams", async () => {
    const { result } = await json(
      FILE,
      ...TODAY,
      "--record",
      "fed 3 cans each 2 g saltpetre + 1 metric tsp leafy-feed in pots 2027-06-01",
    );
    const [given] = result.events.filter(({ status }) => status === "given");
    expect(given).toMatchObject({ planting: "pots", date: "2027-06-01", cans: 3 });
    // 5 mL of 1.05 kg/L in each of three cans; rounding of doubles only.
    expect(given!.amounts[0]).toEqual({ ...given!.amounts[0], product: "saltpetre", massGrams: 6 });
    expect(Math.abs(given!.amounts[1]!.massGrams - 15.75)).toBeLessThan(1e-12 * 15.75);
  });

  test("the first flower: what was provisional is settled, and the fruiting feed comes earlier", async () => {
    const before = await json(FILE, "--today", "2027-06-14");
    const after = await json(FILE, "--today", "2027-06-14", "--record", "first flower 2027-06-13");
    const begins = ({ result }: Document): string[] =>
      result.stages.filter(({ id }) => id === "fruit").map((stage) => stage.begins);
    expect(after.result.stages.some(({ provisional }) => provisional)).toBe(false);
    expect(before.result.stages.some(({ provisional }) => provisional)).toBe(true);
    expect(begins(after)).toEqual(["2027-06-13", "2027-06-13"]);
    expect(begins(after)[0]! < begins(before)[0]!).toBe(true);
  });

  test("harvests add up, and an undo takes the last line back, or the one that is named", async () => {
    const picked = await json(
      FILE,
      "--today",
      "2027-09-01",
      "--record",
      "picked 1.2 kg in pots 2027-08-25",
      "--record",
      "picked 300 g",
    );
    expect(picked.result.totals.harvestedGrams).toBe(1500);
    expect((await json(FILE, "--today", "2027-09-01", "--undo")).result.totals.harvestedGrams).toBe(1200);
    const lines = read(LOG).split("\n");
    const first = lines.findIndex((line) => line.includes("1200")) + 1;
    expect((await json(FILE, "--today", "2027-09-01", "--undo", String(first))).result.totals.harvestedGrams).toBe(0);
    expect(await problem(FILE, "--today", "2027-09-01", "--undo")).toMatchObject({
      code: "nothing-to-undo",
      path: "--undo",
    });
    expect(await problem(FILE, "--today", "2027-09-01", "--undo", String(first))).toMatchObject({
      code: "line-undone",
    });
    // Taking back the taking back.
    const undone =
      read(LOG)
        .split("\n")
        .findIndex((line) => line.includes(`line=${first}`)) + 1;
    expect((await json(FILE, "--today", "2027-09-01", "--undo", String(undone))).result.totals.harvestedGrams).toBe(
      1200,
    );
    // Every line is still there.
    for (const line of lines) expect(read(LOG)).toContain(line);
  });

  test("what was recorded and what was taken back is told in short", async () => {
    const fed = await run(FILE, ...TODAY, "--record", "fed in pots");
    expect(fed.out).toMatch(/^Recorded: 2027-06-10 fed planting="pots" cans=2 can-litres=10/);
    expect(fed.out).not.toContain("nutrient-grams");
    const undone = await run(FILE, ...TODAY, "--undo");
    expect(undone.out).toMatch(/^Took back line 3: 2027-06-10 fed planting="pots"/);
  });

  test("a day of rain passes the feed over", async () => {
    const { result } = await json(
      FILE,
      "--today",
      "2027-06-12",
      "--record",
      "fed 2027-05-29",
      "--record",
      "rained out",
    );
    const planned = result.events.filter(({ status }) => status === "planned");
    expect(planned[0]!.date > "2027-06-12").toBe(true);
  });

  test.each([
    ["words that say nothing", "watered a bit", "record-unreadable"],
    ["nothing", "", "record-unreadable"],
    ["a day to come", "fed 2027-06-11", "date-ahead"],
    ["a day that does not exist", "fed 2027-02-30", undefined],
    ["two days", "fed 2027-06-01 2027-06-02", "record-unreadable"],
    ["a planting that is not in the season", "fed in greenhouse", "planting-unknown"],
    ["no cans", "fed 0 cans", "record-unreadable"],
    ["a product that is not on the shelf", "fed 1 can each 5 g sugar in pots", undefined],
    ["an amount without unit", "fed 1 can each 5 leafy-feed in pots", undefined],
    ["another feed without its place", "fed 1 can each 5 g leafy-feed", "planting-missing"],
    ["a harvest by volume", "picked 3 L", "dimension-mismatch"],
    ["a harvest without amount", "picked", "record-unreadable"],
  ])("%s is a problem, and nothing is written", async (_what, words, code) => {
    const found = await problem(FILE, ...TODAY, "--record", words);
    if (code) expect(found.code).toBe(code);
    expect(found.path).toMatch(/^--record(?! record)/);
    expect(existsSync(join(folder, LOG))).toBe(false);
  });

  test("one of two that cannot be used keeps the other out too", async () => {
    await problem(FILE, ...TODAY, "--record", "fed", "--record", "nonsense");
    expect(existsSync(join(folder, LOG))).toBe(false);
  });

  test("several at once: every line is there", async () => {
    const ran = await Promise.all(
      Array.from({ length: 8 }, (_, i) => run(FILE, "--today", "2027-09-10", "--record", `picked ${i + 1} kg`)),
    );
    expect(ran.map(({ code }) => code)).toEqual(Array(8).fill(0));
    const { result } = await json(FILE, "--today", "2027-09-10");
    expect(result.totals.harvestedGrams).toBe(36_000);
  });

  test("a line that is cut off or changed by hand is told, not counted, and stays", async () => {
    await json(FILE, "--today", "2027-09-01", "--record", "picked 1 kg");
    writeFileSync(join(folder, LOG), read(LOG).replace("mass-grams=1000", "mass-grams=9000"));
    appendFileSync(join(folder, LOG), "2027-09-01 harv");
    const { result, cautions } = await json(FILE, "--today", "2027-09-01", "--record", "picked 2 kg");
    expect(result.totals.harvestedGrams).toBe(2000);
    expect(cautions.filter(({ code }) => code === "log-line-not-counted")).toHaveLength(2);
    expect(read(LOG)).toContain("mass-grams=9000");
  });

  test("a record of a planting that was renamed is a problem with its line", async () => {
    await json(FILE, ...TODAY, "--record", "fed in pots");
    const found = await run(FILE, ...TODAY, "--set", "places[0].name=tubs");
    expect(found.code).toBe(2);
    expect(found.err).toContain("record 3");
    // Taking another line back does not help, and is not written; taking back the one in the way does.
    const before = read(LOG);
    await run(FILE, ...TODAY, "--set", "places[0].name=pots", "--record", "picked 1 kg");
    writeFileSync(join(folder, FILE), read(FILE).replace("name: pots", "name: tubs"));
    const longer = read(LOG);
    expect(longer.startsWith(before)).toBe(true);
    expect((await problem(FILE, ...TODAY, "--undo", "4")).code).toBe("planting-unknown");
    expect(read(LOG)).toBe(longer);
    expect((await run(FILE, ...TODAY, "--undo", "3")).code).toBe(0);
  });
});

describe("files that are written", () => {
  test("the table, the calendar and the sheet, all at once", async () => {
    const { out, code } = await run(FILE, ...TODAY, "--csv", "a.csv", "--calendar", "a.ics", "--sheet", "a.html");
    expect(code).toBe(0);
    for (const name of ["a.csv", "a.ics", "a.html"]) {
      expect(out).toContain(name);
      expect(read(name).length).toBeGreaterThan(1000);
    }
    expect(readdirSync(folder).sort()).toEqual(["a.csv", "a.html", "a.ics", "courtyard", "weather"]);
  });

  test("a calendar written again after the first flower was seen moves its entries and keeps their names", async () => {
    const entries = (): Map<string, ICAL.Event> =>
      new Map(
        new ICAL.Component(ICAL.parse(read("a.ics")))
          .getAllSubcomponents("vevent")
          .map((part) => new ICAL.Event(part))
          .map((entry) => [entry.uid, entry]),
      );
    await json(FILE, "--today", "2027-06-14", "--calendar", "a.ics");
    const before = entries();
    const { result } = await json(
      FILE,
      "--today",
      "2027-06-14",
      "--record",
      "fed",
      "--record",
      "first flower",
      "--calendar",
      "a.ics",
    );
    const after = entries();
    for (const [uid, entry] of before) expect(after.get(uid)!.sequence).toBeGreaterThan(entry.sequence);
    const names = new Set(before.keys());
    const planned = result.events.map(
      ({ id, date }) => [[...after.keys()].find((uid) => uid.startsWith(`${id}.`))!, date] as const,
    );
    expect(planned.filter(([uid]) => !names.has(uid)).length).toBeLessThanOrEqual(2);
    for (const [uid, date] of planned) expect(after.get(uid)!.startDate.toString()).toBe(date);
    expect(planned.some(([uid, date]) => before.get(uid) && before.get(uid)!.startDate.toString() !== date)).toBe(true);
  });

  test.each(["--csv", "--calendar", "--sheet"])("%s into a folder that is not there is a problem", async (flag) => {
    const found = await problem(FILE, ...TODAY, flag, "missing/file");
    expect(found).toMatchObject({ code: "file-not-writable", path: "missing/file" });
    mkdirSync(join(folder, "taken"));
    expect(await problem(FILE, ...TODAY, flag, "taken")).toMatchObject({ code: "file-not-writable" });
  });
});

describe("a season file of one's own", () => {
  test("--new writes an example that can be planned as it stands, and never overwrites", async () => {
    expect((await run("mine.yaml", "--new")).code).toBe(0);
    const text = read("mine.yaml");
    expect(text.split("\n").filter((line) => line.includes("#")).length).toBeGreaterThan(15);
    const { result } = await json("mine.yaml", "--today", "2027-06-01");
    expect(result.events.length).toBeGreaterThan(5);
    expect(await problem("mine.yaml", "--new")).toMatchObject({ code: "file-exists" });
    expect(read("mine.yaml")).toBe(text);
    const check = await runTrug(["check", "mine.yaml", FILE], { cwd: folder });
    expect([check.code, check.out.match(/usable \(season\)/g)]).toEqual([0, ["usable (season)", "usable (season)"]]);
  });

  test("places that are fed together are shown under all their names, and recorded under the first", async () => {
    await run("mine.yaml", "--new");
    const { out } = await run("mine.yaml", "--today", "2027-06-01", "--csv", "a.csv");
    expect(out).toContain("cans for pots + bed");
    expect(out).toContain("Note: pots + bed: no feed is on record");
    expect(read("a.csv")).toContain(",pots + bed,");
    expect(await problem("mine.yaml", "--today", "2027-06-01", "--record", "fed in bed")).toMatchObject({
      code: "place-fed-with-others",
    });
    const { result } = await json("mine.yaml", "--today", "2027-06-01", "--record", "fed in pots");
    expect(result.events.filter(({ status }) => status === "given").map(({ planting }) => planting)).toEqual(["pots"]);
    writeFileSync(
      join(folder, "many.yaml"),
      read("mine.yaml").replace(
        "  - name: bed\n",
        `${Array.from({ length: 9 }, (_, n) => `  - name: tub ${n}\n    fill: 1 pots 20 L\n`).join("")}  - name: bed\n`,
      ),
    );
    expect((await run("many.yaml", "--today", "2027-06-01")).out.replace(/\s+/g, " ")).toContain(
      "pots + tub 0 + tub 1 and 8 more",
    );
  });

  test("--set changes a field and leaves every comment and every other line", async () => {
    await run("mine.yaml", "--new");
    const before = read("mine.yaml").split("\n");
    const { result } = await json(
      "mine.yaml",
      "--today",
      "2027-06-01",
      "--set",
      "setOut=2027-05-20",
      "--set",
      "places[0].plants=8",
    );
    expect(result.events[0]!.date >= "2027-05-20").toBe(true);
    const after = read("mine.yaml").split("\n");
    const changed = before.flatMap((line, index) => (line === after[index] ? [] : [after[index]!.trim()]));
    expect(changed).toEqual(["setOut: 2027-05-20    # planted where they stay", "plants: 8"]);
    expect(after).toHaveLength(before.length);
  });

  test("--set adds a field that was not there, and every comment is still there", async () => {
    await run("mine.yaml", "--new");
    const comments = (text: string): string[] => text.match(/#.*$/gm) ?? [];
    const before = read("mine.yaml");
    await json(
      "mine.yaml",
      "--today",
      "2027-06-01",
      "--set",
      "everyDays=10",
      "--set",
      "products=[20-10-20, 5-15-30, KNO3]",
    );
    expect(comments(read("mine.yaml"))).toEqual(comments(before));
    expect(read("mine.yaml")).toMatch(/^everyDays: 10$/m);
    expect(read("mine.yaml")).toContain("KNO3");
  });

  test.each([
    ["no equals sign", "setOut"],
    ["no value", "setOut="],
    ["a field that does not exist", "colour=red"],
    ["a day that does not exist", "setOut=2027-02-30"],
    ["a field below a number", "places[0].plants.more=1"],
    ["YAML that does not read", "places=[1"],
  ])("--set with %s is a problem, and the file stays as it is", async (_what, setting) => {
    await run("mine.yaml", "--new");
    const before = read("mine.yaml");
    await problem("mine.yaml", "--set", setting);
    expect(read("mine.yaml")).toBe(before);
  });

  test("over a leap day and a year's end, south of the equator", async () => {
    const season = read("courtyard/season.yaml")
      .replace("sown: 2027-03-12", "sown: 2027-09-01")
      .replace("setOut: 2027-05-15", "setOut: 2027-11-20")
      .replace("end: 2027-10-10", "end: 2028-04-10")
      .replace(/\nweather: .*/, '\nexpect: { first flower: "20 to 45 days after set out" }');
    writeFileSync(join(folder, "courtyard/south.yaml"), season.replace("log: season.log", "log: south.log"));
    const { result } = await json(
      "courtyard/south.yaml",
      "--today",
      "2028-02-29",
      "--record",
      "fed 2 cans in pots 2028-02-29",
      "--calendar",
      "a.ics",
    );
    const days = result.events.filter(({ planting }) => planting === "pots").map(({ date }) => date);
    expect(days).toContain("2028-02-29");
    expect(days).toContain("2028-03-14");
    expect(days.every((date) => /^\d{4}-\d\d-\d\d$/.test(date) && date <= "2028-04-10")).toBe(true);
    expect(read("a.ics")).toContain("DTSTART;VALUE=DATE:20280229\r\nDTEND;VALUE=DATE:20280301");
  });

  test("a file that names a weather file that is not there, or one that does not read", async () => {
    writeFileSync(join(folder, "courtyard/lost.yaml"), read(FILE).replace("../weather/courtyard.csv", "lost.csv"));
    expect(await problem("courtyard/lost.yaml", ...TODAY)).toMatchObject({
      code: "file-missing",
      path: "courtyard/lost.csv",
    });
    writeFileSync(join(folder, "courtyard/lost.csv"), "rain,wind\n1,2\n");
    expect((await problem("courtyard/lost.yaml", ...TODAY)).path).toContain("courtyard/lost.csv");
  });

  test("problems in the file name its line", async () => {
    writeFileSync(join(folder, "courtyard/bad.yaml"), read(FILE).replace("can: 10 L", "can: 10"));
    expect((await problem("courtyard/bad.yaml", ...TODAY)).path).toMatch(/^courtyard\/bad\.yaml:\d+:\d+ can/);
  });
});
