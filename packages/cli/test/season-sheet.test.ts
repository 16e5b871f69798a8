/// <reference lib="dom.iterable" />
/// <reference lib="dom" />
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import axe from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { EXAMPLE_PLAN } from "../../nutrient-core/src/season/testing/example-plan.ts";
import { html } from "../src/render/sheet/markup.ts";
import { seasonSheet } from "../src/render/sheet/sheet.ts";
import { browserPath, startBrowser } from "./support/browser.ts";
import { runTrug } from "./support/run.ts";

const TEST_DATA = join(import.meta.dirname, "../../../test-data");
const folder = mkdtempSync(join(tmpdir(), "trug-sheet-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const path = join(folder, "season.html");
const usPath = join(folder, "season-us.html");
/** Ends just after a month's first day, where a label would run out of the drawing. */
const edgePath = join(folder, "season-edge.html");
beforeAll(async () => {
  for (const name of ["courtyard", "weather"]) cpSync(join(TEST_DATA, name), join(folder, name), { recursive: true });
  rmSync(join(folder, "courtyard/season.log"), { force: true });
  const season = ["season", "courtyard/season.yaml", "--today", "2027-06-13"];
  const record = ["--record", "fed 2027-05-29", "--record", "fed 2027-06-12"];
  expect(await runTrug([...season, ...record, "--sheet", path], { cwd: folder })).toMatchObject({ code: 0 });
  expect(await runTrug([...season, "--units", "us", "--sheet", usPath], { cwd: folder })).toMatchObject({ code: 0 });
  const edge = readFileSync(join(folder, "courtyard/season.yaml"), "utf8").replace(
    "end: 2027-10-10",
    "end: 2027-10-17",
  );
  writeFileSync(join(folder, "courtyard/edge.yaml"), edge.replace("log: season.log", "log: edge.log"));
  const edgeSheet = ["season", "courtyard/edge.yaml", "--today", "2027-06-13", "--sheet", edgePath];
  expect(await runTrug(edgeSheet, { cwd: folder })).toMatchObject({ code: 0 });
});

describe("the sheet as text", () => {
  test("is one file: no script, nothing from elsewhere, and a policy that forbids both", () => {
    const text = readFileSync(path, "utf8");
    expect(text.startsWith("<!doctype html>")).toBe(true);
    expect(text).toContain("default-src 'none'");
    expect(text).not.toMatch(/<script|\son\w+=|javascript:|@import|url\((?!#)|\ssrc=|<link|<iframe|https?:\/\//i);
    expect(text).not.toMatch(/undefined|NaN|Infinity|\[object/);
  });

  test("every text is escaped, in content and in attributes", () => {
    const evil = `<script>alert(1)</script>"'&`;
    const text = seasonSheet(
      { name: evil, plantings: [], currency: evil } as never,
      {
        ...EXAMPLE_PLAN,
        events: EXAMPLE_PLAN.events.map((event) => ({
          ...event,
          planting: evil,
          stageName: evil,
          amounts: event.amounts.map((amount) => ({ ...amount, name: evil })),
        })),
        stages: EXAMPLE_PLAN.stages.map((stage) => ({ ...stage, planting: evil, name: evil })),
        milestones: EXAMPLE_PLAN.milestones.map((milestone) => ({ ...milestone, planting: evil })),
        reminders: EXAMPLE_PLAN.reminders.map((reminder) => ({ ...reminder, planting: evil, text: evil })),
        shopping: EXAMPLE_PLAN.shopping.map((line) => ({ ...line, name: evil })),
        budget: EXAMPLE_PLAN.budget.map((budget) => ({ ...budget, planting: evil })),
        programmes: EXAMPLE_PLAN.programmes.map((programme) => ({ ...programme, name: evil, notes: [evil] })),
      },
      [{ code: "x", severity: "danger", facts: {}, message: evil, source: "x" }],
      "metric",
    );
    expect(text).not.toContain("<script");
    expect(text.split("&lt;script&gt;alert(1)&lt;/script&gt;&quot;&#39;&amp;").length).toBeGreaterThan(15);
    expect(html`<a b="${evil}">${[evil, html`<i>${1}</i>`]}${undefined}${false}</a>`.markup).toBe(
      `<a b="&lt;script&gt;alert(1)&lt;/script&gt;&quot;&#39;&amp;">&lt;script&gt;alert(1)&lt;/script&gt;&quot;&#39;&amp;<i>1</i></a>`,
    );
  });

  test("plantings that are alike share a row; of very many, those nearest to a limit are drawn, and the rest is told", () => {
    const names = Array.from({ length: 30 }, (_, index) => `bed ${index + 1}`);
    const [first] = EXAMPLE_PLAN.stages;
    const of = <T extends object>(parts: readonly T[]): T[] =>
      names.flatMap((planting) => parts.map((part) => ({ ...part, planting })));
    const alike = {
      ...EXAMPLE_PLAN,
      stages: of(EXAMPLE_PLAN.stages),
      events: of(EXAMPLE_PLAN.events),
      milestones: of(EXAMPLE_PLAN.milestones),
    };
    const sheet = (plan: typeof EXAMPLE_PLAN): string =>
      seasonSheet({ name: "x", plantings: [] } as never, plan, [], "metric");
    const strip = (text: string): string => /<svg[\s\S]*?<\/figure>/.exec(text)![0];
    expect(strip(sheet(alike)).match(/font-weight="700">bed/g)).toHaveLength(1);
    const ends = [
      "2027-06-21",
      "2027-06-20",
      "2027-06-19",
      "2027-06-18",
      "2027-06-17",
      "2027-06-16",
      "2027-06-15",
      "2027-06-14",
      "2027-06-13",
      "2027-06-12",
      "2027-06-11",
      "2027-06-10",
    ];
    const different = {
      ...alike,
      stages: alike.stages.map((stage, index) =>
        stage.id === first!.id ? { ...stage, ends: ends[index % 12] as never } : stage,
      ),
      budget: of(EXAMPLE_PLAN.budget).map((budget, index) => ({
        ...budget,
        ceilings: budget.ceilings.map((ceiling) => ({ ...ceiling, shareUsed: index / 30 })),
      })),
    };
    const many = sheet(different);
    expect(strip(many).match(/font-weight="700">bed/g)!.length).toBeLessThanOrEqual(10);
    expect([...many.matchAll(/<h3>(bed \d+)<\/h3>/g)].map(([, name]) => name)).toEqual([
      "bed 30",
      "bed 29",
      "bed 28",
      "bed 27",
    ]);
    expect(many).toContain("26 more");
  });

  test("a season with nothing in it still makes a sheet", () => {
    const empty = { events: [], milestones: [], stages: [], reminders: [], shopping: [], budget: [], programmes: [] };
    const text = seasonSheet(
      { name: "bare", plantings: [] } as never,
      { ...EXAMPLE_PLAN, ...empty, today: null },
      [],
      "metric",
    );
    expect(text).toContain("nothing more this season");
    expect(text).not.toContain("<svg");
  });
});

const executable = browserPath();
const required = process.env["CI"] === "true";
if (executable === undefined && !required)
  // biome-ignore lint/suspicious/noConsole: whoever runs the tests must see what was not tested.
  console.warn("The printed sheet was not opened: no browser found (apt-get install chromium, or set TRUG_BROWSER).");

describe.skipIf(executable === undefined && !required)("the sheet in a browser", () => {
  let browser: Browser;
  beforeAll(async () => {
    if (executable === undefined) throw new Error("CI must open the sheet: install chromium");
    browser = await startBrowser(executable);
  }, 60_000);
  afterAll(() => browser?.close());

  /** Paper less the margins of 12 mm, in CSS pixels of 1/96 inch. */
  const PAPERS = [
    ["A4", ((210 - 24) / 25.4) * 96, 297],
    ["Letter", ((215.9 - 24) / 25.4) * 96, 279.4],
  ] as const;

  /** TRUG_SHOTS names a folder for pictures and prints, to be looked at. */
  const shots = process.env["TRUG_SHOTS"];
  if (shots) mkdirSync(shots, { recursive: true });

  async function open(file: string, width: number, media: "print" | "screen"): Promise<Page> {
    const page = await browser.newPage({ viewport: { width: Math.floor(width), height: 1000 } });
    await page.emulateMedia({ media });
    const asked: string[] = [];
    page.on("request", (request) => asked.push(request.url()));
    await page.goto(`file://${file}`);
    expect(asked).toEqual([`file://${file}`]);
    return page;
  }

  /** Elements that stick out of the page to the right, or whose text does not fit into them. */
  const stickingOut = (page: Page): Promise<string[]> =>
    page.evaluate(() => {
      const width = document.documentElement.clientWidth;
      return [...document.querySelectorAll("body *")]
        .filter((element) => {
          const box = element.getBoundingClientRect();
          return (
            box.right > width + 0.5 ||
            box.left < -0.5 ||
            (element instanceof HTMLElement &&
              element.scrollWidth > element.clientWidth + 1 &&
              getComputedStyle(element).display !== "inline")
          );
        })
        .map((element) => `${element.tagName} ${element.textContent?.slice(0, 40)}`);
    });

  test.each(PAPERS)("%s: nothing sticks out, on paper and on the screen", async (paper, width) => {
    for (const [file, name] of [
      [path, "metric"],
      [usPath, "us"],
    ] as const) {
      for (const media of ["print", "screen"] as const) {
        const page = await open(file, width, media);
        expect(await stickingOut(page)).toEqual([]);
        if (shots && media === "print")
          await page.screenshot({ path: join(shots, `${paper}-${name}.png`), fullPage: true });
        await page.close();
      }
    }
  });

  test.each(PAPERS)("%s: prints on few pages of that paper", async (paper, width, heightMillimetres) => {
    const page = await open(path, width, "print");
    const file = await page.pdf({ format: paper, ...(shots ? { path: join(shots, `${paper}.pdf`) } : {}) });
    const pages = file.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g) ?? [];
    expect(pages.length).toBeGreaterThan(1);
    expect(pages.length).toBeLessThanOrEqual(8);
    const box = /\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)/.exec(file.toString("latin1"))!;
    // Points of 1/72 inch; printers round to whole ones.
    expect(Math.abs(Number(box[2]) - (heightMillimetres / 25.4) * 72)).toBeLessThan(1);
    await page.close();
  });

  test.each(["path", "edgePath"] as const)(
    "letters in drawings stay inside them and do not lie on each other (%s)",
    async (which) => {
      const page = await open(which === "path" ? path : edgePath, PAPERS[0][1], "print");
      const found = await page.evaluate(() =>
        [...document.querySelectorAll("svg")].flatMap((svg) => {
          const frame = svg.getBoundingClientRect();
          const texts = [...svg.querySelectorAll("text")].filter((text) => text.textContent !== "");
          const boxes = texts.map((text) => ({ text: text.textContent ?? "", box: text.getBoundingClientRect() }));
          const out = boxes.filter(
            ({ box }) =>
              box.left < frame.left - 1 ||
              box.right > frame.right + 1 ||
              box.top < frame.top - 1 ||
              box.bottom > frame.bottom + 1,
          );
          const over = boxes.flatMap(({ text, box }, index) =>
            boxes
              .slice(index + 1)
              .filter(
                (other) =>
                  box.left < other.box.right - 1 &&
                  other.box.left < box.right - 1 &&
                  box.top < other.box.bottom - 2 &&
                  other.box.top < box.bottom - 2,
              )
              .map((other) => `${text} / ${other.text}`),
          );
          return [...out.map(({ text }) => `outside: ${text}`), ...over];
        }),
      );
      expect(found).toEqual([]);
      await page.close();
    },
  );

  test("large enough to read at arm's length: doses and days first, nothing below 11 points but in drawings", async () => {
    const page = await open(path, PAPERS[0][1], "print");
    const sizes = await page.evaluate(() =>
      [...document.querySelectorAll("body *:not(svg *)")]
        .filter((element) => [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()))
        .map((element) => ({
          text: element.textContent!.slice(0, 30),
          points: Number.parseFloat(getComputedStyle(element).fontSize) * 0.75,
          isDose: element.matches(".doses li, .now dd, .now dt, .now dd *"),
        })),
    );
    expect(sizes.filter(({ points }) => points < 10.99)).toEqual([]);
    expect(sizes.filter(({ isDose, points }) => isDose && points < 14.99)).toEqual([]);
    await page.close();
  });

  test("every drawing has a name and a description, and an outside judge finds no fault with names and contrast", async () => {
    const page = await open(path, PAPERS[0][1], "screen");
    const drawings = page.locator("svg[role=img]");
    expect(await drawings.count()).toBeGreaterThanOrEqual(7);
    for (const drawing of await drawings.all()) {
      const ids = (await drawing.getAttribute("aria-labelledby"))!.split(" ");
      for (const id of ids) expect((await page.locator(`#${id}`).textContent())!.length).toBeGreaterThan(10);
    }
    // axe-core, run in a world of its own: the page's policy forbids scripts, and must go on doing so.
    await page.evaluate(axe.source);
    const result = await page.evaluate(async () => {
      const judge = (
        globalThis as unknown as {
          axe: {
            run: () => Promise<{ violations: { id: string; nodes: { html: string }[] }[]; passes: { id: string }[] }>;
          };
        }
      ).axe;
      return judge.run();
    });
    expect(result.violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html.slice(0, 100)}`)).toEqual([]);
    expect(result.passes.map(({ id }) => id)).toEqual(
      expect.arrayContaining(["color-contrast", "svg-img-alt", "document-title"]),
    );
    await page.close();
  }, 60_000);

  test("in black and white nothing is told by colour alone: no colour is used", async () => {
    const text = readFileSync(path, "utf8");
    const colours = [...text.matchAll(/#([0-9a-f]{3,6})\b(?!;\d)/gi)].map(([, colour]) => colour!.toLowerCase());
    const grey = (colour: string): boolean => new Set(colour.match(colour.length === 3 ? /./g : /../g)).size === 1;
    expect(
      colours.filter((colour) => /^([0-9a-f]{3}|[0-9a-f]{6})$/.test(colour) && !grey(colour) && colour !== "39"),
    ).toEqual([]);
  });
});
