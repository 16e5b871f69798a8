import { MATERIALS } from "nutrient-core";
import { describe, expect, test } from "vitest";
import { runTrug } from "./support/run.ts";

const json = async (...words: string[]) => JSON.parse((await runTrug(["label", ...words, "--json"])).out);

describe("trug label alone", () => {
  test.each([60, 80, 100])("lists every generic material in its group within %d columns", async (columns) => {
    const { code, out } = await runTrug(["label"], { columns });
    expect(code).toBe(0);
    const lines = out.split("\n");
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(columns);
    for (const { id, group } of MATERIALS) {
      const at = lines.findIndex((line) => line.startsWith(`  ${id} `));
      expect(at, id).toBeGreaterThan(0);
      const heading = lines.slice(0, at).findLast((line) => /^[a-z]/.test(line));
      expect(heading, id).toBe(group);
    }
  });

  test("shows the analysis as it is printed, and stars what was not read", async () => {
    const { out } = await runTrug(["label"]);
    expect(out).toMatch(/calcium-nitrate +15\.5-0-0 \+ 19 Ca\n/);
    expect(out).toMatch(/potassium-chloride +0-0-60 \+ 47 Cl +MOP\n/);
    expect(out).toMatch(/gypsum +0-0-0 \+ 22 Ca \+ 17 S \*\n/);
  });

  test("as JSON each material has all that its own answer has, and its aliases and hazards", async () => {
    const { result } = await json();
    expect(result.materials.length).toBe(MATERIALS.length);
    const one = result.materials.find(({ id }: { id: string }) => id === "potassium-nitrate");
    expect(one).toMatchObject({ group: "potassium", oxidePercent: { K2O: 44 }, hazards: ["oxidiser", "eye-damage"] });
    expect(one.aliases).toContain("nop");
  });

  test("an option that takes a product apart needs a product", async () => {
    const { code, out, err } = await runTrug(["label", "--mass", "25 kg", "--json"]);
    expect([code, out]).toEqual([2, ""]);
    expect(JSON.parse(err).error).toMatchObject({ code: "field-missing", path: "product" });
  });
});

describe("trug label of a product", () => {
  test("has the contract's fields", async () => {
    const { command, inputs, result } = await json("5-10-10", "--mass", "100 lb");
    expect(command).toBe("label");
    expect(inputs).toMatchObject({ product: "5-10-10", massGrams: 45359.237 });
    expect(Object.keys(result)).toEqual(expect.arrayContaining(["elementPercent", "oxidePercent", "ratio"]));
    expect(result.ratio).toHaveLength(3);
    expect(result.ratio[0]).toBe(1);
  });

  test("in US units ounces and pounds stand first, the scale's grams beside", async () => {
    const { out } = await runTrug(["label", "5-10-15", "--mass", "80 lb", "--units", "us"]);
    expect(out).toContain("80 lb (36.3 kg) holds:");
    expect(out).toMatch(/N {2}4 lb \(1\.81 kg\)/);
    expect(out).toMatch(/counted as P2O5 8 lb \(3\.63 kg\)/);
  });

  test("the nitrogen's forms, what can be used of it, and what a litre holds", async () => {
    expect((await runTrug(["label", "uan-32"])).out).toMatch(
      /nitrate 8, ammonium 8, urea 16 %[\s\S]*a litre holds N 424 g/,
    );
    expect((await runTrug(["label", "cottonseed-meal"])).out).toContain("of the N, 55 to 75 % can be used");
  });

  test("a suspicious label is answered all the same, with a caution and exit 0", async () => {
    const { code, out } = await runTrug(["label", "13-0-38"]);
    expect(code).toBe(0);
    expect(out).toMatch(/^13-0-38: 13-0-38 \(N-P2O5-K2O\)\n/);
    expect(out).toContain("Take care: 13-0-38: with P and K read as oxides");
  });
});
