import { ATOMIC_WEIGHT } from "../element/atomic-weight.ts";
import { molarMass } from "../element/formula.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { fractionOf, type Product } from "./product.ts";

const CALCIUM_CARBONATE = molarMass({ Ca: 1, C: 1, O: 3 });

/** Carbonates, hydroxides and oxides; what of them holds neither calcium nor magnesium is no lime. */
const NEUTRALISES = /CO3|OH|^(?:Ca|Mg)O$/;

/** Whether a product is a carbonate, hydroxide or oxide of calcium or magnesium, by its formula. */
export function isLimeByFormula(product: Product): boolean {
  const holds = fractionOf(product, "Ca") > 0 || fractionOf(product, "Mg") > 0;
  return holds && NEUTRALISES.test(product.formula ?? "");
}

/**
 * How much calcium carbonate neutralises as much acid as the calcium and magnesium of a lime do: each atom of either
 * stands for one CaCO3. Right for carbonates, hydroxides and oxides; of ash it is the most.
 *
 * @param held Calcium and magnesium in a lime: grams, g/m2 or mass fractions, of the elements.
 * @returns The calcium carbonate in the same unit. Source: ciaaw-2021.
 * @example
 * asCalciumCarbonate({ Ca: 40.078 })  // => 100.086
 */
export function asCalciumCarbonate({ Ca = 0, Mg = 0 }: { readonly Ca?: number; readonly Mg?: number }): number {
  return (Ca / ATOMIC_WEIGHT.Ca + Mg / ATOMIC_WEIGHT.Mg) * CALCIUM_CARBONATE;
}

/**
 * What is a lime worth beside pure calcium carbonate (its calcium carbonate equivalent, or neutralizing value)?
 *
 * CCE = (Ca / 40.078 + Mg / 24.305) x 100.086, from the mass fractions of both.
 *
 * @param product Any product; only a carbonate, hydroxide or oxide of calcium or magnesium has one by its formula.
 * @returns A fraction by mass, 1 for pure calcium carbonate; undefined for what is no lime by its formula.
 * @example
 * calciumCarbonateEquivalent(readProduct("Ca(OH)2").value)  // => 1.35083...
 */
export function calciumCarbonateEquivalent(product: Product): number | undefined {
  if (!isLimeByFormula(product)) return undefined;
  return asCalciumCarbonate({ Ca: fractionOf(product, "Ca"), Mg: fractionOf(product, "Mg") });
}

/** The working of {@link calciumCarbonateEquivalent}. */
export function equivalentWorking(product: Product, value: number): WorkingLine {
  const parts = (["Ca", "Mg"] as const).flatMap((element) => {
    const share = fractionOf(product, element);
    return share > 0 ? [`${term(share)} / ${ATOMIC_WEIGHT[element]}`] : [];
  });
  return {
    label: `${product.name} as calcium carbonate`,
    expression: `(${parts.join(" + ")}) * (${ATOMIC_WEIGHT.Ca} + ${ATOMIC_WEIGHT.C} + 3 * ${ATOMIC_WEIGHT.O})`,
    value,
    unit: "",
    source: "ciaaw-2021",
  };
}
