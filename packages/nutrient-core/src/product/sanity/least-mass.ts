import { ATOMIC_WEIGHT } from "../../element/atomic-weight.ts";
import { massFractions } from "../../element/formula.ts";
import { elementPerForm, NUTRIENT_ELEMENTS, OXIDES, type OxideName } from "../../element/nutrient.ts";
import type { Composition } from "../product.ts";

/** Pure urea, the richest solid that nitrogen is sold in. */
const UREA_NITROGEN = massFractions({ C: 1, O: 1, N: 2, H: 4 }).N!;

/** What is never sold as the element: phosphates weigh at least their P2O5, potassium salts their K2O or KCl. */
const AS_OXIDE = ["P2O5", "K2O", "CaO", "MgO", "Na2O"] as const satisfies readonly OxideName[];
/** Metals whose oxygen chlorine takes the place of: KCl is lighter than K2O and Cl together. */
const CHLORIDE_METALS = ["K2O", "CaO", "MgO", "Na2O"] as const satisfies readonly OxideName[];

/**
 * The least share of a product that these contents can weigh: nitrogen as urea, phosphorus and the bases as oxides
 * or chlorides, the rest as elements.
 *
 * Adding up the printed percentages instead would blame honest labels: potassium chloride prints 60 % K2O and 47 % Cl.
 * Ammonia in water holds nitrogen more richly than urea, but never comes near the whole.
 *
 * @returns 1 for a product that is filled to the brim, more than 1 for one that cannot be.
 * @example
 * leastMassShare(compositionOf([percentOf("K2O", 60), percentOf("Cl", 47)]))  // => 0.9497...
 */
export function leastMassShare(composition: Composition): number {
  const oxides = Object.fromEntries(
    AS_OXIDE.map((oxide) => [oxide, (composition[OXIDES[oxide].element] ?? 0) / elementPerForm(oxide)]),
  ) as Record<(typeof AS_OXIDE)[number], number>;
  const oxygen = CHLORIDE_METALS.reduce((sum, oxide) => sum + oxides[oxide] * (1 - elementPerForm(oxide)), 0);
  // One oxygen gives way to two chlorines. Chlorine beyond that is with ammonium, which the urea stands for already.
  const chlorinePerOxygen = (2 * ATOMIC_WEIGHT.Cl) / ATOMIC_WEIGHT.O;
  const chlorine = Math.min(composition.Cl ?? 0, oxygen * chlorinePerOxygen);
  const bases = AS_OXIDE.reduce((sum, oxide) => sum + oxides[oxide], 0);
  const counted = new Set<string>(["N", "Cl", ...AS_OXIDE.map((oxide) => OXIDES[oxide].element)]);
  const rest = NUTRIENT_ELEMENTS.filter((element) => !counted.has(element)).reduce(
    (sum, element) => sum + (composition[element] ?? 0),
    0,
  );
  return (composition.N ?? 0) / UREA_NITROGEN + bases + chlorine - chlorine / chlorinePerOxygen + rest;
}
