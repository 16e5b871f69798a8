import { type Caution, inOrderOfUrgency } from "../outcome/caution.ts";
import { answer, type Outcome } from "../outcome/outcome.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { hazardCautions } from "../product/hazard-cautions.ts";
import type { Product } from "../product/product.ts";
import { impossibleLabelCautions } from "../product/sanity/sanity.ts";
import { feedCautions, nitrogenFormCautions } from "../solution/cautions.ts";
import type { Extent } from "../supply/basis.ts";
import { type BothForms, inBothForms } from "../supply/both-forms.ts";
import { type Purpose, supplyOne, volumeOf } from "../supply/one-product.ts";
import { type DeliveredRanges, deliveredRanges, rangeCautions } from "../supply/range.ts";
import type { FedArea } from "../supply/read-area.ts";
import type { Amount, Delivered } from "../supply/supply.ts";

export interface BedInput {
  readonly product: Product;
  readonly purpose: Purpose;
  readonly area: FedArea;
  /** Already in the bed: g per square metre of each nutrient. */
  readonly already: Delivered;
}

export interface BedAmount {
  readonly product: string;
  readonly massGrams: number;
  readonly gramsPerSquareMetre: number;
  readonly gramsPerPlant?: number;
  readonly gramsPerMetreOfRow?: number;
  readonly volumeMillilitres?: number;
  readonly cost?: number;
}

export interface BedResult {
  readonly amounts: readonly BedAmount[];
  readonly areaSquareMetres: number;
  /** Element and oxide side by side, what was already in the bed included. */
  readonly deliveredGramsPerSquareMetre: BothForms;
  /** Between which limits each nutrient lies, by what the label allows (US rule); g/m2. */
  readonly range: DeliveredRanges;
  /** Of the nitrogen delivered, what a crop can use in the first season, where the product is organic and published figures exist. */
  readonly firstSeasonNitrogenGramsPerSquareMetre?: readonly [number, number];
}

/**
 * How much of a product goes on a bed for a rate, or what rate an amount makes.
 *
 * mass = square metres x g/m2 wanted / mass fraction of the element.
 *
 * @returns The amount for the whole area, per square metre, and per plant or metre of row where the area says so.
 * @example
 * bed({ product: kno3, purpose: { kind: "given", massGrams: 288 }, area: { squareMetres: 2.88 }, already: {} })  // => { deliveredGramsPerSquareMetre: { K: 38.67... } }
 */
export function bed(input: BedInput): Outcome<BedResult> {
  const { product, purpose, area, already } = input;
  const extent: Extent = { basis: "squareMetre", amount: area.squareMetres };
  const supplied = supplyOne(product, purpose, extent, already);
  if (!supplied.ok) return supplied;
  const { massGrams, added, delivered } = supplied.value;
  const amounts: Amount[] = [{ product, massGrams }];
  const working: WorkingLine[] = [...supplied.working];
  const cautions: Caution[] = [
    ...impossibleLabelCautions([product]),
    ...hazardCautions([product]),
    ...rangeCautions([product]),
    ...feedCautions(delivered, extent, undefined, amounts),
    ...nitrogenFormCautions(delivered, extent),
  ];
  const result: BedResult = {
    amounts: [spread(product, massGrams, area, working)],
    areaSquareMetres: area.squareMetres,
    deliveredGramsPerSquareMetre: inBothForms(delivered),
    range: deliveredRanges(amounts, extent, { labelRule: "us" }, already),
    ...firstSeason(product, added.N ?? 0),
  };
  return answer(result, inOrderOfUrgency(cautions), working);
}

function spread(product: Product, massGrams: number, area: FedArea, working: WorkingLine[]): BedAmount {
  const per = (label: string, count: number, unit: string, expressionUnit: string): number => {
    const value = massGrams / count;
    working.push({
      label,
      expression: `${term(massGrams)} g / (${term(count)}${expressionUnit})`,
      value,
      unit,
      source: null,
    });
    return value;
  };
  const { working: volumeWorking, ...volume } = volumeOf(product, massGrams);
  working.push(...volumeWorking);
  return {
    product: product.id,
    massGrams,
    gramsPerSquareMetre: per("on each square metre", area.squareMetres, "g/m^2", " m^2"),
    ...(area.plants === undefined ? {} : { gramsPerPlant: per("for each plant", area.plants, "g", "") }),
    ...(area.rowMetres === undefined
      ? {}
      : { gramsPerMetreOfRow: per("on each metre of row", area.rowMetres, "g/m", " m") }),
    ...volume,
    ...(product.pricePerGram === undefined ? {} : { cost: massGrams * product.pricePerGram }),
  };
}

function firstSeason(product: Product, nitrogen: number): Pick<BedResult, "firstSeasonNitrogenGramsPerSquareMetre"> {
  const share = product.firstSeasonNitrogenShare;
  if (!share || nitrogen === 0) return {};
  return { firstSeasonNitrogenGramsPerSquareMetre: [nitrogen * share[0], nitrogen * share[1]] };
}
