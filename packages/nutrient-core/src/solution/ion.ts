/**
 * The ions that fertilizer salts and waters give, with what each needs to be known by: its charge, and how well
 * it carries current where it meets no other ion.
 */
export interface IonFacts {
  /** As it is written in a line of working. */
  readonly name: string;
  readonly charge: number;
  /** Limiting equivalent conductivity at 25 °C, S cm2 per mole of charge (the molar one is |charge| times this). */
  readonly equivalentConductivity: number;
  readonly source: string;
}

/** Per mole of charge, 25 °C: Handbook of Chemistry and Physics; the tables agree within 0.3 % except where a note says so. */
const HANDBOOK = "crc-ionic-conductivity";

export const IONS = {
  H: { name: "H+", charge: 1, equivalentConductivity: 349.65, source: HANDBOOK },
  K: { name: "K+", charge: 1, equivalentConductivity: 73.48, source: HANDBOOK },
  Na: { name: "Na+", charge: 1, equivalentConductivity: 50.08, source: HANDBOOK },
  NH4: { name: "NH4+", charge: 1, equivalentConductivity: 73.5, source: HANDBOOK },
  Ca: { name: "Ca2+", charge: 2, equivalentConductivity: 59.47, source: HANDBOOK },
  Mg: { name: "Mg2+", charge: 2, equivalentConductivity: 53, source: HANDBOOK },
  Fe: { name: "Fe2+", charge: 2, equivalentConductivity: 54, source: HANDBOOK },
  Mn: { name: "Mn2+", charge: 2, equivalentConductivity: 53.5, source: HANDBOOK },
  Zn: { name: "Zn2+", charge: 2, equivalentConductivity: 52.8, source: HANDBOOK },
  Cu: { name: "Cu2+", charge: 2, equivalentConductivity: 53.6, source: HANDBOOK },
  NO3: { name: "NO3-", charge: -1, equivalentConductivity: 71.42, source: HANDBOOK },
  Cl: { name: "Cl-", charge: -1, equivalentConductivity: 76.31, source: HANDBOOK },
  SO4: { name: "SO4 2-", charge: -2, equivalentConductivity: 80, source: HANDBOOK },
  HSO4: { name: "HSO4-", charge: -1, equivalentConductivity: 52, source: HANDBOOK },
  // The tables disagree (36, 33, and 31.8 from diffusion): 33, good to 3.
  H2PO4: { name: "H2PO4-", charge: -1, equivalentConductivity: 33, source: "marcus-ion-properties" },
  // The tables disagree (57, 33, and 51.8 or 54.8 from diffusion): the higher diffusion value.
  HPO4: { name: "HPO4 2-", charge: -2, equivalentConductivity: 54.8, source: "phreeqc-databases" },
  PO4: { name: "PO4 3-", charge: -3, equivalentConductivity: 92.8, source: HANDBOOK },
  HCO3: { name: "HCO3-", charge: -1, equivalentConductivity: 44.5, source: HANDBOOK },
  CO3: { name: "CO3 2-", charge: -2, equivalentConductivity: 69.3, source: HANDBOOK },
  OH: { name: "OH-", charge: -1, equivalentConductivity: 198, source: HANDBOOK },
  MoO4: { name: "MoO4 2-", charge: -2, equivalentConductivity: 74.5, source: HANDBOOK },
  // From memory.
  BOH4: { name: "B(OH)4-", charge: -1, equivalentConductivity: 35, source: "from-memory" },
  // A metal held by an organic molecule, of any kind: an estimate from memory, for a thousandth of a feed's ions.
  chelate: { name: "metal chelate-", charge: -1, equivalentConductivity: 30, source: "from-memory" },
} as const satisfies Readonly<Record<string, IonFacts>>;

export type Ion = keyof typeof IONS;
export const ION_NAMES: readonly Ion[] = Object.keys(IONS) as Ion[];

/** How much of each ion: moles per gram of a product, moles per litre of a solution, or a count in a formula. */
export type IonAmounts = Readonly<Partial<Record<Ion, number>>>;

/** The ions of these amounts, in one order always. */
export function entriesOf(amounts: IonAmounts): readonly (readonly [Ion, number])[] {
  return ION_NAMES.flatMap((ion) => {
    const amount = amounts[ion];
    return amount === undefined || amount === 0 ? [] : [[ion, amount] as const];
  });
}

/** Several amounts of ions as one, each taken so many times. */
export function sumOfIons(parts: readonly { readonly ions: IonAmounts; readonly times: number }[]): IonAmounts {
  const sum: Partial<Record<Ion, number>> = {};
  for (const { ions, times } of parts) {
    for (const [ion, amount] of entriesOf(ions)) sum[ion] = (sum[ion] ?? 0) + amount * times;
  }
  return sum;
}

/** How the charges of the ions stand to each other. */
export interface ChargeBalance {
  /** Positive charge, milliequivalents per litre. */
  readonly cationMilliequivalents: number;
  /** Negative charge, milliequivalents per litre, as a positive number. */
  readonly anionMilliequivalents: number;
  /** (cations - anions) / (cations + anions): 0 when they balance, as they must in a real solution. */
  readonly relativeError: number;
}

/**
 * Whether positive and negative ions balance. Salts balance by themselves; what does not is an analysis of a
 * water in which an ion was not measured, or measured badly.
 *
 * @param ions Moles per litre of each ion.
 * @example
 * chargeBalance({ Ca: 0.002, HCO3: 0.004 }).relativeError  // => 0
 */
export function chargeBalance(ions: IonAmounts): ChargeBalance {
  let cations = 0;
  let anions = 0;
  for (const [ion, amount] of entriesOf(ions)) {
    const equivalents = IONS[ion].charge * amount * 1000;
    if (equivalents > 0) cations += equivalents;
    else anions -= equivalents;
  }
  const all = cations + anions;
  return {
    cationMilliequivalents: cations,
    anionMilliequivalents: anions,
    relativeError: all > 0 ? (cations - anions) / all : 0,
  };
}
