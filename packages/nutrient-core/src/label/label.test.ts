import fc from "fast-check";
import { all, create } from "mathjs";
import { describe, expect, test } from "vitest";
import sources from "../../../../test-data/sources.json" with { type: "json" };
import type { Answer } from "../outcome/outcome.ts";
import type { WorkingLine } from "../outcome/working.ts";
import { MATERIALS } from "../product/materials.ts";
import { readQuantity } from "../quantity/expression.ts";
import { label } from "./label.ts";
import type { LabelResult } from "./label-result.ts";
import { type LabelRequest, readLabelRequest } from "./read-label-request.ts";

const context = { shelf: [], quantity: readQuantity };
const math = create(all!, {});

interface Labelled {
  readonly result: LabelResult;
  readonly codes: readonly string[];
  readonly working: readonly WorkingLine[];
}

function labelled(request: LabelRequest): Labelled {
  const input = readLabelRequest(request, context);
  if (!input.ok) throw new Error(input.problems.map(({ message }) => message).join(" "));
  const outcome = label(input.value) as Answer<LabelResult>;
  return {
    result: outcome.value,
    codes: outcome.cautions.map(({ code }) => code),
    working: [...input.working, ...outcome.working],
  };
}

const problemCodes = (request: unknown): readonly string[] => {
  const input = readLabelRequest(request, context);
  return input.ok ? [] : input.problems.map(({ code, path }) => `${path} ${code}`);
};

/** Floating arithmetic along two routes of a few operations. */
const ROUNDING = 1e-12;
const close = (a: number, b: number, tolerance = ROUNDING) =>
  expect(Math.abs(a - b), `${a} against ${b}`).toBeLessThanOrEqual(tolerance * Math.max(Math.abs(a), Math.abs(b)));

describe("what a label says", () => {
  test("N, P and K stand there even when they are none of it, in both namings", () => {
    const { result } = labelled({ product: "21-0-0 + 24 S" });
    expect(result.elementPercent).toMatchObject({ N: 21, P: 0, K: 0, S: 24 });
    expect(Object.keys(result.oxidePercent)).toEqual(expect.arrayContaining(["N", "P2O5", "K2O", "SO3"]));
    for (const element of ["P", "K", "S"]) expect(Object.keys(result.oxidePercent)).not.toContain(element);
  });

  test("oxides as Regulation (EC) 2003/2003 art. 6 prints their factors: Ca 0.715, Mg 0.603, S 0.400", () => {
    const { result } = labelled({ product: "10-10-10 + 10 CaO + 10 MgO + 10 SO3" });
    // Half a unit of the third place of the printed factor, times ten percent.
    expect(Math.abs(result.elementPercent.Ca! - 7.15)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(result.elementPercent.Mg! - 6.03)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(result.elementPercent.S! - 4.0)).toBeLessThanOrEqual(0.005);
    close(result.oxidePercent.MgO!, 10);
  });

  test("nitrogen forms stand apart and make the total that is not printed", () => {
    const { result } = labelled({ product: "NO3-N 14.4, NH4-N 1.1, Ca 19" });
    close(result.elementPercent.N!, 15.5);
    expect(Object.keys(result.nitrogenFormsPercent!)).toEqual(["NO3-N", "NH4-N"]);
    close(result.nitrogenFormsPercent!["NO3-N"]!, 14.4);
  });

  test("a formula has its molar mass, a purity lessens only its contents", () => {
    // 101.102 g/mol from the CIAAW abridged weights, added up by hand.
    const [pure, technical] = [labelled({ product: "KNO3" }).result, labelled({ product: "KNO3 98%" }).result];
    close(pure.molarMassGramsPerMole!, 39.098 + 14.007 + 3 * 15.999);
    expect(technical.molarMassGramsPerMole).toBe(pure.molarMassGramsPerMole);
    close(technical.elementPercent.K!, 0.98 * pure.elementPercent.K!);
  });

  test("28 % N by mass at 1.279 kg/L is 358 g N in a litre (physical-characteristics-sheet)", () => {
    const { result } = labelled({ product: "urea-ammonium-nitrate-28" });
    // Half of the last printed place.
    expect(Math.abs(result.gramsPerLitre!.N! - 358)).toBeLessThanOrEqual(0.5);
  });

  test("a solid has no grams per litre: what a litre of granules holds is no strength of a liquid", () => {
    expect(labelled({ product: "potassium-nitrate" }).result.gramsPerLitre).toBeUndefined();
  });

  test("33 % by volume at 1.32 kg/L is 25 % by mass (an industry note prints both for one liquid)", () => {
    const { result } = labelled({ product: "N 33", by: "volume", density: "1.32 kg/L" });
    close(result.elementPercent.N!, 25);
    close(result.gramsPerLitre!.N!, 330);
  });

  test("a remembered analysis says so", () => {
    expect(labelled({ product: "epsom-salt" }).codes).toContain("label-from-memory");
    expect(labelled({ product: "potassium-nitrate" }).codes).toEqual(["hazard-oxidiser", "hazard-eyes"]);
  });
});

describe("what cannot be used", () => {
  test.each([
    [{ product: "" }, "product product-unknown"],
    [{ product: "5-10" }, "product grade-unreadable"],
    [{ product: "5-10-10", mass: "3 L" }, "mass dimension-mismatch"],
    [{ product: "5-10-10", mass: "50" }, "mass unit-missing"],
    [{ product: "5-10-10", mass: "-1 kg" }, "mass not-positive"],
    [{ product: "5-10-10", basis: "atoms" }, "basis choice-unknown"],
    [{ product: "5-10-10", by: "volume" }, "product density-missing"],
    [{ product: "5-10-10", by: "volume", density: "0 kg/L" }, "density density-unreadable"],
    [{ product: "5-10-10", colour: "blue" }, "colour field-unknown"],
    [{}, "product field-missing"],
    [undefined, " field-missing"],
  ])("%j", (request, problem) => expect(problemCodes(request)).toContain(problem));

  test("all that is wrong is said at once", () => {
    expect(problemCodes({ product: "nothing-known", mass: "soon" }).length).toBe(2);
  });
});

const percent = fc.integer({ min: 1, max: 250 }).map((tenths) => tenths / 10);
const grade = fc.tuple(percent, percent, percent);

describe("properties", () => {
  test("the ratio has no scale: a grade and a part of it share it", () => {
    fc.assert(
      fc.property(grade, fc.integer({ min: 2, max: 9 }), (numbers, parts) => {
        const whole = labelled({ product: numbers.join("-") }).result.ratio;
        const part = labelled({ product: numbers.map((number) => number / parts).join("-") }).result.ratio;
        whole.forEach((value, index) => {
          close(value, part[index]!, 1e-9);
        });
        expect(Math.min(...whole)).toBe(1);
      }),
    );
  });

  test("reading an oxide label's elements as an element label gives the label back", () => {
    fc.assert(
      fc.property(grade, (numbers) => {
        const read = labelled({ product: numbers.join("-") }).result;
        const { N, P, K } = read.elementPercent;
        const back = labelled({ product: `N ${N}, P ${P}, K ${K}` }).result;
        close(back.oxidePercent.P2O5!, numbers[1]);
        close(back.oxidePercent.K2O!, numbers[2]);
        // The element weighs less than its oxide.
        expect(P!).toBeLessThan(numbers[1]);
        expect(K!).toBeLessThan(numbers[2]);
      }),
    );
  });

  test("contents grow with the mass, and are the percent of it", () => {
    fc.assert(
      fc.property(grade, fc.integer({ min: 1, max: 5000 }), (numbers, grams) => {
        const [one, two] = [grams, 2 * grams].map(
          (mass) => labelled({ product: `${numbers.join("-")} + 2 MgO`, mass: `${mass} g` }).result,
        ) as [LabelResult, LabelResult];
        for (const [form, { massGrams }] of Object.entries(one.contents!))
          close(two.contents![form]!.massGrams, 2 * massGrams);
        for (const form of ["N", "P2O5", "K2O", "MgO"] as const)
          close((100 * one.contents![form]!.massGrams) / grams, one.oxidePercent[form]!);
        for (const form of ["P", "K", "Mg"] as const)
          close((100 * one.contents![form]!.massGrams) / grams, one.elementPercent[form]!);
      }),
    );
  });

  test("the order of the lines does not matter", () => {
    const lines = fc.shuffledSubarray(["N 5", "P2O5 10", "K2O 10", "2 MgO", "Fe 0.1", "B 0.02"], { minLength: 6 });
    const inOrder = labelled({ product: "N 5, P2O5 10, K2O 10, 2 MgO, Fe 0.1, B 0.02" }).result;
    fc.assert(
      fc.property(lines, (shuffled) => {
        const { elementPercent, oxidePercent, ratio } = labelled({ product: shuffled.join(", ") }).result;
        expect({ elementPercent, oxidePercent, ratio }).toEqual({
          elementPercent: inOrder.elementPercent,
          oxidePercent: inOrder.oxidePercent,
          ratio: inOrder.ratio,
        });
      }),
    );
  });

  test("percent by volume is percent by mass times the density", () => {
    fc.assert(
      fc.property(grade, fc.integer({ min: 100, max: 170 }), (numbers, hundredths) => {
        const density = hundredths / 100;
        const byMass = labelled({ product: numbers.join("-"), density: `${density} kg/L` }).result;
        const byVolume = labelled({ product: numbers.join("-"), by: "volume", density: `${density} kg/L` }).result;
        close(byVolume.elementPercent.K! * density, byMass.elementPercent.K!);
        close(byVolume.gramsPerLitre!.K2O!, 10 * numbers[2]);
      }),
    );
  });
});

describe("every line of the working, evaluated by mathjs, is its value", () => {
  const requests: LabelRequest[] = [
    ...MATERIALS.map(({ id }) => ({ product: id, mass: "50 lb" })),
    ...["KNO3", "KNO3 98%", "MgSO4.7H2O", "5Ca(NO3)2·NH4NO3·10H2O", "P2O5", "CO(NH2)2", "NO3"].map((product) => ({
      product,
      mass: "1 kg",
    })),
    { product: "5-10-10 + 3 CaO + 2 MgO + 1 Mg + 5 SO3", mass: "6 * 50 kg" },
    { product: "13.5-1.9-8.0", basis: "element", mass: "1 kg" },
    { product: "NO3 20, NH4 3, K2O 10", mass: "1 kg" },
    { product: "8-4-6 + 1 Fe", by: "volume", density: "1.15 kg/L", mass: "1.15 kg" },
  ];
  test.each(requests)("$product", (request) => {
    const { working } = labelled(request);
    expect(working.length).toBeGreaterThan(0);
    for (const { label: about, expression, value, unit, source } of working) {
      const evaluated = unit === "" ? math.evaluate(expression) : math.evaluate(expression).toNumber(unit);
      expect(typeof evaluated, `${about}: ${expression}`).toBe("number");
      expect(Math.abs(evaluated - value), `${about}: ${expression}`).toBeLessThanOrEqual(1e-9 * Math.abs(value));
      if (source !== null) expect(Object.keys(sources)).toContain(source);
    }
  });

  test("the lines end at what is answered", () => {
    const { working, result } = labelled({ product: "0-10-0", mass: "1 kg" });
    const found = (about: string) => working.find(({ label: name }) => name === about)!.value;
    expect(found("percent P from P2O5")).toBe(result.elementPercent.P);
    expect(found("P in it")).toBe(result.contents!["P"]!.massGrams);
    expect(found("P2O5 in it")).toBe(result.contents!["P2O5"]!.massGrams);
  });

  test("an oxide that is printed has no line back to itself", () => {
    const about = labelled({ product: "5-10-10" }).working.map(({ label: name }) => name);
    expect(about).toContain("percent P from P2O5");
    expect(about).not.toContain("percent P2O5 for P");
  });
});
