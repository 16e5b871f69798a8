import fc from "fast-check";
import { MF } from "mf-parser";
import { describe, expect, test } from "vitest";
import { addContents, asElement, asOxide, percentOf } from "./content.ts";
import { type AtomCounts, massFractions, molarMass, readFormula } from "./formula.ts";
import { elementPerForm, formNamed, OXIDES, type OxideName } from "./nutrient.ts";

const atoms = (text: string): AtomCounts => {
  const read = readFormula(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.value;
};

const SALTS = [
  "KNO3",
  "NH4NO3",
  "(NH4)2SO4",
  "CO(NH2)2",
  "Ca(NO3)2·4H2O",
  "5Ca(NO3)2·NH4NO3·10H2O",
  "MgSO4·7H2O",
  "Ca(H2PO4)2·H2O",
  "K2SO4·2MgSO4",
  "CaMg(CO3)2",
  "Na2B4O7·10H2O",
  "(NH4)6Mo7O24·4H2O",
  "FeSO4·7H2O",
  "MnSO4·H2O",
  "CuSO4·5H2O",
  "KH2PO4",
];

describe("formulas, against an independent reader (mf-parser, with the separator it understands)", () => {
  test.each(SALTS)("%s", (formula) => {
    // Its atomic weights are conventional values of an earlier table: 1e-4 relative covers the difference.
    const other = new MF(formula.replaceAll("·", " . ")).getInfo().mass;
    expect(Math.abs(molarMass(atoms(formula)) / other - 1)).toBeLessThan(1e-4);
  });

  test("every way of writing the water of a hydrate gives 246.47 g/mol for Epsom salt", () => {
    for (const dot of ["·", ".", "*", "•", " . "]) {
      expect(Math.abs(molarMass(atoms(`MgSO4${dot}7H2O`)) - 246.466)).toBeLessThan(0.001);
    }
    expect(atoms("MgSO₄·7H₂O")).toEqual(atoms("MgSO4.7H2O"));
  });

  test.each(["", "KNO", "kno3", "K(NO3", "KNO3)", "Xx2", "K0", "·7H2O", "7", "KNO3 98%", "K-NO3", "K(NO3)0"])(
    "%j: a problem or a formula, never an exception",
    (text) => {
      const read = readFormula(text);
      if (text !== "KNO") expect(read.ok).toBe(false);
    },
  );
});

describe("oxide factors, against the factors printed in Regulation (EC) 2003/2003, article 6 (three digits)", () => {
  test.each([
    ["P2O5", 0.436],
    ["K2O", 0.83],
    ["CaO", 0.715],
    ["MgO", 0.603],
    ["Na2O", 0.742],
    ["SO3", 0.4],
  ] as const)("%s", (oxide, printed) => {
    // Half a unit of the last printed place.
    expect(Math.abs(elementPerForm(oxide) - printed)).toBeLessThanOrEqual(0.0005);
  });
});

describe("oxide factors, against six-digit ratios of the abridged weights of 2021 (CIAAW), worked out by hand", () => {
  test.each([
    ["P2O5", 0.436429],
    ["K2O", 0.83015],
    ["CaO", 0.714696],
    ["MgO", 0.603042],
    ["Na2O", 0.741864],
    ["SO3", 0.400465],
    ["SiO2", 0.467437],
    ["B2O3", 0.310556],
    ["NO3", 0.225905],
    ["NH4", 0.776484],
    ["SO4", 0.333764],
    ["H2PO4", 0.319366],
  ] as const)("%s", (form, ratio) => {
    // Half a unit of the last digit.
    expect(Math.abs(elementPerForm(form) - ratio)).toBeLessThanOrEqual(5e-7);
  });
});

test("property: oxide and element convert back and forth", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...(Object.keys(OXIDES) as OxideName[])),
      fc.double({ min: 0.01, max: 60, noNaN: true }),
      (oxide, percent) => {
        const element = asElement(percentOf(oxide, percent)) as Parameters<typeof asOxide<typeof oxide>>[0];
        const back = asOxide(element, oxide);
        expect(Math.abs(back.massFraction * 100 - percent)).toBeLessThanOrEqual(percent * 1e-12);
        expect(element.massFraction).toBeLessThan(back.massFraction);
      },
    ),
  );
});

test("property: the mass fractions of a substance add to one, whatever the order of its pieces", () => {
  fc.assert(
    fc.property(fc.constantFrom(...SALTS), (formula) => {
      const fractions = Object.values(massFractions(atoms(formula)));
      expect(Math.abs(fractions.reduce((a, b) => a + b, 0) - 1)).toBeLessThan(1e-12);
      expect(atoms(formula.split("·").reverse().join("·"))).toEqual(atoms(formula));
    }),
  );
});

test("names of forms", () => {
  expect(formNamed("potash")).toBe("K2O");
  expect(formNamed("p₂o₅")).toBe("P2O5");
  expect(formNamed("no3-n")).toBe("NO3-N");
  expect(formNamed("unobtainium")).toBeUndefined();
  expect(addContents(percentOf("N", 1), percentOf("N", 2)).massFraction).toBeCloseTo(0.03, 15);
});
