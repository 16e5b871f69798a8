import { listed } from "../outcome/sentence.ts";
import { type Amount, amountUnit } from "../supply/supply.ts";
import { cornersOfGrades } from "./grade-ions.ts";
import { type IonAmounts, sumOfIons } from "./ion.ts";
import { ionsOfProduct } from "./product-ions.ts";

/** A product in solution, as one composition takes it: what of it dissolves, and the ions of each gram. */
export interface Dissolved {
  readonly name: string;
  /** Of the unit: grams; millilitres of a liquid whose mass is not known; litres of feed for products taken as one. */
  readonly amount: number;
  readonly unit: "g" | "mL" | "L";
  /** Moles in one of the unit. */
  readonly ions: IonAmounts;
  /** Whether a label leaves these ions open. */
  readonly open: boolean;
}

/** Every corner of what one product, or several as one, can be. */
interface Possible extends Omit<Dissolved, "ions" | "open"> {
  readonly corners: readonly IonAmounts[];
}

/** As many as are looked at one by one: two products of eight corners each, doubled where they name metals. */
const MOST_COMPOSITIONS = 256;

/**
 * The compositions of a solution between which its labels leave the choice: each corner of each product with each of
 * the others. Where they would be too many, all products known by their grade are taken as one, with a wider range.
 *
 * @param litres Of solution, more than zero. What lies at the bottom of it carries no current and is left out.
 */
export function compositionsOf(amounts: readonly Amount[], litres: number): readonly (readonly Dissolved[])[] {
  const inSolution = amounts
    .map(({ product, massGrams }) => ({
      product,
      amount: Math.min(massGrams, (product.solubilityGramsPerLitre ?? Number.POSITIVE_INFINITY) * litres),
      corners: ionsOfProduct(product),
    }))
    .filter(({ amount }) => amount > 0);
  const each = inSolution.map(
    ({ product, amount, corners }): Possible => ({ name: product.name, amount, unit: amountUnit(product), corners }),
  );
  const count = each.reduce((product, { corners }) => product * corners.length, 1);
  if (count <= MOST_COMPOSITIONS) return combined(each);
  const grades = inSolution.filter(({ corners }) => corners.length > 1);
  const together: Possible = {
    name: `${listed(grades.map(({ product }) => product.name))} together`,
    amount: litres,
    unit: "L",
    corners: cornersOfGrades(grades.map(({ product, amount }) => ({ product, amount: amount / litres }))),
  };
  return combined([...each.filter(({ corners }) => corners.length === 1), together]);
}

function combined(parts: readonly Possible[]): readonly (readonly Dissolved[])[] {
  let compositions: readonly (readonly Dissolved[])[] = [[]];
  for (const { corners, ...part } of parts) {
    const choices = corners.map((ions): Dissolved => ({ ...part, ions, open: corners.length > 1 }));
    compositions = compositions.flatMap((before) => choices.map((choice) => [...before, choice]));
  }
  return compositions;
}

/** The ions of dissolved products with those of the water, moles per litre. */
export function ionsInSolution(dissolved: readonly Dissolved[], litres: number, water: IonAmounts): IonAmounts {
  return sumOfIons([
    { ions: water, times: 1 },
    ...dissolved.map(({ amount, ions }) => ({ ions, times: amount / litres })),
  ]);
}
