import { fractionOf, type Product } from "../product/product.ts";
import { type GradeLabel, gradeLabel, labelsTogether } from "./grade-label.ts";
import { entriesOf, type IonAmounts, sumOfIons } from "./ion.ts";
import { cornersOf } from "./open-region.ts";

/** So many grams of a product of which only the analysis is known; millilitres where its mass is not known. */
export interface GradeAmount {
  readonly product: Product;
  readonly amount: number;
}

/**
 * The corners of what products can give when they dissolve of which a label says only so much, moles altogether.
 *
 * Open are the form of the nitrogen (ammonium, nitrate, urea) and the partner of the potassium (nitrate, sulfate,
 * chloride). Within what the label says, the ions must be neutral together and, with the urea, must not weigh more
 * than the product. All that a grade can be lies between the corners of that little region.
 *
 * Which corner conducts least and which most depends on the strength of the solution and on what else is in it (a
 * sulfate leads in thin water, and is slowed most in strong), so that all are handed on, to be tried as they are
 * dissolved. Between corners nothing lies beyond them: at one ionic strength the conductivity is a plain sum over the
 * ions, and a sum has its extremes at corners. That the strength and the ion pairs change on the way moves it past
 * the corners by 0.06 % at the most, and only below 0.15 mS/cm, as far as a search of 6,600 solutions found (by 1 %
 * in water with grams per litre of nitric acid, which is no feed).
 *
 * Several products are taken as one, which leaves open all that each leaves open by itself and more (see
 * `labelsTogether`): their range is surely wide enough, and wider than need be.
 */
export function cornersOfGrades(grades: readonly GradeAmount[]): readonly IonAmounts[] {
  const dissolving = grades.filter(({ product }) => !product.leavesResidue && fractionOf(product, "organic-N") === 0);
  // What leaves a residue may give nothing at all, or everything.
  const wholes = dissolving.length < grades.length ? [dissolving, grades] : [grades];
  return wholes.flatMap((whole) =>
    cornersOfLabel(labelsTogether(whole.map(({ product, amount }) => ({ label: gradeLabel(product), times: amount })))),
  );
}

function cornersOfLabel({ said, metals, open, partners }: GradeLabel): readonly IonAmounts[] {
  const ions = cornersOf(partners, open).map(({ ammonium = 0, nitrate = 0, sulfate = 0, chloride = 0 }) =>
    plus(said, { NH4: ammonium, NO3: nitrate, SO4: sulfate, Cl: chloride }),
  );
  const held = distinct(ions);
  const metal = entriesOf(metals).reduce((sum, [, amount]) => sum + amount, 0);
  // Metals are bound to an organic molecule, or sulfates.
  return metal === 0 ? held : [...held, ...held.map((corner) => plus(corner, { ...metals, SO4: metal }))];
}

const plus = (some: IonAmounts, more: IonAmounts): IonAmounts =>
  sumOfIons([some, more].map((ions) => ({ ions, times: 1 })));

/** Corners that differ only in what carries no current, or in the last digits, are one to a meter. */
function distinct(corners: readonly IonAmounts[]): readonly IonAmounts[] {
  const key = (ions: IonAmounts): string =>
    entriesOf(ions)
      .map(([ion, moles]) => `${ion} ${moles.toFixed(12)}`)
      .join();
  return [...new Map(corners.map((ions) => [key(ions), ions])).values()];
}
