import { type LimeAmount, type LimeInput, type LimeResult, present, presentRange, type UnitHabit } from "nutrient-core";
import type { Style } from "../command.ts";
import { byVolume } from "./by-volume.ts";
import { deliveredLine } from "./delivered.ts";
import { area, money, onEachArea, shown, shownRange, weighed, withUnit } from "./number.ts";
import { rateUnit } from "./rate.ts";

/** Significant digits: no rate for a soil is better known than that. */
const ROUGH = 2;

/** What goes on the bed, how sure that is, when, how deep, and what it brings. */
export function limeLines(input: LimeInput, result: LimeResult, { habit }: Style, currency?: string): string[] {
  const [amount] = result.amounts;
  if (!amount) return [];
  const { name } = input.product;
  const { fromPh, toPh } = input;
  const place = area(result.areaSquareMetres, habit);
  if (amount.massGrams === 0) return [`No ${name} is needed on ${place} for pH ${shown(toPh)}.`];
  const lines = [
    `${weighed(amount.massGrams, habit, ROUGH)} of ${name} on ${place}, for pH ${shown(fromPh)} to ${shown(toPh)}${byVolume(input.product, amount.volumeMillilitres, habit)}`,
    // Right under the whole amount: nobody should spread all of it at once who read one line only.
    `  ${goes(result, habit)}`,
    `  ${onEachArea(result.gramsPerSquareMetre, habit, ROUGH)}`,
    `  ${roughRange(amount.rangeGrams, habit)} by what is published`,
    `  mixed through the top ${withUnit(present(result.depthMetres, "length", habit), ROUGH)}${countedAs(input, result)}`,
    `  brings ${deliveredLine(result.deliveredGramsPerSquareMetre, rateUnit("squareMetre", habit))}`,
  ];
  if (amount.cost !== undefined) lines.push(`  cost ${money(amount.cost, currency)}`);
  return lines;
}

function roughRange(range: LimeAmount["rangeGrams"], habit: UnitHabit): string {
  const metric = inOneUnit(range, "metric");
  return habit === "us" ? `${inOneUnit(range, "us")} (${metric})` : metric;
}

function inOneUnit(range: LimeAmount["rangeGrams"], habit: UnitHabit): string {
  const { low, high, unit } = presentRange(range, "mass", habit);
  return `${shownRange(low, high, ROUGH)} ${unit}`;
}

function goes({ applications }: LimeResult, habit: UnitHabit): string {
  const [first, second] = applications;
  if (!first || !second) return "in one go";
  const pause = second.month === 12 ? "a year apart" : "half a year apart";
  return `in ${applications.length} goes of ${weighed(first.massGrams, habit, ROUGH)}, ${pause}`;
}

function countedAs({ amendment }: LimeInput, result: LimeResult): string {
  if (amendment.kind === "sulfur") return "";
  const fine =
    result.finenessPercent === undefined ? "finely ground" : `${shown(result.finenessPercent)} % fine enough`;
  return `; counted as ${shown(result.calciumCarbonateEquivalentPercent ?? 0)} % calcium carbonate, ${fine}`;
}
