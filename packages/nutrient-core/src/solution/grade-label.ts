import { ATOMIC_WEIGHT, type ElementSymbol } from "../element/atomic-weight.ts";
import { molarMass } from "../element/formula.ts";
import type { Nutrient } from "../element/nutrient.ts";
import { fractionOf, type Product } from "../product/product.ts";
import { IONS, type IonAmounts, sumOfIons } from "./ion.ts";
import { cornersOf, OPEN_PARTS, type Open, type Partner } from "./open-region.ts";

/** What a label says of the ions of a product, and what it leaves open: of a gram, or of any amount. */
export interface GradeLabel {
  /** Moles of the ions that are named, and of the sodium that they need. */
  readonly said: IonAmounts;
  /** Moles of metals, which may be sulfates or be held by an organic molecule. */
  readonly metals: IonAmounts;
  readonly open: Open;
  /** Anions besides nitrate that are not named and may be there. */
  readonly partners: readonly Partner[];
}

/** More than any fertilizer solution weighs (common practice, no source): what a millilitre can hold at the most. */
const HEAVIEST_GRAMS_PER_MILLILITRE = 2;
const METALS = ["Fe", "Mn", "Zn", "Cu"] as const;
const PARTNERS: readonly Partner[] = ["sulfate", "chloride"];

/** What the label of a product says and leaves open of one gram (one millilitre, where its mass is not known). */
export function gradeLabel(product: Product): GradeLabel {
  const moles = (nutrient: Nutrient, element: ElementSymbol): number =>
    fractionOf(product, nutrient) / ATOMIC_WEIGHT[element];
  const urea = moles("urea-N", "N");
  const said = {
    K: moles("K", "K"),
    Ca: moles("Ca", "Ca"),
    Mg: moles("Mg", "Mg"),
    Na: moles("Na", "Na"),
    NH4: moles("NH4-N", "N"),
    NO3: moles("NO3-N", "N"),
    H2PO4: moles("P", "P"),
    SO4: moles("S", "S"),
    Cl: moles("Cl", "Cl"),
  };
  const nitrogen = Math.max(0, moles("N", "N") - said.NO3 - said.NH4 - urea - moles("organic-N", "N"));
  // Anions that not even all the open nitrogen as ammonium could balance come with sodium.
  said.Na += Math.max(0, -(chargeOf(said) + nitrogen));
  const charge = chargeOf(said);
  const weight = (Object.keys(said) as (keyof typeof said)[]).reduce((sum, ion) => sum + said[ion] * GRAMS[ion], 0);
  const whole = product.massUnknown ? HEAVIEST_GRAMS_PER_MILLILITRE : 1;
  const grams = whole - weight - urea * OPEN_PARTS.urea.grams;
  const unnamed = PARTNERS.filter((partner) => said[partner === "sulfate" ? "SO4" : "Cl"] === 0);
  const metals = Object.fromEntries(METALS.map((metal) => [metal, moles(metal, metal)]));
  const possible = [
    { partners: unnamed, open: { nitrogen, charge, grams } },
    // The label weighs more than the product (rounding, or salts that are none of these): the weight says nothing then.
    { partners: unnamed, open: { nitrogen, charge, grams: 100 } },
    // Nor do the named anions balance the cations: there must be more of them than is named.
    { partners: PARTNERS, open: { nitrogen, charge, grams: 100 } },
  ].find(({ partners, open }) => cornersOf(partners, open).length > 0);
  if (!possible) throw new Error(`no ions make up the label of ${product.id}`);
  return { said, metals, ...possible };
}

/**
 * Several labels as one: their nitrogen, their charge and their weight together. What each leaves open by itself lies
 * within, and more: one product's spare weight is open to the other's nitrogen too.
 */
export function labelsTogether(labels: readonly { readonly label: GradeLabel; readonly times: number }[]): GradeLabel {
  const sum = (of: keyof Open): number => labels.reduce((all, { label, times }) => all + label.open[of] * times, 0);
  return {
    said: sumOfIons(labels.map(({ label, times }) => ({ ions: label.said, times }))),
    metals: sumOfIons(labels.map(({ label, times }) => ({ ions: label.metals, times }))),
    open: { nitrogen: sum("nitrogen"), charge: sum("charge"), grams: sum("grams") },
    partners: PARTNERS.filter((partner) => labels.some(({ label }) => label.partners.includes(partner))),
  };
}

const GRAMS = {
  K: ATOMIC_WEIGHT.K,
  Ca: ATOMIC_WEIGHT.Ca,
  Mg: ATOMIC_WEIGHT.Mg,
  Na: ATOMIC_WEIGHT.Na,
  NH4: OPEN_PARTS.ammonium.grams,
  NO3: OPEN_PARTS.nitrate.grams,
  H2PO4: molarMass({ H: 2, P: 1, O: 4 }),
  SO4: OPEN_PARTS.sulfate.grams,
  Cl: ATOMIC_WEIGHT.Cl,
} as const;

const chargeOf = (ions: Record<keyof typeof GRAMS, number>): number =>
  (Object.keys(ions) as (keyof typeof GRAMS)[]).reduce((sum, ion) => sum + ions[ion] * IONS[ion].charge, 0);
