import { describe, expect, test } from "vitest";
import { readPlainQuantity } from "../quantity/quantity.ts";
import { lime } from "./lime.ts";
import type { LimeResult } from "./lime-input.ts";
import { type LimeRequest, readLime } from "./read-lime.ts";

// What a grower may take for a lime, or copy from a report the wrong way round.

const ASKED = { area: "1 m2", from: "5.5", to: "6.5", texture: "loam" };
const TESTED = { material: "CaCO3", area: "1 m2", from: "5.5", to: "6.4" };

function read(request: LimeRequest) {
  const input = readLime(request, { shelf: [], quantity: readPlainQuantity });
  return input.ok ? lime(input.value) : input;
}
const problemOf = (request: LimeRequest) => {
  const outcome = read(request);
  return outcome.ok ? undefined : outcome.problems[0];
};
const resultOf = (request: LimeRequest): LimeResult => {
  const outcome = read(request);
  if (!outcome.ok) throw new Error(outcome.problems[0]?.message);
  return outcome.value;
};
const codesOf = (request: LimeRequest): string[] => {
  const outcome = read(request);
  return outcome.ok ? outcome.cautions.map(({ code }) => code) : [];
};

describe("what is no lime", () => {
  test("a grade with nitrogen is none, whatever calcium carbonate equivalent is claimed for it", () => {
    expect(problemOf({ ...ASKED, material: "20-10-20", cce: "85%" })?.code).toBe("material-moves-no-ph");
    expect(problemOf({ ...ASKED, material: "0-1-3", cce: "45%" })).toBeUndefined();
  });

  test("an unknown name is answered with what moves a pH", () => {
    expect(problemOf({ ...ASKED, material: "limestone" })).toMatchObject({
      code: "product-unknown",
      path: "material",
      hint: expect.stringContaining("agricultural-lime"),
    });
  });

  test("no carbonate is stronger than magnesium carbonate, 119 %: the rest is slaked or burnt, and burns", () => {
    // unl-liming-materials, Table 4.4: MgCO3 119, Ca(OH)2 135, CaO 178 %.
    expect(problemOf({ ...ASKED, material: "agricultural-lime", cce: "119%" })).toBeUndefined();
    expect(problemOf({ ...ASKED, material: "agricultural-lime", cce: "120%" })?.code).toBe("cce-contradicts");
    expect(problemOf({ ...ASKED, material: "0-0-0", cce: "135%" })?.code).toBe("cce-contradicts");
    expect(problemOf({ ...ASKED, material: "hydrated-lime", cce: "135%" })).toBeUndefined();
    expect(problemOf({ ...ASKED, material: "CaO", cce: "178%" })).toBeUndefined();
  });
});

test("ash goes on in yearly goes of no more than its caution allows", () => {
  const { applications } = resultOf({ ...ASKED, material: "wood-ash", cce: "45%" });
  expect(applications.length).toBeGreaterThan(1);
  expect(applications.map(({ month }) => month)).toEqual(applications.map((_, go) => 12 * go));
  for (const { gramsPerSquareMetre } of applications) expect(gramsPerSquareMetre).toBeLessThanOrEqual(100);
  const whole = applications.reduce((sum, { gramsPerSquareMetre }) => sum + gramsPerSquareMetre, 0);
  expect(whole).toBeGreaterThan(100 * (applications.length - 1));
  expect(codesOf({ ...ASKED, material: "wood-ash", cce: "45%" })).not.toContain("lime-in-goes");
});

test("ash is salty and quick; limestone is neither", () => {
  const ash = codesOf({ ...ASKED, material: "wood-ash", cce: "45%" });
  expect(ash).toEqual(expect.arrayContaining(["ash-salty", "lime-quick"]));
  expect(ash).not.toContain("lime-slow");
  expect(codesOf({ ...ASKED, material: "agricultural-lime" })).not.toContain("ash-salty");
  expect(codesOf({ ...ASKED, material: "hydrated-lime" })).not.toContain("ash-salty");
});

test("a buffer below the soil's own pH is doubted, by more than its salts explain", () => {
  const doubted = (method: string, from: string, bufferPh: string) =>
    codesOf({ ...TESTED, from, method, bufferPh }).includes("buffer-below-soil");
  expect(doubted("sikora", "6.2", "5.5")).toBe(true);
  expect(doubted("mehlich-formula", "6.3", "5.6")).toBe(true);
  expect(doubted("sikora", "5.5", "6.2")).toBe(false);
  expect(doubted("sikora", "6.2", "6")).toBe(false);
  expect(codesOf({ ...TESTED, method: "mehlich-table", acidity: "3.9" })).not.toContain("buffer-below-soil");
});

describe("hints that lead on", () => {
  const hintOf = (request: LimeRequest) => problemOf(request)?.hint;

  test("a wrong unit of acidity is sent to the method that prints it", () => {
    expect(hintOf({ ...TESTED, method: "mehlich-table", acidity: "6 meq/100 cm3" })).toContain("mehlich-formula");
    expect(hintOf({ ...TESTED, method: "mehlich-formula", acidity: "6 meq/100 g" })).toContain("mehlich-table");
  });

  test("a goal beyond a range names one within it", () => {
    expect(hintOf({ ...ASKED, material: "S", from: "7", to: "4.4" })).toContain("--to 6.5");
    expect(hintOf({ ...TESTED, to: "7.3", method: "sikora", bufferPh: "6.2" })).toContain("--to 5.6 to 7.2");
  });

  test("a figure that the method does not go by is not taken for the one it does", () => {
    expect(problemOf({ ...TESTED, method: "sikora", acidity: "3" })).toMatchObject({
      path: "bufferPh",
      message: "sikora goes by the buffer's pH, which is missing.",
    });
  });

  test("a laboratory's other method is left to its own recommendation", () => {
    expect(hintOf({ ...TESTED, method: "litmus", bufferPh: "6.2" })).toContain("recommends");
    expect(hintOf({ ...TESTED, bufferPh: "6.2" })).toContain("report names it");
  });
});
