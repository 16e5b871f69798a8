import { daviesActivity, ionicStrength } from "./activity.ts";
import { IONS, type Ion, type IonAmounts } from "./ion.ts";

/**
 * Two ions of opposite charge that move through the water as one.
 *
 * Constants: log10 of the association constant at 25 °C, ionic strength zero, from the PHREEQC databases (those with
 * hydrogen from their acid steps). The pairs of sulfate with K+, Na+ and NH4+ are left out on purpose: the exponent
 * form of the conductivity was made with potassium and sodium sulfate as they are, and reads them within 2.3 % without.
 */
export interface PairKind {
  readonly cation: Ion;
  readonly anion: Ion;
  readonly log10Constant: number;
}

const pair = (cation: Ion, anion: Ion, log10Constant: number): PairKind => ({ cation, anion, log10Constant });

export const PAIRS: readonly PairKind[] = [
  pair("Ca", "SO4", 2.25),
  pair("Mg", "SO4", 2.37),
  pair("Fe", "SO4", 2.25),
  pair("Mn", "SO4", 2.25),
  pair("Zn", "SO4", 2.37),
  pair("Cu", "SO4", 2.31),
  pair("Ca", "HPO4", 2.739),
  pair("Mg", "HPO4", 2.87),
  pair("Ca", "H2PO4", 1.408),
  pair("Mg", "H2PO4", 1.513),
  pair("H", "SO4", 1.988), // from memory
  pair("H", "H2PO4", 2.168), // 21.721 - 19.553, the databases' steps of phosphoric acid
];

/** A pair and how much of it there is, mol/L. */
export interface Paired extends PairKind {
  readonly concentration: number;
}

export interface Association {
  /** Ions that stayed free, mol/L. */
  readonly free: IonAmounts;
  readonly pairs: readonly Paired[];
  /** Of the free ions and the charged pairs, mol/L. */
  readonly ionicStrength: number;
}

/** How an ion's activity coefficient follows from its charge and the ionic strength. */
export type ActivityModel = (charge: number, strength: number) => number;

/**
 * Which ions stay free and which pair up, by iteration: activities follow from the free ions, and these from the
 * activities. Each pass only moves ions between free and paired, so that every total stays what it was.
 *
 * @param totals Ions put in, mol/L.
 * @param kinds The pairs to look for.
 * @example
 * associate({ Ca: 0.01, SO4: 0.01 }).free.Ca  // => 0.00735...
 */
export function associate(
  totals: IonAmounts,
  kinds: readonly PairKind[] = PAIRS,
  activity: ActivityModel = daviesActivity,
): Association {
  const present = kinds.filter(({ cation, anion }) => (totals[cation] ?? 0) > 0 && (totals[anion] ?? 0) > 0);
  let free: Partial<Record<Ion, number>> = { ...totals };
  let strength = ionicStrength(free);
  if (present.length === 0) return { free, pairs: [], ionicStrength: strength };
  for (let pass = 0; pass < 500; pass++) {
    const constants = present.map((kind) => conditionalConstant(kind, strength, activity));
    // Each pass goes on from the ions that the last one left, so that most passes are short.
    free = freeIons(totals, present, constants, free);
    const pairs = present.map((kind, at) => ({
      ...kind,
      concentration: constants[at]! * free[kind.cation]! * free[kind.anion]!,
    }));
    const next = pairs.reduce(
      (sum, { cation, anion, concentration }) => sum + (concentration * pairCharge(cation, anion) ** 2) / 2,
      ionicStrength(free),
    );
    const settled = Math.abs(next - strength) <= 1e-13 * strength;
    // Two thirds of a step: at stock strength the whole one swings.
    strength += ((next - strength) * 2) / 3;
    if (settled) return { free, pairs, ionicStrength: strength };
  }
  throw new Error("ion pairs did not settle");
}

export function pairCharge(cation: Ion, anion: Ion): number {
  return IONS[cation].charge + IONS[anion].charge;
}

/** The association constant in terms of concentrations at this ionic strength, L/mol. */
export function conditionalConstant(
  { cation, anion, log10Constant }: PairKind,
  strength: number,
  activity: ActivityModel,
): number {
  const coefficient = (charge: number): number => activity(charge, strength);
  return (
    (10 ** log10Constant * coefficient(IONS[cation].charge) * coefficient(IONS[anion].charge)) /
    coefficient(pairCharge(cation, anion))
  );
}

/**
 * Mass action at fixed constants: each free ion from the others in turn, until none moves.
 *
 * @param constants L/mol, one for each kind.
 * @param start Where to begin; everything free when left out.
 */
export function freeIons(
  totals: IonAmounts,
  kinds: readonly PairKind[],
  constants: readonly number[],
  start: IonAmounts = totals,
): Partial<Record<Ion, number>> {
  const free: Partial<Record<Ion, number>> = { ...start };
  const paired = [...new Set(kinds.flatMap(({ cation, anion }) => [cation, anion]))];
  for (let pass = 0; pass < 10_000; pass++) {
    let moved = 0;
    for (const ion of paired) {
      const pull = kinds.reduce((sum, { cation, anion }, at) => {
        const partner = cation === ion ? anion : anion === ion ? cation : undefined;
        return partner === undefined ? sum : sum + constants[at]! * free[partner]!;
      }, 0);
      const next = totals[ion]! / (1 + pull);
      moved = Math.max(moved, Math.abs(next - free[ion]!) / totals[ion]!);
      free[ion] = next;
    }
    if (moved <= 1e-14) return free;
  }
  return free;
}
