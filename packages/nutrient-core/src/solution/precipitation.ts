import { ATOMIC_WEIGHT } from "../element/atomic-weight.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { type Amount, deliver } from "../supply/supply.ts";
import { daviesActivity, lowActivity } from "./activity.ts";
import { electricalConductivity } from "./conductivity.ts";
import { IONS, type Ion, type IonAmounts } from "./ion.ts";
import { type ActivityModel, conditionalConstant, freeIons, PAIRS } from "./pairs.ts";

/** A solid that can fall out of a stock tank. */
interface SolidKind {
  readonly name: string;
  readonly formula: string;
  readonly ions: readonly Ion[];
  /** log10 of the product of the free ions' activities at 25 °C, above which it can form. */
  readonly log10Product: number;
  readonly source: string;
}

/**
 * The three that growers meet. The basic calcium phosphates are less soluble still, but their published products
 * differ by four powers of ten, so that no tank is judged by them.
 */
const SOLIDS: readonly SolidKind[] = [
  { name: "gypsum", formula: "CaSO4·2H2O", ions: ["Ca", "SO4"], log10Product: -4.58, source: "phreeqc-databases" },
  {
    name: "calcium phosphate",
    formula: "CaHPO4·2H2O",
    ions: ["Ca", "HPO4"],
    log10Product: -6.65,
    source: "phreeqc-databases",
  },
  {
    name: "struvite",
    formula: "MgNH4PO4·6H2O",
    ions: ["Mg", "NH4", "PO4"],
    log10Product: -13.26,
    source: "struvite-solubility-2007",
  },
];

/** The steps of phosphoric acid, log10 of the activity ratio at hydrogen activity 1 (PHREEQC databases). */
const LOG_HPO4_H2PO4 = -7.207;
const LOG_PO4_HPO4 = -12.346;
const LOG_H3PO4_H2PO4 = 2.168;

/**
 * The pH that a stock is taken to have when nobody measured it: monoammonium and monopotassium phosphate make about
 * 4.5, feeds are kept near 6 (common practice, from memory). Gypsum does not depend on it.
 */
export const ASSUMED_PH: readonly [number, number] = [4.5, 6.5];

/** How near a solution is to dropping a solid. */
export interface Saturation {
  readonly solid: string;
  readonly formula: string;
  /** log10 of ion product to solubility product, lowest and highest by pH and by activity model: above 0 it can form. */
  readonly index: readonly [number, number];
  readonly verdict: "stays-dissolved" | "may-precipitate" | "precipitates";
  readonly source: string;
  /** Of the highest index. */
  readonly working: readonly WorkingLine[];
}

/**
 * Whether gypsum, calcium phosphate or struvite can fall out of a solution: the activities of its free ions against
 * the solubility product.
 *
 * At stock strength no simple activity model holds, so two are asked (Davies' and Güntelberg's), at both ends of the
 * pH range, and the answer is a range. Solids wait to form: a feed a little over the line can stay clear for days.
 *
 * @param amounts Products in the same water; those that leave a residue are left out.
 * @param litres Litres of solution, more than zero.
 * @param pH Lowest and highest; {@link ASSUMED_PH} when it was not measured.
 * @returns One entry for each solid whose elements are all there. Constants at 25 °C.
 * @example
 * const tank = ["calcium-nitrate", "epsom-salt"].map((id) => ({ product: materialById(id), massGrams: 100 }));
 * saturations(tank, 1).map(({ solid, verdict }) => [solid, verdict])  // => [["gypsum", "precipitates"]]
 */
export function saturations(
  amounts: readonly Amount[],
  litres: number,
  pH: readonly [number, number] = ASSUMED_PH,
): readonly Saturation[] {
  const dissolving = amounts.filter(({ product }) => product.leavesResidue !== true && product.formula !== "S");
  const totals = dissolvedTotals(dissolving, litres);
  const strength = electricalConductivity(dissolving, litres).ionicStrength;
  return SOLIDS.flatMap((solid) => {
    const present = solid.ions.every((ion) => (totals[ion] ?? 0) > 0);
    if (!present) return [];
    const looks = pH.flatMap((at) =>
      [daviesActivity, lowActivity].map((activity) => look(solid, totals, strength, at, activity)),
    );
    looks.sort((a, b) => a.index - b.index);
    const low = looks[0]!.index;
    const high = looks.at(-1)!.index;
    return [
      {
        solid: solid.name,
        formula: solid.formula,
        index: [low, high] as const,
        verdict: low > 0 ? "precipitates" : high > 0 ? "may-precipitate" : "stays-dissolved",
        source: solid.source,
        working: [looks.at(-1)!.working],
      } as const,
    ];
  });
}

/** What the labels say is in the water, mol/L; all phosphorus stands under each of its ions. */
function dissolvedTotals(amounts: readonly Amount[], litres: number): IonAmounts {
  const delivered = deliver(amounts, { basis: "litre", amount: litres });
  const molar = (milligrams: number | undefined, element: keyof typeof ATOMIC_WEIGHT): number =>
    (milligrams ?? 0) / 1000 / ATOMIC_WEIGHT[element];
  const phosphorus = molar(delivered.P, "P");
  return {
    Ca: molar(delivered.Ca, "Ca"),
    Mg: molar(delivered.Mg, "Mg"),
    NH4: molar(delivered["NH4-N"], "N"),
    SO4: molar(delivered.S, "S"),
    HPO4: phosphorus,
    PO4: phosphorus,
  };
}

/** One look at one solid: at this pH, with this activity model. */
function look(
  solid: SolidKind,
  totals: IonAmounts,
  strength: number,
  pH: number,
  activity: ActivityModel,
): { readonly index: number; readonly working: WorkingLine } {
  const gamma = (charge: number): number => activity(charge, strength);
  // How the phosphorus that is in no pair divides at this pH, relative to H2PO4-.
  const hpo4 = (10 ** (LOG_HPO4_H2PO4 + pH) * gamma(1)) / gamma(2);
  const po4 = (10 ** (LOG_PO4_HPO4 + pH) * hpo4 * gamma(2)) / gamma(3);
  const whole = 1 + hpo4 + po4 + 10 ** (LOG_H3PO4_H2PO4 - pH) * gamma(1);
  const share: Readonly<Partial<Record<Ion, number>>> = { H2PO4: 1 / whole, HPO4: hpo4 / whole, PO4: po4 / whole };
  // All of it is solved under one name, so a pair with one of its ions is that much weaker.
  const solved = PAIRS.map((kind) => ({ ...kind, anion: kind.anion === "SO4" ? ("SO4" as const) : ("HPO4" as const) }));
  const constants = PAIRS.map((kind) => conditionalConstant(kind, strength, activity) * (share[kind.anion] ?? 1));
  const present = solved.map(({ cation, anion }) => (totals[cation] ?? 0) > 0 && (totals[anion] ?? 0) > 0);
  const free = freeIons(
    totals,
    solved.filter((_, at) => present[at]),
    constants.filter((_, at) => present[at]),
  );
  const factors = solid.ions.map((ion) => {
    const name = ion === "PO4" ? "HPO4" : ion;
    return { concentration: free[name]! * (share[ion] ?? 1), activity: gamma(IONS[ion].charge) };
  });
  const product = factors.reduce((times, factor) => times * factor.concentration * factor.activity, 1);
  const index = Math.log10(product) - solid.log10Product;
  const terms = factors.map((factor) => `${term(factor.activity)} * ${term(factor.concentration)}`);
  return {
    index,
    working: {
      label: `${solid.name}: log10 of ion product over solubility product, at most`,
      expression: `log10(${terms.join(" * ")}) - ${term(solid.log10Product)}`,
      value: index,
      unit: "",
      source: solid.source,
    },
  };
}
