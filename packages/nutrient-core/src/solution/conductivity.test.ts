import fc from "fast-check";
import { evaluate } from "mathjs";
import { describe, expect, test } from "vitest";
import { MATERIALS } from "../product/materials.ts";
import { conductivityOfIons, electricalConductivity } from "./conductivity.ts";
import { amountsOf, relativeError, SOLUTION_1 } from "./testing/support.ts";

const inOneLitre = (formula: string, grams: number) => electricalConductivity(amountsOf([formula, grams]), 1);

describe("potassium chloride, standard-methods-2510 (Table 2510:I, 25 °C, mol/L and µS/cm)", () => {
  test.each([
    [0.0001, 14.9],
    [0.0005, 73.9],
    [0.001, 146.9],
    [0.005, 717.5],
    [0.01, 1412],
    [0.02, 2765],
    [0.05, 6667],
    [0.1, 12890],
  ])("%d mol/L", (molar, printed) => {
    // Asked of this model: 1 %. The table is good to 0.1 %, and its first row to half of the last place.
    const measured = inOneLitre("KCl", molar * 74.548).milliSiemensPerCm * 1000;
    expect(Math.abs(relativeError(measured, printed))).toBeLessThan(0.01);
  });
});

describe("single salts, electrolyte-conductivity-2011 (fits to measurements, 25 °C, g/L and mS/cm)", () => {
  const rows: Readonly<Record<string, readonly (readonly [number, number])[]>> = {
    KCl: [[0.25, 0.487], [0.5, 0.96], [1, 1.887], [2, 3.69]], // biome-ignore format: a row a salt
    KNO3: [[0.25, 0.346], [0.5, 0.684], [1, 1.346], [2, 2.635]], // biome-ignore format: a row a salt
    NH4Cl: [[0.25, 0.676], [0.5, 1.336], [1, 2.628], [2, 5.138]], // biome-ignore format: a row a salt
    K2SO4: [[0.25, 0.415], [0.5, 0.801], [1, 1.528], [2, 2.888]], // biome-ignore format: a row a salt
    CaCl2: [[0.25, 0.561], [0.5, 1.091], [1, 2.106], [2, 4.033]], // biome-ignore format: a row a salt
    MgCl2: [[0.25, 0.625], [0.5, 1.211], [1, 2.322], [2, 4.406]], // biome-ignore format: a row a salt
    NaCl: [[0.25, 0.522], [0.5, 1.025], [1, 2.004], [2, 3.889]], // biome-ignore format: a row a salt
  };
  test.each(Object.entries(rows).flatMap(([salt, row]) => row.map(([g, ec]) => [salt, g, ec] as const)))(
    "%s at %d g/L",
    (salt, gramsPerLitre, printed) => {
      // Asked of this model: 5 %. It keeps 2.3 % here.
      expect(Math.abs(relativeError(inOneLitre(salt, gramsPerLitre).milliSiemensPerCm, printed))).toBeLessThan(0.025);
    },
  );
});

describe("sulfates of divalent metals pair up: equivalent conductivities at 25 °C, from memory", () => {
  // A second look at the ion pairs, never the only one: S cm2 per mole of charge, by moles of charge per litre.
  test.each([
    ["CuSO4", 159.602, 0.0005, 121.6],
    ["CuSO4", 159.602, 0.001, 115.2],
    ["CuSO4", 159.602, 0.005, 94.02],
    ["CuSO4", 159.602, 0.01, 83.08],
    ["ZnSO4", 161.436, 0.0005, 121.3],
    ["ZnSO4", 161.436, 0.001, 114.47],
    ["ZnSO4", 161.436, 0.005, 95.44],
    ["ZnSO4", 161.436, 0.01, 84.87],
  ])("%s (%d g/mol) at %d equivalents per litre", (salt, gramsPerMole, equivalents, lambda) => {
    const result = inOneLitre(salt, (equivalents / 2) * gramsPerMole);
    // Asked of this model: 5 %.
    expect(Math.abs(relativeError(result.milliSiemensPerCm, lambda * equivalents))).toBeLessThan(0.05);
  });
});

describe("complete feeds for substrates, sonneveld-straver-1994 (from memory, mmol/L and mS/cm printed to 0.1)", () => {
  test.each([
    ["pepper", { NH4: 0.5, K: 6.75, Ca: 5, Mg: 1.5, NO3: 15.5, SO4: 1.75, H2PO4: 1.25 }, 2.1],
    ["tomato", { NH4: 1.2, K: 9.5, Ca: 5.4, Mg: 2.4, NO3: 16, SO4: 4.4, H2PO4: 1.5 }, 2.6],
    ["cucumber", { NH4: 1.25, K: 8, Ca: 4, Mg: 1.375, NO3: 16, SO4: 1.375, H2PO4: 1.25 }, 2.2],
    ["aubergine", { NH4: 1.5, K: 6.75, Ca: 3.25, Mg: 2.5, NO3: 15.5, SO4: 1.5, H2PO4: 1.25 }, 2.1],
    ["lettuce", { NH4: 1.25, K: 11, Ca: 4.5, Mg: 1, NO3: 19, SO4: 1.125, H2PO4: 2 }, 2.6],
  ])("%s", (_, millimolar, printed) => {
    const ions = Object.fromEntries(Object.entries(millimolar).map(([ion, amount]) => [ion, amount / 1000]));
    // Asked of this model: 5 %; half of the last printed place is another 2.4 % at 2.1.
    expect(Math.abs(relativeError(conductivityOfIons(ions).milliSiemensPerCm, printed))).toBeLessThan(0.074);
  });
});

test("urea carries no current", () => {
  expect(inOneLitre("CO(NH2)2", 5)).toMatchObject({ milliSiemensPerCm: 0, known: true });
});

describe("products known by their grade: the range, against EC per 100 mg/L N (from memory, comparison only)", () => {
  test.each([
    ["20-10-20", 20, 0.62, 0.68],
    ["15-0-15", 15, 0.67, 0.75],
    ["20-20-20", 20, 0.39, 0.46],
    ["15-16-17", 15, 0.62, 0.68],
    ["15.5-0-0 + 19 Ca", 15.5, 0.74, 0.77],
    ["15-5-15", 15, 0.74, 0.74],
  ])("%s", (grade, percentNitrogen, low, high) => {
    const { known, range } = inOneLitre(grade, 10 / percentNitrogen);
    expect(known).toBe(false);
    expect(range![0]).toBeLessThanOrEqual(low);
    expect(range![1]).toBeGreaterThanOrEqual(high);
  });

  test("a label that names the forms of its nitrogen leaves nothing open", () => {
    const { milliSiemensPerCm, known } = inOneLitre("20-20-20 + 5.6 NO3-N + 3.9 NH4-N + 10.5 urea-N", 0.5);
    expect(known).toBe(true);
    // The same comparison from memory: 0.39 to 0.46 for a grade with so much urea.
    expect(milliSiemensPerCm).toBeGreaterThan(0.39);
    expect(milliSiemensPerCm).toBeLessThan(0.46);
  });

  test("what does not move the whole by a twentieth leaves it known", () => {
    const traces = electricalConductivity([...amountsOf(["iron-dtpa", 0.02]), ...SOLUTION_1], 1);
    expect(traces).toMatchObject({ known: true });
    expect(traces.range).toBeUndefined();
  });
});

describe("what lies undissolved or is neutralised", () => {
  test("lime adds what dissolves of it, however much is thrown in", () => {
    const [spoon, sack] = [inOneLitre("agricultural-lime", 1), inOneLitre("agricultural-lime", 1000)];
    expect(sack.milliSiemensPerCm).toBe(spoon.milliSiemensPerCm);
    expect(sack.milliSiemensPerCm).toBeLessThan(0.1);
  });

  test("acid in a hard water lowers its conductivity until the bicarbonate is gone", () => {
    const hard = { ions: { Ca: 0.002, HCO3: 0.004 } };
    const acid = amountsOf(["HNO3", 63.012 * 0.003]);
    const before = electricalConductivity([], 1, hard).milliSiemensPerCm;
    // 3 of 4 mmol/L bicarbonate become nitrate, no hydrogen is left: 3 mmol/L times the difference of the ions.
    const after = electricalConductivity(acid, 1, hard).milliSiemensPerCm;
    expect(Math.abs(after - before - 0.003 * (71.42 - 44.5))).toBeLessThan(0.01);
  });
});

test("a water's own reading is added, its ions are counted", () => {
  const salt = amountsOf(["KNO3", 1]);
  const alone = electricalConductivity(salt, 1).milliSiemensPerCm;
  const added = electricalConductivity(salt, 1, { milliSiemensPerCm: 0.5 }).milliSiemensPerCm;
  expect(Math.abs(added - alone - 0.5)).toBeLessThan(1e-12);
  const skewed = electricalConductivity(salt, 1, { ions: { Ca: 0.001, HCO3: 0.001 } }).chargeBalance;
  expect(skewed.cationMilliequivalents - skewed.anionMilliequivalents).toBeGreaterThan(0.99);
});

describe("working", () => {
  const cases = {
    "solution 1": electricalConductivity(SOLUTION_1, 1),
    "a grade in water that was metered": electricalConductivity(amountsOf(["20-20-20", 10], ["KNO3", 3]), 10, {
      milliSiemensPerCm: 0.4,
    }),
    "acid in a hard water": electricalConductivity(amountsOf(["H3PO4", 0.1]), 1, { ions: { Ca: 0.002, HCO3: 0.004 } }),
    "grades taken as one, with a salt": electricalConductivity(
      amountsOf(["KNO3", 2], ["20-20-20", 1], ["15-0-15", 2], ["10-30-10", 1], ["5-10-10", 3]),
      10,
    ),
    nothing: electricalConductivity([], 10),
  };
  test.each(Object.entries(cases))("every line of %s comes out", (_, { working, milliSiemensPerCm }) => {
    for (const { label, expression, value, unit } of working) {
      const result = evaluate(expression);
      const number = typeof result === "number" ? result : result.toNumber(unit);
      // Floating arithmetic only; differences of near equals lose digits, hence the absolute part.
      expect(Math.abs(number - value), label).toBeLessThanOrEqual(1e-9 * Math.abs(value) + 1e-12);
    }
    expect(working.at(-1)!.value).toBe(milliSiemensPerCm);
  });
  test.each(Object.entries(cases))(
    "in %s no number appears from nowhere: each ion conducts what a line before left of it",
    (_, { working }) => {
      working.forEach(({ label, expression }, at) => {
        const [, ion] = /^(.*?\S+(?: \d[+-])?) conducts$/.exec(label) ?? [];
        if (ion === undefined || ion.includes(" with ")) return;
        const concentration = Number(/([\d.e+-]+) mmol\/L/.exec(expression)![1]);
        expect(working[at - 1]!.label.startsWith(ion), label).toBe(true);
        expect(working[at - 1]!.value).toBe(concentration);
      });
    },
  );

  test("charged pairs conduct like the single ion they are: Ca2+ with H2PO4- in solution 1", () => {
    const { fromPairs, association } = conductivityOfIons({
      K: 0.006,
      Ca: 0.005,
      Mg: 0.002,
      NO3: 0.015,
      SO4: 0.002,
      H2PO4: 0.001,
    });
    const pair = fromPairs.find(({ pair: { cation, anion } }) => cation === "Ca" && anion === "H2PO4")!;
    const calciumPaired = association.pairs.find(({ cation, anion }) => cation === "Ca" && anion === "H2PO4")!;
    // Limiting conductivity 33, ionic strength 0.0267: gamma 0.856 to the power 0.6.
    const byHand = 33 * calciumPaired.concentration * 0.856 ** 0.6;
    expect(Math.abs(relativeError(pair.milliSiemensPerCm, byHand))).toBeLessThan(0.001);
    expect(cases["solution 1"].working.map(({ label }) => label)).toContain("Ca2+ with H2PO4- conducts");
  });
});

describe("properties", () => {
  const dissolving = MATERIALS.filter(({ state, leavesResidue }) => state === "solid" && !leavesResidue);
  const anyAmounts = fc.array(
    fc.record({ product: fc.constantFrom(...dissolving), massGrams: fc.double({ min: 0.01, max: 3, noNaN: true }) }),
    { minLength: 1, maxLength: 6 },
  );

  test("scaling: twice the salts in twice the water read the same", () => {
    fc.assert(
      fc.property(anyAmounts, fc.double({ min: 0.1, max: 100, noNaN: true }), (amounts, times) => {
        const once = electricalConductivity(amounts, 1).milliSiemensPerCm;
        const scaled = amounts.map((amount) => ({ ...amount, massGrams: amount.massGrams * times }));
        expect(Math.abs(electricalConductivity(scaled, times).milliSiemensPerCm - once)).toBeLessThan(
          1e-9 * once + 1e-12,
        );
      }),
    );
  });

  test("order does not matter, and bounds hold their middle", () => {
    fc.assert(
      fc.property(anyAmounts, (amounts) => {
        const there = electricalConductivity(amounts, 1);
        const back = electricalConductivity([...amounts].reverse(), 1);
        expect(Math.abs(there.milliSiemensPerCm - back.milliSiemensPerCm)).toBeLessThan(
          1e-9 * there.milliSiemensPerCm + 1e-12,
        );
        expect(Number.isFinite(there.milliSiemensPerCm)).toBe(true);
        if (there.range) {
          expect(there.range[0]).toBeLessThan(there.milliSiemensPerCm);
          expect(there.range[1]).toBeGreaterThan(there.milliSiemensPerCm);
        }
      }),
    );
  });

  test("salts are neutral: the charges balance, for known salts and for grades", () => {
    const grade = fc
      .tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 30 }), fc.integer({ min: 1, max: 40 }))
      .map((numbers) => amountsOf([numbers.join("-"), 1]));
    fc.assert(
      fc.property(fc.oneof(grade, anyAmounts), (amounts) => {
        expect(Math.abs(electricalConductivity(amounts, 1).chargeBalance.relativeError)).toBeLessThan(1e-9);
      }),
    );
  });
});
