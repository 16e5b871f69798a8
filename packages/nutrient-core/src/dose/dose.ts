import { type Caution, inOrderOfUrgency } from "../outcome/caution.ts";
import { answer, type Outcome } from "../outcome/outcome.ts";
import { hazardCautions } from "../product/hazard-cautions.ts";
import type { Product } from "../product/product.ts";
import { impossibleLabelCautions } from "../product/sanity/sanity.ts";
import { feedCautions, nitrogenFormCautions, stockCautions } from "../solution/cautions.ts";
import { electricalConductivity } from "../solution/conductivity.ts";
import type { Extent } from "../supply/basis.ts";
import { type BothForms, inBothForms } from "../supply/both-forms.ts";
import { type Purpose, supplyOne, volumeOf } from "../supply/one-product.ts";
import { type DeliveredRanges, deliveredRanges } from "../supply/range.ts";
import type { Stock } from "../supply/read-stock.ts";
import type { Amount, Delivered } from "../supply/supply.ts";
import { type AllCans, type DoseStock, inAllCans, throughStock } from "./cans-and-stock.ts";
import { amountCautions } from "./cautions.ts";

export interface DoseInput {
  readonly product: Product;
  readonly purpose: Purpose;
  /** Litres of finished feed that the amount is for: a can, several, or all that a tank of stock makes. */
  readonly waterLitres: number;
  readonly stock?: Stock;
  /** How many such cans are wanted; the amounts stay those of one. */
  readonly cans?: number;
  /** Already in the water: mg/L of each nutrient. */
  readonly already: Delivered;
}

export interface DoseAmount {
  readonly product: string;
  /** Null for a liquid whose label is by volume and whose density is not known: it is measured, not weighed. */
  readonly massGrams: number | null;
  /** Where the density is known, or not needed. */
  readonly volumeMillilitres?: number;
}

export interface DoseResult {
  readonly amounts: readonly DoseAmount[];
  /** mg per litre of finished feed, element and oxide side by side, what was already in the water included. */
  readonly deliveredPpm: BothForms;
  /** Between which limits each nutrient lies, by what the label allows (US rule) and the filling of the can; mg/L. */
  readonly range: DeliveredRanges;
  /** At 25 °C, where the ions are known. */
  readonly ecMilliSiemensPerCm?: number;
  /** Lowest and highest the conductivity can be, where only a grade is known. */
  readonly ecRange?: readonly [number, number];
  /** For all cans together, where more than one was asked for. */
  readonly allCans?: AllCans;
  readonly stock?: DoseStock;
}

/**
 * How much of a product goes into this water for a target, or what a given amount of it delivers.
 *
 * mass = litres of feed x mg/L wanted / mass fraction of the element. Through a stock, the same mass per
 * litre of feed is dissolved `ratio` times as strong.
 *
 * A liquid whose label is by volume needs no density: percent by volume times millilitres is grams of nutrient, and
 * the amounts are then told by volume only, with a mass of null.
 *
 * @returns Amounts for the water, what all nutrients come to, and the stock where one is made.
 * @example
 * dose({ product: kno3, purpose: { kind: "given", massGrams: 9 }, waterLitres: 9, already: {} })  // => { deliveredPpm: { K: 386.7... } }
 */
export function dose(input: DoseInput): Outcome<DoseResult> {
  const { product, purpose, waterLitres, stock, already } = input;
  const extent: Extent = { basis: "litre", amount: waterLitres };
  const supplied = supplyOne(product, purpose, extent, already);
  if (!supplied.ok) return supplied;
  const { massGrams, delivered } = supplied.value;
  const amounts: Amount[] = [{ product, massGrams }];
  const conductivity = electricalConductivity(amounts, waterLitres);
  const { working: volumeWorking, ...volume } = volumeOf(product, massGrams);
  const working = [...supplied.working, ...volumeWorking, ...conductivity.working];
  const cautions: Caution[] = [
    ...impossibleLabelCautions([product]),
    ...hazardCautions([product]),
    ...feedCautions(delivered, extent, conductivity, amounts),
    ...nitrogenFormCautions(delivered),
    ...(stock ? [] : amountCautions(product, massGrams)),
  ];
  const made = stock ? throughStock(stock, waterLitres, amounts, working) : undefined;
  if (stock && made) {
    cautions.push(...stockCautions([{ product, massGrams: made.inTank }], stock.tankLitres));
  }
  const result: DoseResult = {
    amounts: [{ product: product.id, massGrams: product.massUnknown ? null : massGrams, ...volume }],
    deliveredPpm: inBothForms(delivered),
    range: deliveredRanges(amounts, extent, { labelRule: "us" }, already),
    ...(conductivity.known ? { ecMilliSiemensPerCm: conductivity.milliSiemensPerCm } : {}),
    ...(conductivity.range ? { ecRange: conductivity.range } : {}),
    ...(made ? { stock: made.stock } : {}),
    ...(input.cans !== undefined && input.cans > 1
      ? { allCans: inAllCans(input.cans, amounts[0]!, waterLitres, working) }
      : {}),
  };
  return answer(result, inOrderOfUrgency(cautions), working);
}
