import { term, type WorkingLine } from "../outcome/working.ts";
import type { Stock } from "../supply/read-stock.ts";
import { type Amount, amountUnit } from "../supply/supply.ts";

/** For all cans together. */
export interface AllCans {
  readonly count: number;
  readonly waterLitres: number;
  /** Null, with the volume beside it, where the mass is not known. */
  readonly massGrams: number | null;
  readonly volumeMillilitres?: number;
}

/** A dose through a stock solution. */
export interface DoseStock {
  /** Null, with the volumes beside them, where the mass is not known. */
  readonly massGrams: number | null;
  readonly gramsPerLitre: number | null;
  /** Of a liquid whose mass is not known: into the tank, and into each litre of it. */
  readonly volumeMillilitres?: number;
  readonly millilitresPerLitre?: number;
  readonly finalVolumeLitres: number;
  /** Stock that goes into the water of this dose. */
  readonly millilitresForWater: number;
}

/** One can's amount, for all of them. */
export function inAllCans(
  count: number,
  { product, massGrams }: Amount,
  waterLitres: number,
  working: WorkingLine[],
): AllCans {
  const unit = amountUnit(product);
  const all = count * massGrams;
  working.push({
    label: "for all cans",
    expression: `${count} * ${term(massGrams)} ${unit}`,
    value: all,
    unit,
    source: null,
  });
  const amount = unit === "g" ? { massGrams: all } : { massGrams: null, volumeMillilitres: all };
  return { count, waterLitres: count * waterLitres, ...amount };
}

/** The same feed through a stock that is made in a tank; `inTank` is what goes into it, in the amount's own unit. */
export function throughStock(
  stock: Stock,
  waterLitres: number,
  [amount]: readonly Amount[],
  working: WorkingLine[],
): { readonly inTank: number; readonly stock: DoseStock } {
  const { product, massGrams } = amount!;
  // Of a liquid whose mass is not known the same lines are of millilitres.
  const unit = amountUnit(product);
  const perLitre = (massGrams / waterLitres) * stock.ratio;
  const finalVolumeLitres = stock.tankLitres * stock.ratio;
  const inTank = perLitre * stock.tankLitres;
  const millilitresForWater = (waterLitres / stock.ratio) * 1000;
  working.push(
    {
      label: "strength of the stock",
      expression: `${term(massGrams)} ${unit} / (${term(waterLitres)} L) * ${term(stock.ratio)}`,
      value: perLitre,
      unit: `${unit}/L`,
      source: null,
    },
    {
      label: "into the stock tank",
      expression: `${term(perLitre)} ${unit}/L * ${term(stock.tankLitres)} L`,
      value: inTank,
      unit,
      source: null,
    },
    {
      label: "feed from a full tank",
      expression: `${term(stock.tankLitres)} L * ${term(stock.ratio)}`,
      value: finalVolumeLitres,
      unit: "L",
      source: null,
    },
    {
      label: "stock for this water",
      expression: `${term(waterLitres)} L / ${term(stock.ratio)}`,
      value: millilitresForWater,
      unit: "mL",
      source: null,
    },
  );
  const strength =
    unit === "g"
      ? { massGrams: inTank, gramsPerLitre: perLitre }
      : { massGrams: null, gramsPerLitre: null, volumeMillilitres: inTank, millilitresPerLitre: perLitre };
  return { inTank, stock: { ...strength, finalVolumeLitres, millilitresForWater } };
}
