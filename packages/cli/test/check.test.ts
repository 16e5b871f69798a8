import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { runTrug } from "./support/run.ts";

/** A person mends a file once: every mistake in it is told in the first go, and no mistake that is none. */
const folder = mkdtempSync(join(tmpdir(), "trug-check-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

type Lines = Record<string, string>;

const SHELF: Lines = {
  currency: "currency: EUR",
  products: "products:",
  first: "  - id: leafy",
  firstLabel: "    label: 20-10-20",
  firstDensity: "    density: 1.05 kg/L",
  // By the density: a volume is no mistake, also where the product has others.
  firstPack: "    pack: 1 L",
  firstPrice: "    price: 14",
  second: "  - id: salt",
  secondMaterial: "    material: potassium-nitrate",
  secondStock: "    stock: 2 kg",
  components: "components:",
  compost: "  - name: compost",
  compostPacks: "    packs: [50 L 6.50]",
};

const SEASON: Lines = {
  name: "name: roof",
  crop: "crop: sweet pepper",
  setOut: "setOut: 2027-05-15",
  end: "end: 2027-10-10",
  places: "places:",
  pots: "  - name: pots",
  potsFill: "    fill: 20 pots 20 L",
  bed: "  - name: bed",
  bedFill: "    fill: bed 1.2 m x 2.4 m x 30 cm",
  bedPlants: "    plants: 12",
  programme: "programme: two-phase",
  products: "products: [20-10-20]",
  can: "can: 10 L",
};

/** Each a single mistake: what a line becomes. */
const SHELF_MISTAKES: readonly (readonly [line: string, written: string])[] = [
  ["currency", "currency: 3"],
  ["first", "  - id: Leafy feed"],
  ["firstLabel", "    label: 20-10-2o"],
  ["firstDensity", "    density: 1.05"],
  ["firstPack", "    pack: 2 stones"],
  ["firstPrice", "    price: -3"],
  ["second", "  - id: salt\n    colour: red\n    smell: none"],
  ["secondMaterial", "    material: salt of the sea"],
  ["secondStock", "    stock: 2"],
  ["compost", "  - name: [compost]"],
  ["compostPacks", "    packs: [50 Q 6.50]"],
];

const SEASON_MISTAKES: readonly (readonly [line: string, written: string])[] = [
  ["name", "colour: red"],
  ["setOut", "setOut: 2027-02-30"],
  ["end", "end: 2027"],
  ["pots", "  - nme: pots"],
  ["potsFill", "    fill: 20 pots 20"],
  ["bedPlants", "    plants: a dozen"],
  ["programme", "programme: two-phse"],
  ["products", "products: [20-10-2o]"],
  ["can", "can: 10"],
];

let written = 0;

/** The problems of a file, each by its code and the place in the document. */
async function problemsOf(lines: Lines): Promise<string[]> {
  const file = join(folder, `${written++}.yaml`);
  writeFileSync(file, `${Object.values(lines).join("\n")}\n`);
  const { out } = await runTrug(["check", file, "--json"], { cwd: folder });
  const [checked] = (JSON.parse(out) as { result: { files: { problems: { code: string; path: string }[] }[] } }).result
    .files;
  return checked!.problems.map(({ code, path }) => `${code} ${path.replace(/^\S+ /, "")}`);
}

const withMistakes = (lines: Lines, mistakes: readonly (readonly [string, string])[]): Lines => ({
  ...lines,
  ...Object.fromEntries(mistakes),
});

describe.each([
  ["shelf", SHELF, SHELF_MISTAKES],
  ["season", SEASON, SEASON_MISTAKES],
] as const)("a %s file", (_kind, lines, mistakes) => {
  test("is usable without the mistakes", async () => {
    expect(await problemsOf(lines)).toEqual([]);
  });

  test("has every mistake told in the first go, and nothing that comes of another one", async () => {
    const alone = await Promise.all(mistakes.map((mistake) => problemsOf(withMistakes(lines, [mistake]))));
    for (const problems of alone) expect(problems.length).toBeGreaterThan(0);
    await fc.assert(
      fc.asyncProperty(fc.subarray([...mistakes.keys()], { minLength: 1 }), async (chosen) => {
        const together = await problemsOf(
          withMistakes(
            lines,
            chosen.map((index) => mistakes[index]!),
          ),
        );
        expect(new Set(together)).toEqual(new Set(chosen.flatMap((index) => alone[index]!)));
      }),
      { numRuns: 60 },
    );
  });
});

describe("mistakes of one entry do not hide each other", () => {
  test.each([
    [
      "an unknown material beside a field of the wrong kind",
      { secondMaterial: "    material: 5", secondStock: "    stock: x" },
      ["field-unusable products[1].material", "quantity-unreadable products[1].stock"],
    ],
    [
      "a density and a label that do not read",
      { firstDensity: "    density: heavy", firstLabel: "    label: 1-2" },
      ["grade-unreadable products[0].label", "density-unreadable products[0].density"],
    ],
    [
      "an id that is taken, on an entry that does not read",
      { second: "  - id: leafy", secondMaterial: "    material: sand" },
      ["id-twice products[1].id", "material-unknown products[1].material"],
    ],
    [
      "a price without a pack, beside a label that does not read",
      { firstPack: "", firstLabel: "    label: 1-2" },
      ["grade-unreadable products[0].label", "field-missing products[0].pack"],
    ],
    [
      "six unknown fields, each with its line",
      { currency: "a: 1\nb: 2\nc: 3\nd: 4\ne: 5\nf: 6" },
      ["a", "b", "c", "d", "e", "f"].map((name) => `field-unknown ${name}`),
    ],
  ])("%s", async (_what, mistakes, problems) => {
    expect(new Set(await problemsOf({ ...SHELF, ...mistakes }))).toEqual(new Set(problems));
  });

  test("a list with a number among its names still has the others read", async () => {
    const lines = { ...SEASON, products: "products: [3, 20-10-2o]", can: "can: 10 stones" };
    expect(await problemsOf(lines)).toEqual([
      "field-unusable products[0]",
      "label-line-unreadable products[1]",
      "unit-unknown can",
    ]);
  });

  test("what two places lean on is told once", async () => {
    expect(await problemsOf({ ...SEASON, setOut: "setOut: 2027-02-30" })).toEqual(["date-unreadable setOut"]);
  });
});

test("a season hears of its own mistakes and of those in the files it names", async () => {
  writeFileSync(join(folder, "kept.yaml"), "products:\n  - {id: leafy, label: 20-10}\n");
  const named = { ...SEASON, shelf: "shelf: kept.yaml", weather: "weather: none.csv", products: "products: [leafy]" };
  expect(await problemsOf({ ...named, can: "can: 10" })).toEqual([
    "grade-unreadable products[0].label",
    `file-missing ${join(folder, "none.csv")}`,
    "field-unusable can",
  ]);
});

test("the problems stand in the order of the lines, each told once, its block not wrapped again", async () => {
  const file = join(folder, "order.yaml");
  // Both places lean on the season's own day of setting out.
  const lines = withMistakes(SEASON, [
    ["can", "can: 10"],
    ["setOut", "setOut: 2027-02-30"],
    ["potsFill", "    fill: 20 pots 20"],
  ]);
  writeFileSync(file, `${Object.values(lines).join("\n")}\n`);
  const { out } = await runTrug(["check", "order.yaml"], { cwd: folder, columns: 100 });
  expect([...out.matchAll(/^order\.yaml:(\d+)/gm)].map(([, line]) => Number(line))).toEqual([3, 7, 13]);
  expect(out.split("\n").filter((line) => /^ {2}(expected|received|try)/.test(line))).toHaveLength(9);
});
