import type { Caution } from "../outcome/caution.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { fractionOf, type Product } from "../product/product.ts";
import { stockCautions } from "../solution/stock-cautions.ts";
import type { Stock } from "../supply/read-stock.ts";
import type { Amount } from "../supply/supply.ts";

export interface TankAmount {
  readonly product: string;
  readonly massGrams: number;
  readonly gramsPerLitre: number;
}

/** One stock tank, to be made up to its volume with water. */
export interface Tank {
  readonly name: string;
  readonly amounts: readonly TankAmount[];
}

/** A blend as stock solutions. */
export interface BlendTanks {
  readonly ratio: number;
  readonly tankLitres: number;
  /** Feed that full tanks make together, each injected at the ratio. */
  readonly finalVolumeLitres: number;
  readonly tanks: readonly Tank[];
}

const TANK_NAMES = ["A", "B"] as const;

/**
 * Splits a blend over as many stock tanks as it needs: one, or two where calcium would meet sulfate or phosphate.
 *
 * Calcium goes into tank A, sulfates and phosphates into tank B. What may stand with both fills the tank that holds
 * less, the heaviest first. A product that holds calcium with sulfate or phosphate itself goes where it meets the
 * fewest others; the cautions of that tank say what is wrong with it.
 *
 * @param amounts Grams for so many litres of feed.
 * @param waterLitres Those litres.
 * @returns Grams for each full tank, with the cautions of each, naming the tank.
 */
export function splitOverTanks(
  amounts: readonly Amount[],
  waterLitres: number,
  stock: Stock,
): { readonly tanks: BlendTanks; readonly cautions: readonly Caution[]; readonly working: readonly WorkingLine[] } {
  const { ratio, tankLitres } = stock;
  const inTank = (massGrams: number): number => (massGrams / waterLitres) * ratio * tankLitres;
  const used = amounts.filter(({ massGrams }) => massGrams > 0);
  const filled = share(used).filter((tank) => tank.length > 0);
  const named = filled.map((tank, index) => ({ name: TANK_NAMES[index]!, tank }));
  return {
    tanks: {
      ratio,
      tankLitres,
      finalVolumeLitres: tankLitres * ratio,
      tanks: named.map(({ name, tank }) => ({
        name,
        amounts: tank.map(({ product, massGrams }) => ({
          product: product.id,
          massGrams: inTank(massGrams),
          gramsPerLitre: inTank(massGrams) / tankLitres,
        })),
      })),
    },
    cautions: named.flatMap(({ name, tank }) =>
      stockCautions(
        tank.map(({ product, massGrams }) => ({ product, massGrams: inTank(massGrams) })),
        tankLitres,
      ).map((caution) => (filled.length === 1 ? caution : { ...caution, message: `Tank ${name}: ${caution.message}` })),
    ),
    working: used.map(({ product, massGrams }) => ({
      label: `${product.name} into the tank`,
      expression: `${term(massGrams)} g / (${term(waterLitres)} L) * ${term(ratio)} * ${term(tankLitres)} L`,
      value: inTank(massGrams),
      unit: "g",
      source: null,
    })),
  };
}

const holdsCalcium = (product: Product): boolean => fractionOf(product, "Ca") > 0;
// Elemental sulfur does not dissolve, so it drops nothing.
const dropsCalcium = (product: Product): boolean =>
  (fractionOf(product, "S") > 0 && product.formula !== "S") || fractionOf(product, "P") > 0;

/** Whether two products must stand in tanks of their own. */
function apart(a: Product, b: Product): boolean {
  return (holdsCalcium(a) && dropsCalcium(b)) || (holdsCalcium(b) && dropsCalcium(a));
}

function share(used: readonly Amount[]): [Amount[], Amount[]] {
  const first: Amount[] = [];
  const second: Amount[] = [];
  const both = used.filter(({ product }) => holdsCalcium(product) && dropsCalcium(product));
  const rest = used.filter((amount) => !both.includes(amount));
  first.push(...rest.filter(({ product }) => holdsCalcium(product)));
  second.push(...rest.filter(({ product }) => dropsCalcium(product)));
  for (const amount of both) {
    const meets = (tank: readonly Amount[]): number =>
      tank.filter(({ product }) => apart(product, amount.product)).length;
    (meets(first) < meets(second) ? first : second).push(amount);
  }
  const free = rest.filter(({ product }) => !holdsCalcium(product) && !dropsCalcium(product));
  const needsTwo = first.length > 0 && second.length > 0;
  for (const amount of [...free].sort((a, b) => b.massGrams - a.massGrams)) {
    if (!needsTwo) (second.length > 0 ? second : first).push(amount);
    else (weight(first) <= weight(second) ? first : second).push(amount);
  }
  return [first, second];
}

const weight = (tank: readonly Amount[]): number => tank.reduce((sum, { massGrams }) => sum + massGrams, 0);
