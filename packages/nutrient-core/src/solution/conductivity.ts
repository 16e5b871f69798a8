import type { WorkingLine } from "../outcome/working.ts";
import type { Amount } from "../supply/supply.ts";
import { daviesActivity } from "./activity.ts";
import { compositionsOf, type Dissolved, ionsInSolution } from "./compositions.ts";
import { conductivityWorking } from "./conductivity-working.ts";
import { type ChargeBalance, chargeBalance, entriesOf, IONS, type Ion, type IonAmounts } from "./ion.ts";
import { neutralised } from "./neutralise.ts";
import { type Association, associate, type Paired, pairCharge } from "./pairs.ts";

/** What is in the water before anything is dissolved: its ions where it was analysed, or what a meter reads in it. */
export type Background =
  | { readonly ions: IonAmounts }
  /** At 25 °C. Added to the salts' own conductivity, which reads a little high in a mixture. */
  | { readonly milliSiemensPerCm: number };

/** How well a feed carries current, at 25 °C. */
export interface Conductivity {
  /** The middle of the range where there is one. */
  readonly milliSiemensPerCm: number;
  /** Whether the ions are known well enough to name one number: what is open moves it by 5 % at the most. */
  readonly known: boolean;
  /** Lowest and highest it can be, where a product is known by its grade only. */
  readonly range?: readonly [number, number];
  /** mol/L; of the stronger bound where there is a range. */
  readonly ionicStrength: number;
  readonly chargeBalance: ChargeBalance;
  readonly working: readonly WorkingLine[];
}

/** A charged pair conducts as its own ion where that is tabled; else as the larger of its two parts, by estimate. */
const CHARGED_PAIR: Readonly<Partial<Record<Ion, number>>> = {
  SO4: IONS.HSO4.equivalentConductivity,
  H2PO4: IONS.H2PO4.equivalentConductivity,
};

/** The widest range, as a share of its middle, that still passes as one number. */
const NEGLIGIBLE_RANGE = 0.05;

/**
 * How far the ions of a solution of this strength slow each other down: the activity coefficient to a power.
 *
 * @param charge Of the ion.
 * @param strength Ionic strength, mol/L.
 */
export function slowing(charge: number, strength: number): { readonly activity: number; readonly exponent: number } {
  const size = Math.abs(charge);
  return {
    activity: daviesActivity(charge, strength),
    exponent: strength < 0.36 * size ? 0.6 / Math.sqrt(size) : Math.sqrt(strength) / size,
  };
}

/** What one ion adds to the conductivity, mS/cm. */
export interface Contribution {
  readonly ion: Ion;
  /** Free ions, mol/L. */
  readonly concentration: number;
  readonly activity: number;
  readonly exponent: number;
  readonly milliSiemensPerCm: number;
}

/** The conductivity of a solution of known ions, part by part. */
export interface IonConductivity {
  readonly milliSiemensPerCm: number;
  readonly contributions: readonly Contribution[];
  readonly fromPairs: readonly { readonly pair: Paired; readonly milliSiemensPerCm: number }[];
  readonly association: Association;
}

/** The conductivity of one composition that the labels allow. */
export interface Conducting extends IonConductivity {
  readonly dissolved: readonly Dissolved[];
  /** With those of the water, mol/L. */
  readonly ions: IonAmounts;
}

/**
 * The conductivity of ions in water at 25 °C: the sum over the free ions of |z| lambda c gamma^a.
 *
 * lambda is the limiting equivalent conductivity, gamma Davies' activity coefficient, and the power a is
 * 0.6 / sqrt|z| below an ionic strength of 0.36 |z| and sqrt(I) / |z| above (source `appelo-specific-conductance`,
 * exponents from memory, tested against measured salts). Ions that pair without charge carry nothing.
 *
 * @param ions Moles per litre of each.
 * @returns mS/cm, with what each ion adds. Good to 3 % for chlorides, nitrates and alkali sulfates up to 50 mmol/L,
 *   to 5 % for sulfates of divalent metals up to 5 mmol/L.
 * @example
 * conductivityOfIons({ K: 0.01, Cl: 0.01 }).milliSiemensPerCm  // => 1.408...
 */
export function conductivityOfIons(ions: IonAmounts): IonConductivity {
  const association = associate(neutralised(ions));
  const strength = association.ionicStrength;
  const contributions = entriesOf(association.free).map(([ion, concentration]): Contribution => {
    const { charge, equivalentConductivity } = IONS[ion];
    const { activity, exponent } = slowing(charge, strength);
    // S cm2/mol times mol/L is mS/cm, as it stands.
    const milliSiemensPerCm = Math.abs(charge) * equivalentConductivity * concentration * activity ** exponent;
    return { ion, concentration, activity, exponent, milliSiemensPerCm };
  });
  const fromPairs = association.pairs.flatMap((pair) => {
    const charge = Math.abs(pairCharge(pair.cation, pair.anion));
    if (charge === 0) return [];
    const { activity, exponent } = slowing(charge, strength);
    const lambda = CHARGED_PAIR[pair.anion] ?? IONS[pair.anion].equivalentConductivity;
    return [{ pair, milliSiemensPerCm: charge * lambda * pair.concentration * activity ** exponent }];
  });
  const parts = [...contributions, ...fromPairs];
  const milliSiemensPerCm = parts.reduce((sum, part) => sum + part.milliSiemensPerCm, 0);
  return { milliSiemensPerCm, contributions, fromPairs, association };
}

/**
 * How well a feed carries current: the figure that a conductivity meter reads in it.
 *
 * Known salts give one number. A product known by its grade only gives the range its label leaves open (forms of
 * nitrogen, partner of the potassium), and its middle: the least and the most that any of `compositionsOf` conducts.
 *
 * @param amounts Products and their masses in grams, all in the same water.
 * @param litres Litres of feed, more than zero.
 * @param background What the water held before; nothing when left out.
 * @returns mS/cm at 25 °C, with range, charge balance and working.
 * @example
 * electricalConductivity([{ product: kno3, massGrams: 10 }], 10).milliSiemensPerCm  // => 1.347...
 */
export function electricalConductivity(
  amounts: readonly Amount[],
  litres: number,
  background: Background = { ions: {} },
): Conductivity {
  const water = "ions" in background ? background.ions : {};
  const metered = "ions" in background ? 0 : background.milliSiemensPerCm;
  const possible = compositionsOf(amounts, litres).map((dissolved): Conducting => {
    const ions = ionsInSolution(dissolved, litres, water);
    return { dissolved, ions, ...conductivityOfIons(ions) };
  });
  const least = possible.reduce((one, other) => (other.milliSiemensPerCm < one.milliSiemensPerCm ? other : one));
  const most = possible.reduce((one, other) => (other.milliSiemensPerCm > one.milliSiemensPerCm ? other : one));
  const [low, high] = [least.milliSiemensPerCm + metered, most.milliSiemensPerCm + metered];
  const middle = (low + high) / 2;
  const known = high - low <= NEGLIGIBLE_RANGE * middle;
  return {
    milliSiemensPerCm: middle,
    known,
    ...(known ? {} : { range: [low, high] as const }),
    ionicStrength: most.association.ionicStrength,
    chargeBalance: chargeBalance(most.ions),
    working: conductivityWorking({ litres, water, metered, least, most, middle }),
  };
}
