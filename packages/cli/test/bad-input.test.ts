import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { runTrug } from "./support/run.ts";

/** Inputs that cannot be used: each gets a clear problem with a remedy and exit code 2, never a stack trace. */
const folder = mkdtempSync(join(tmpdir(), "trug-bad-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const FILES: Readonly<Record<string, string>> = {
  "tab.yaml": "products:\n\t- id: a\n",
  "colon.yaml": "products: [",
  "empty.yaml": "",
  "nothing.yaml": "products: []\n",
  "list.yaml": "- 1\n- 2\n",
  "scalar.yaml": "just words\n",
  "twice.yaml": "products:\n  - {id: a, label: 1-2-3}\n  - {id: a, label: 4-5-6}\n",
  "key-twice.yaml": "products: []\nproducts: []\n",
  "unknown-field.yaml": "products:\n  - {id: a, label: 1-2-3, colour: red}\n",
  "no-label.yaml": "products:\n  - {id: a}\n",
  "both.yaml": "products:\n  - {id: a, label: 1-2-3, material: urea}\n",
  "id.yaml": "products:\n  - {id: 'A B', label: 1-2-3}\n",
  "price.yaml": "products:\n  - {id: a, label: 1-2-3, price: 5}\n",
  "negative-price.yaml": "products:\n  - {id: a, label: 1-2-3, price: -5, pack: 1 kg}\n",
  "pack.yaml": "products:\n  - {id: a, label: 1-2-3, price: 5, pack: '1'}\n",
  "grade-four.yaml": "products:\n  - {id: a, label: 1-2-3-4}\n",
  "material.yaml": "products:\n  - {id: a, material: unobtainium}\n",
  "zero-density.yaml": "products:\n  - {id: a, label: 1-2-3, density: 0 kg/L}\n",
  "hazard.yaml": "products:\n  - {id: a, label: 1-2-3, hazards: [glitter]}\n",
  "aliases.yaml": `a: &a [1,1,1,1,1,1,1,1,1]\nb: &b [*a,*a,*a,*a,*a,*a,*a,*a,*a]\nc: &c [*b,*b,*b,*b,*b,*b,*b,*b,*b]\nproducts: [*c,*c,*c,*c,*c,*c]\n`,
  "grade-id.yaml": "products:\n  - {id: 5-10-10, label: 20-0-0}\n",
  "by-volume.yaml": "products:\n  - {id: a, material: urea, by: volume}\n",
  "label-number.yaml": "products:\n  - {id: a, label: 5}\n",
};

beforeAll(() => {
  for (const [name, text] of Object.entries(FILES)) writeFileSync(join(folder, name), text);
  writeFileSync(join(folder, "large.yaml"), "a".repeat(10_000_000));
  writeFileSync(join(folder, "binary.yaml"), Buffer.from([0, 1, 2, 0, 255]));
  mkdirSync(join(folder, "folder.yaml"));
});

const DOSE = ["dose", "20-20-20", "--target", "N 100 ppm", "--water", "9 L"];
const change = (flag: string, value: string): string[] =>
  DOSE.map((word, index) => (DOSE[index - 1] === flag ? value : word));

const BED = ["bed", "5-1-3", "--target", "N 3 g/m2", "--area", "3 m2"];

const LIME = ["lime", "agricultural-lime", "--area", "3 m2", "--from", "5.5", "--to", "6.5", "--texture", "loam"];
const SULFUR = ["lime", "sulfur", "--area", "3 m2", "--from", "6.5", "--to", "5.5", "--texture", "loam"];
const LIMED = LIME.slice(0, 8);
const altered = (words: readonly string[], flag: string, value: string): string[] =>
  words.map((word, index) => (words[index - 1] === flag ? value : word));

const CASES: readonly (readonly [what: string, argv: readonly string[], code: string])[] = [
  ["an unknown command", ["fertigate"], "command-unknown"],
  ["an unknown option", [...DOSE, "--sugar", "1 g"], "unknown-option"],
  ["an option without its value", ["dose", "20-20-20", "--water"], "option-missing-argument"],
  ["no product", ["dose", "--target", "N 100 ppm", "--water", "9 L"], "missing-argument"],
  ["too many products", ["dose", "1-2-3", "4-5-6", "--target", "N 1 ppm", "--water", "9 L"], "excess-arguments"],
  ["an option given twice", [...DOSE, "--water", "10 L"], "option-twice"],
  ["a water beyond all measure", change("--water", "1e300 L"), "number-unreadable"],
  ["a water that needs a page to write", change("--water", `${"1 L+".repeat(5000)}1 L`), "quantity-unreadable"],
  ["a water in megagrams or milligrams", change("--water", "9 ML"), "unit-unknown"],
  ["a bare density", [...DOSE, "--density", "1.2"], "unit-missing"],
  ["a density of lead", [...DOSE, "--density", "100 kg/L"], "density-unreadable"],
  [
    "cans of unknown size",
    ["dose", "20-20-20", "--target", "N 100 ppm", "--stock", "1:100", "--tank", "5 L", "--cans", "3"],
    "option-missing",
  ],
  ["a target beyond all measure", change("--target", "N 1e308 ppm"), "number-unreadable"],
  ["a formula in small letters", ["dose", "kno3", ...DOSE.slice(2)], "product-unknown"],
  ["a water without unit", change("--water", "9"), "unit-missing"],
  ["a negative water", change("--water", "-9 L"), "not-positive"],
  ["no water at all", change("--water", "0 L"), "not-positive"],
  ["a water that is text", change("--water", "NaN L"), "unit-unknown"],
  ["an endless water", change("--water", "1e999 L"), "number-unreadable"],
  ["a mistyped unit", change("--water", "9 litrs"), "unit-unknown"],
  ["a mass as water", change("--water", "9 kg"), "dimension-mismatch"],
  ["a number with two readings", change("--water", "1,500 L"), "number-ambiguous"],
  ["arithmetic that does not end", change("--water", "2 * (3 L"), "quantity-unreadable"],
  ["litres plus kilograms", change("--water", "2 L + 3 kg"), "quantity-unreadable"],
  ["division by zero", change("--water", "2 L / 0"), "quantity-unreadable"],
  ["water left out", DOSE.slice(0, 4), "option-missing"],
  ["neither target nor amount", ["dose", "20-20-20", "--water", "9 L"], "option-missing"],
  ["both target and amount", [...DOSE, "--given", "5 g"], "options-conflict"],
  ["a target without unit", change("--target", "N 100"), "unit-missing"],
  ["a target without number", change("--target", "N ppm"), "target-unreadable"],
  ["an unknown nutrient", change("--target", "Xx 100 ppm"), "nutrient-unknown"],
  ["an unknown rate unit", change("--target", "N 100 furlongs"), "rate-unit-unknown"],
  ["a rate for a bed in a can", change("--target", "N 5 g/m2"), "target-basis-mismatch"],
  ["rates of two kinds", change("--target", "N 5 g/m2, K 10 ppm"), "target-mixed-basis"],
  ["a nutrient twice", change("--target", "P 5 ppm, P2O5 10 ppm"), "target-nutrient-twice"],
  ["two nutrients from one product", change("--target", "N 5 ppm, K 10 ppm"), "target-too-many"],
  ["a target of nothing", change("--target", "N 0 ppm"), "not-positive"],
  ["a nutrient the product does not hold", change("--target", "Ca 50 ppm"), "nutrient-not-in-product"],
  ["a grade of four numbers", ["dose", "1-2-3-4", ...DOSE.slice(2)], "grade-unreadable"],
  ["a grade of two numbers", ["dose", "10-10", ...DOSE.slice(2)], "grade-unreadable"],
  ["a grade over one hundred", ["dose", "120-0-0", ...DOSE.slice(2)], "label-over-whole"],
  ["a formula that is none", ["dose", "KNOx3", ...DOSE.slice(2)], "formula-unreadable"],
  ["a purity over one hundred", ["dose", "KNO3 140%", ...DOSE.slice(2)], "purity-out-of-range"],
  ["an unknown product", ["dose", "moonshine", ...DOSE.slice(2)], "product-unknown"],
  ["an empty product", ["dose", "", ...DOSE.slice(2)], "product-unknown"],
  ["a label line without number", ["dose", "20-20-20 + calcium", ...DOSE.slice(2)], "label-line-unreadable"],
  ["percent by volume of a bed without density", [...BED, "--by", "volume"], "density-missing"],
  [
    "a weight of a liquid by volume without density",
    ["dose", "5-1-3", "--by", "volume", "--given", "5 g", "--water", "9 L"],
    "density-missing",
  ],
  ["percent by volume of a formula", ["label", "KNO3", "--by", "volume"], "options-conflict"],
  ["percent by volume of a generic material", ["label", "potassium-nitrate", "--by", "volume"], "options-conflict"],
  ["percent by volume of one of several", [...BED, "KNO3", "--by", "volume"], "options-conflict"],
  ["the density of one of several", [...BED, "KNO3", "--density", "1.1 kg/L"], "options-conflict"],
  ["a density of zero", [...DOSE, "--density", "0 kg/L"], "density-unreadable"],
  ["an unknown basis", [...DOSE, "--basis", "ionic"], "choice-unknown"],
  ["a spoonful of unknown weight", ["dose", "20-20-20", "--given", "1 tsp", "--water", "9 L"], "density-missing"],
  ["an injector ratio upside down", [...DOSE, "--stock", "100:1", "--tank", "5 L"], "injector-ratio-unreadable"],
  ["a stock without its tank", [...DOSE, "--stock", "1:100"], "option-missing"],
  ["a habit of units that is none", [...DOSE, "--units", "cubits"], "choice-unknown"],
  ["a blend of nothing", ["blend", "--ratio", "1-1-1", "--batch", "1 kg"], "missing-argument"],
  ["a ratio of two", ["blend", "1-2-3", "--ratio", "1-1", "--batch", "1 kg"], "ratio-unreadable"],
  ["a ratio of nothing", ["blend", "1-2-3", "--ratio", "0-0-0", "--batch", "1 kg"], "not-positive"],
  ["a ratio without batch", ["blend", "1-2-3", "--ratio", "1-1-1"], "option-missing"],
  ["a blend without purpose", ["blend", "1-2-3"], "option-missing"],
  [
    "a blend of two purposes",
    ["blend", "1-2-3", "--ratio", "1-1-1", "--grade", "1-1-1", "--batch", "1 kg"],
    "options-conflict",
  ],
  ["a target no product holds", ["blend", "46-0-0", "--target", "Ca 50 ppm", "--water", "9 L"], "nothing-in-products"],
  ["a product twice", ["blend", "46-0-0", "46-0-0", "--ratio", "1-0-0", "--batch", "1 kg"], "product-twice"],
  ["a grade over the whole", ["blend", "46-0-0", "--grade", "60-30-30", "--batch", "1 kg"], "label-over-whole"],
  [
    "water and area at once",
    ["blend", "46-0-0", "--target", "N 1 ppm", "--water", "9 L", "--area", "1 m2"],
    "option-missing",
  ],
  ["a bed without area", ["bed", "5-10-10", "--target", "N 5 g/m2"], "option-missing"],
  ["a bed measured in litres", ["bed", "5-10-10", "--target", "N 5 g/m2", "--area", "9 L"], "dimension-mismatch"],
  ["a row of one side", ["bed", "5-10-10", "--target", "N 5 g/m2", "--area", "row 10 m"], "area-unreadable"],
  ["lime without material", ["lime"], "missing-argument"],
  ["lime that is unknown", ["lime", "moondust", ...LIME.slice(2)], "product-unknown"],
  ["gypsum as lime", ["lime", "gypsum", ...LIME.slice(2)], "material-moves-no-ph"],
  ["gypsum as lime by its label", ["lime", "gypsum", ...LIME.slice(2), "--cce", "90%"], "material-moves-no-ph"],
  ["urea as lime", ["lime", "urea", ...LIME.slice(2)], "material-moves-no-ph"],
  ["iron sulfate against lime", ["lime", "iron-sulfate", ...SULFUR.slice(2)], "material-moves-no-ph"],
  ["ash of unknown worth", ["lime", "wood-ash", ...LIME.slice(2)], "cce-missing"],
  ["a grade as lime", ["lime", "5-10-10", ...LIME.slice(2)], "material-moves-no-ph"],
  ["a label as lime", ["lime", "0-0-3", ...LIME.slice(2)], "cce-missing"],
  ["limestone as strong as quicklime", [...LIME, "--cce", "178%"], "cce-contradicts"],
  ["lime without area", [...LIME.slice(0, 2), ...LIME.slice(4)], "option-missing"],
  ["lime on litres", altered(LIME, "--area", "3 L"), "dimension-mismatch"],
  ["lime from nowhere", [...LIME.slice(0, 4), ...LIME.slice(6)], "option-missing"],
  ["lime to nowhere", [...LIME.slice(0, 6), ...LIME.slice(8)], "option-missing"],
  ["lime for any soil", LIMED, "option-missing"],
  ["lime that should lower the pH", altered(LIME, "--to", "5.2"), "wrong-direction"],
  ["sulfur that should raise the pH", altered(SULFUR, "--to", "7"), "wrong-direction"],
  ["a pH of 2.9", altered(LIME, "--from", "2.9"), "ph-out-of-range"],
  ["a pH of 10.1", altered(LIME, "--to", "10.1"), "ph-out-of-range"],
  ["a pH in words", altered(LIME, "--from", "sour"), "ph-unreadable"],
  ["a negative pH", altered(LIME, "--from", "-5"), "ph-unreadable"],
  ["a soil of gravel", altered(LIME, "--texture", "gravel"), "choice-unknown"],
  ["a pH below the table", altered(LIME, "--from", "4.9"), "outside-printed-range"],
  ["a goal above the table", altered(LIME, "--to", "6.6"), "outside-printed-range"],
  ["sulfur on a chalky soil", altered(SULFUR, "--from", "7.6"), "outside-printed-range"],
  ["sulfur to below the tables", altered(SULFUR, "--to", "4.4"), "outside-printed-range"],
  ["a texture and a test", [...LIME, "--method", "sikora", "--buffer-ph", "6.2"], "options-conflict"],
  ["a test without method", [...LIMED, "--buffer-ph", "6.2"], "option-missing"],
  ["a method without test", [...LIMED, "--method", "sikora"], "option-missing"],
  ["the Mehlich formula without test", [...LIMED, "--method", "mehlich-formula"], "option-missing"],
  ["the Mehlich table by a buffer", [...LIMED, "--method", "mehlich-table", "--buffer-ph", "6"], "option-missing"],
  ["an unknown method", [...LIMED, "--method", "litmus", "--buffer-ph", "6.2"], "choice-unknown"],
  [
    "two figures of one test",
    [...LIMED, "--method", "sikora", "--buffer-ph", "6", "--acidity", "3"],
    "options-conflict",
  ],
  ["a Sikora buffer above 6.9", [...LIMED, "--method", "sikora", "--buffer-ph", "7"], "outside-printed-range"],
  ["a Sikora buffer below 4.8", [...LIMED, "--method", "sikora", "--buffer-ph", "4.7"], "outside-printed-range"],
  [
    "a goal above the Sikora table",
    [...altered(LIMED, "--to", "7.3"), "--method", "sikora", "--buffer-ph", "6"],
    "outside-printed-range",
  ],
  [
    "a Mehlich buffer above 6.6",
    [...LIMED, "--method", "mehlich-formula", "--buffer-ph", "6.7"],
    "outside-printed-range",
  ],
  [
    "a goal above the Mehlich formula",
    [...altered(LIMED, "--to", "6.7"), "--method", "mehlich-formula", "--acidity", "1"],
    "outside-printed-range",
  ],
  [
    "an acidity above the formula",
    [...LIMED, "--method", "mehlich-formula", "--acidity", "15"],
    "outside-printed-range",
  ],
  ["an acidity below the table", [...LIMED, "--method", "mehlich-table", "--acidity", "1.9"], "outside-printed-range"],
  ["an acidity above the table", [...LIMED, "--method", "mehlich-table", "--acidity", "26"], "outside-printed-range"],
  [
    "an acidity by volume in a table by weight",
    [...LIMED, "--method", "mehlich-table", "--acidity", "3.9 meq/100 cm3"],
    "acidity-unreadable",
  ],
  [
    "an acidity by weight in a formula by volume",
    [...LIMED, "--method", "mehlich-formula", "--acidity", "3.9 cmol/kg"],
    "acidity-unreadable",
  ],
  ["sulfur by a buffer", [...SULFUR.slice(0, 8), "--method", "sikora", "--buffer-ph", "6.2"], "options-conflict"],
  ["a worth without percent sign", [...LIME, "--cce", "0.9"], "unit-missing"],
  ["a worth of nothing", [...LIME, "--cce", "0%"], "percent-out-of-range"],
  ["a worth above magnesium oxide", [...LIME, "--cce", "260%"], "percent-out-of-range"],
  ["a worth of sulfur", [...SULFUR, "--cce", "90%"], "options-conflict"],
  ["a fineness of sulfur", [...SULFUR, "--fineness", "90%"], "options-conflict"],
  ["a fineness over the whole", [...LIME, "--fineness", "through 60 mesh 90, 20-60 mesh 20"], "fineness-unreadable"],
  ["a sieve class twice", [...LIME, "--fineness", "through 60 mesh 5, through 60 mesh 6"], "fineness-unreadable"],
  ["sieves of two schemes", [...LIME, "--fineness", "through 60 mesh 50, 60-100 mesh 20"], "fineness-unreadable"],
  ["a sieve that two schemes count differently", [...LIME, "--fineness", "20-60 mesh 60"], "fineness-unreadable"],
  ["a fineness of nothing", [...LIME, "--fineness", "through 60 mesh 0"], "fineness-unreadable"],
  ["a fineness in words", [...LIME, "--fineness", "like flour"], "fineness-unreadable"],
  ["a depth of a yard", [...LIME, "--depth", "1 yd"], "depth-out-of-range"],
  ["a depth without unit", [...LIME, "--depth", "15"], "unit-missing"],
];

const SHELVES: readonly (readonly [file: string, code: string])[] = [
  ["missing.yaml", "file-missing"],
  ["folder.yaml", "file-is-folder"],
  ["large.yaml", "file-too-large"],
  ["binary.yaml", "file-not-text"],
  ["tab.yaml", "yaml-tab"],
  ["colon.yaml", "yaml-unreadable"],
  ["key-twice.yaml", "yaml-key-twice"],
  ["empty.yaml", "field-unusable"],
  ["nothing.yaml", "shelf-empty"],
  ["list.yaml", "field-unusable"],
  ["scalar.yaml", "field-unusable"],
  ["twice.yaml", "id-twice"],
  ["unknown-field.yaml", "field-unknown"],
  ["no-label.yaml", "field-missing"],
  ["both.yaml", "options-conflict"],
  ["id.yaml", "field-unusable"],
  ["price.yaml", "field-missing"],
  ["negative-price.yaml", "field-unusable"],
  ["pack.yaml", "unit-missing"],
  ["grade-four.yaml", "grade-unreadable"],
  ["material.yaml", "material-unknown"],
  ["zero-density.yaml", "density-unreadable"],
  ["hazard.yaml", "field-unusable"],
  ["aliases.yaml", "yaml-unreadable"],
  ["grade-id.yaml", "id-like-grade"],
  ["by-volume.yaml", "options-conflict"],
  ["label-number.yaml", "field-unusable"],
];

interface ErrorDocument {
  readonly error: Readonly<Record<"code" | "path" | "message" | "expected" | "received" | "hint", string>>;
}

async function expectProblem(argv: readonly string[], code: string): Promise<ErrorDocument["error"]> {
  const plain = await runTrug(argv, { cwd: folder });
  expect(plain.code, plain.err).toBe(2);
  expect(plain.out).toBe("");
  expect(plain.err).not.toMatch(/\n\s+at .*:\d+:\d+|undefined|\[object/);
  expect(plain.err).toContain("try ");
  const json = await runTrug([argv[0]!, "--json", ...argv.slice(1)], { cwd: folder });
  expect(json.out).toBe("");
  expect(json.code).toBe(2);
  const { error } = JSON.parse(json.err) as ErrorDocument;
  expect(error.code).toBe(code);
  for (const field of ["message", "expected", "received", "hint"] as const) expect(error[field], field).not.toBe("");
  return error;
}

describe("words that cannot be used", () => {
  test.each(CASES)("%s", async (_what, argv, code) => {
    await expectProblem(argv, code);
  });
});

describe("shelf files that cannot be used", () => {
  test.each(SHELVES)("%s", async (file, code) => {
    const error = await expectProblem([...DOSE, "--shelf", file], code);
    expect(error.path).toContain(file);
    const check = await runTrug(["check", file], { cwd: folder });
    expect(check.code).toBe(2);
    expect(check.out + check.err).toContain("try ");
  });

  test("a problem inside a file names its line", async () => {
    const { path } = await expectProblem([...DOSE, "--shelf", "twice.yaml"], "id-twice");
    expect(path).toContain("twice.yaml:3:");
  });

  // The superuser may read everything, so the case cannot arise for them.
  test.skipIf(process.getuid?.() === 0)("a file without permission", async () => {
    const file = join(folder, "locked.yaml");
    writeFileSync(file, "products: []");
    chmodSync(file, 0o000);
    await expectProblem([...DOSE, "--shelf", "locked.yaml"], "file-not-permitted");
  });
});
