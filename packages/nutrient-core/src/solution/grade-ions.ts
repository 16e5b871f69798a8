import { ATOMIC_WEIGHT, type ElementSymbol } from "../element/atomic-weight.ts";
import { molarMass } from "../element/formula.ts";
import type { Nutrient } from "../element/nutrient.ts";
import { fractionOf, type Product } from "../product/product.ts";
import { IONS, type IonAmounts } from "./ion.ts";

/**
 * What a label leaves open: the form of the nitrogen (ammonium, nitrate, urea) and the partner of the potassium
 * (nitrate, sulfate, chloride). Within what the label says, the ions must be neutral together and, with the urea,
 * must not weigh more than the product. The two extremes of the conductivity are corners of that little region.
 */
const UNKNOWN = {
  ammonium: { grams: molarMass({ N: 1, H: 4 }), nitrogen: 1, charge: 1 },
  nitrate: { grams: molarMass({ N: 1, O: 3 }), nitrogen: 1, charge: -1 },
  urea: { grams: molarMass({ C: 1, O: 1, N: 2, H: 4 }) / 2, nitrogen: 1, charge: 0 },
  sulfate: { grams: molarMass({ S: 1, O: 4 }), nitrogen: 0, charge: -2 },
  chloride: { grams: ATOMIC_WEIGHT.Cl, nitrogen: 0, charge: -1 },
  spare: { grams: 1, nitrogen: 0, charge: 0 },
} as const;
type UnknownPart = keyof typeof UNKNOWN;

/** More than any fertilizer solution weighs (common practice, no source): what a millilitre can hold at the most. */
const HEAVIEST_GRAMS_PER_MILLILITRE = 2;

const moles = (product: Product, nutrient: Nutrient, element: ElementSymbol): number =>
  fractionOf(product, nutrient) / ATOMIC_WEIGHT[element];

/** The fewest and the most ions that a gram of a product of this analysis can give, moles per gram. */
export function ionsOfGrade(product: Product): { readonly least: IonAmounts; readonly most: IonAmounts } {
  const metals = (["Fe", "Mn", "Zn", "Cu"] as const).map((metal) => [metal, moles(product, metal, metal)] as const);
  const sulfur = moles(product, "S", "S");
  const said: Partial<Record<keyof typeof IONS, number>> = {
    K: moles(product, "K", "K"),
    Ca: moles(product, "Ca", "Ca"),
    Mg: moles(product, "Mg", "Mg"),
    Na: moles(product, "Na", "Na"),
    NH4: moles(product, "NH4-N", "N"),
    NO3: moles(product, "NO3-N", "N"),
    H2PO4: moles(product, "P", "P"),
    SO4: sulfur,
    Cl: moles(product, "Cl", "Cl"),
  };
  const split = moles(product, "NO3-N", "N") + moles(product, "NH4-N", "N") + moles(product, "urea-N", "N");
  const open = Math.max(0, moles(product, "N", "N") - split - moles(product, "organic-N", "N"));
  const charge = chargeOf(said);
  // Anions that not even all the open nitrogen as ammonium could balance come with sodium.
  if (charge + open < 0) said.Na = (said.Na ?? 0) - (charge + open);
  const parts: UnknownPart[] = ["ammonium", "nitrate", "urea"];
  if (sulfur === 0) parts.push("sulfate");
  if ((said.Cl ?? 0) === 0) parts.push("chloride");
  const weight =
    Object.entries(said).reduce((sum, [ion, n]) => sum + n * GRAMS[ion as keyof typeof GRAMS], 0) +
    moles(product, "urea-N", "N") * UNKNOWN.urea.grams;
  const whole = product.massUnknown ? HEAVIEST_GRAMS_PER_MILLILITRE : 1;
  const corners = cornersOf([...parts, "spare"], open, chargeOf(said), whole - weight) ??
    // The label weighs more than the product (rounding, or salts that are none of these): the weight says nothing then.
    cornersOf([...parts, "spare"], open, chargeOf(said), 100) ?? [{}];
  const complete = corners.map((corner) => ({
    ...said,
    NH4: (said.NH4 ?? 0) + (corner.ammonium ?? 0),
    NO3: (said.NO3 ?? 0) + (corner.nitrate ?? 0),
    SO4: (said.SO4 ?? 0) + (corner.sulfate ?? 0),
    Cl: (said.Cl ?? 0) + (corner.chloride ?? 0),
  }));
  const ordered = [...complete].sort((a, b) => conductance(a) - conductance(b));
  const fullyDissolves = product.leavesResidue !== true && fractionOf(product, "organic-N") === 0;
  // Metals are bound to an organic molecule at the least, and sulfates at the most.
  const most = { ...ordered.at(-1)!, ...Object.fromEntries(metals) };
  most.SO4 += metals.reduce((sum, [, amount]) => sum + amount, 0);
  return { least: fullyDissolves ? ordered[0]! : {}, most };
}

const GRAMS = {
  K: ATOMIC_WEIGHT.K,
  Ca: ATOMIC_WEIGHT.Ca,
  Mg: ATOMIC_WEIGHT.Mg,
  Na: ATOMIC_WEIGHT.Na,
  NH4: UNKNOWN.ammonium.grams,
  NO3: UNKNOWN.nitrate.grams,
  H2PO4: molarMass({ H: 2, P: 1, O: 4 }),
  SO4: UNKNOWN.sulfate.grams,
  Cl: ATOMIC_WEIGHT.Cl,
} as const;

const chargeOf = (ions: IonAmounts): number =>
  Object.entries(ions).reduce((sum, [ion, n]) => sum + n * IONS[ion as keyof typeof IONS].charge, 0);

const conductance = (ions: IonAmounts): number =>
  Object.entries(ions).reduce((sum, [name, n]) => {
    const { charge, equivalentConductivity } = IONS[name as keyof typeof IONS];
    return sum + Math.abs(charge) * equivalentConductivity * n;
  }, 0);

type Corner = Partial<Record<UnknownPart, number>>;

/**
 * The corners of the region: at each, three of the parts make up the nitrogen, the charge and the weight, and the
 * others are absent. Undefined when there is none.
 */
function cornersOf(
  parts: readonly UnknownPart[],
  nitrogen: number,
  charge: number,
  grams: number,
): Corner[] | undefined {
  const corners: Corner[] = [];
  for (let i = 0; i < parts.length; i++) {
    for (let j = i + 1; j < parts.length; j++) {
      for (let k = j + 1; k < parts.length; k++) {
        const chosen = [parts[i]!, parts[j]!, parts[k]!] as const;
        const amounts = solve(chosen, [nitrogen, -charge, grams]);
        if (!amounts || amounts.some((amount) => amount < -1e-12)) continue;
        corners.push(Object.fromEntries(chosen.map((part, at) => [part, Math.max(0, amounts[at]!)])));
      }
    }
  }
  return corners.length > 0 ? corners : undefined;
}

/** Cramer's rule for the three amounts that make up nitrogen, charge and weight. */
function solve(
  chosen: readonly [UnknownPart, UnknownPart, UnknownPart],
  right: readonly number[],
): number[] | undefined {
  const columns = chosen.map((part) => [UNKNOWN[part].nitrogen, UNKNOWN[part].charge, UNKNOWN[part].grams]);
  const whole = determinant(columns);
  if (Math.abs(whole) < 1e-9) return undefined;
  return columns.map((_, at) => determinant(columns.map((column, other) => (other === at ? right : column))) / whole);
}

function determinant([a, b, c]: readonly (readonly number[])[]): number {
  return (
    a![0]! * (b![1]! * c![2]! - b![2]! * c![1]!) -
    b![0]! * (a![1]! * c![2]! - a![2]! * c![1]!) +
    c![0]! * (a![1]! * b![2]! - a![2]! * b![1]!)
  );
}
