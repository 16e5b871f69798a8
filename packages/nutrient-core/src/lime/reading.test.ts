import { describe, expect, test } from "vitest";
import { readFineness } from "./fineness.ts";
import { readPh } from "./read-ph.ts";
import { readSoil } from "./read-soil.ts";
import { readTexture } from "./texture.ts";

describe("fineness, by each scheme's printed efficiencies", () => {
  test.each([
    ["through 60 mesh 90, 20-60 mesh 6, 8-20 mesh 4", 0.944, "bc-limestone-637200"],
    ["< 60: 50%; 20 to 60: 50%", 0.8, "bc-limestone-637200"],
    ["through 100 mesh 60, 60-100 mesh 20, 20-60 mesh 20", 0.84, "cornell-cca-lime"],
    ["through 100 mesh 60, 20-100 mesh 40", 0.84, "cornell-afs-7"],
    // All of it is fine: every scheme that has the class says so.
    ["through 100 mesh 100", 1, "cornell-cca-lime"],
    // What is left over, 30 %, is coarser than 8 mesh.
    ["through 60 mesh 40, 8-20 mesh 30", 0.46, "bc-limestone-637200"],
    // Rounded percents may make a little more than the whole.
    ["through 60 mesh 90.2, 20-60 mesh 10.2", 0.9632, "bc-limestone-637200"],
    ["94%", 0.94, null],
  ])("%s", (text, efficiency, source) => {
    const read = readFineness(text);
    expect(read.ok && read.value.source).toBe(source);
    // Sums of a few products: floating arithmetic only.
    expect(Math.abs((read.ok ? read.value.value : 0) - efficiency)).toBeLessThan(1e-12);
  });

  test("a bare number is a problem, and the hint never a percent that would be refused", () => {
    const hint = (text: string) => {
      const read = readFineness(text);
      return read.ok ? read.value.value : read.problems[0]!.hint;
    };
    expect(["0.9", "90", "0.9%"].map(hint)).toEqual([
      "write 90%, if the bag says so",
      "write 90%, if the bag says so",
      "write 90%, if the bag says so",
    ]);
    expect(["0", "5%", "101%"].map(hint)).toEqual([
      "copy the percent from the bag's label",
      "copy the percent from the bag's label",
      "copy the percent from the bag's label",
    ]);
    expect(["10%", "100%"].map(hint)).toEqual([0.1, 1]);
  });

  test("of a lime so coarse that a tenth of it works, no amount is told", () => {
    const code = (text: string) => {
      const read = readFineness(text);
      return read.ok || read.problems[0]!.code;
    };
    expect(["8-20 mesh 50", "8-20 mesh 49", "through 60 mesh 0"].map(code)).toEqual([
      true,
      "fineness-unreadable",
      "fineness-unreadable",
    ]);
  });
});

test("a texture by any name of the soil triangle", () => {
  const known = (text: string) => {
    const read = readTexture(text);
    return read.ok && read.value;
  };
  expect(["Sandy loam", "sandy_loam soil", "SAND", "loamy sand"].map(known)).toEqual([
    "sandy-loam",
    "sandy-loam",
    "sand",
    "sand",
  ]);
  expect(["silt", "Silt loam", "silty clay loam", "sandy clay"].map(known)).toEqual([
    "loam",
    "loam",
    "clay-loam",
    "clay",
  ]);
  expect(known("constructor")).toBe(false);
});

test("a pH with and without its sign, with a comma, and at the ends of what is possible", () => {
  const read = (text: string) => {
    const ph = readPh(text);
    return ph.ok ? ph.value : ph.problems[0]!.code;
  };
  expect(["5.6", "pH 5.6", "ph5,6", "3", "10"].map(read)).toEqual([5.6, 5.6, 5.6, 3, 10]);
  expect(["2.99", "10.01", "", "5.6 g", "5-6"].map(read)).toEqual([
    "ph-out-of-range",
    "ph-out-of-range",
    "ph-unreadable",
    "ph-unreadable",
    "ph-unreadable",
  ]);
});

test("an acidity in the unit of its method, or without", () => {
  const read = (method: string, acidity: string) => {
    const soil = readSoil({ method, acidity });
    return soil.ok ? soil.value.kind === "test" && "acidity" in soil.value.test && soil.value.test.acidity : false;
  };
  expect(
    ["3.9", "3.9 meq/100 g", "3.9 meq/100g", "3.9 cmol/kg", "3.9 cmol(+)/kg"].map((a) => read("mehlich-table", a)),
  ).toEqual([3.9, 3.9, 3.9, 3.9, 3.9]);
  expect(["1.2", "1.2 meq/100 cm3", "1.2 meq/100cc"].map((a) => read("Mehlich formula", a))).toEqual([1.2, 1.2, 1.2]);
  expect(read("mehlich-formula", "1.2 meq/100 g")).toBe(false);
  expect(read("mehlich-table", "1.2 meq/100 cm3")).toBe(false);
});
