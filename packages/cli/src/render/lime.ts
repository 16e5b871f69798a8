import { type LimeAmount, type LimeInput, type LimeResult, present, type UnitHabit } from "nutrient-core";
import type { Style } from "../command.ts";
import { byVolume } from "./by-volume.ts";
import { deliveredLine } from "./delivered.ts";
import { area, money, onEachArea, shown, shownRange, withUnit } from "./number.ts";
import { rateUnit } from "./rate.ts";

/** What goes on the bed, how sure that is, when, how deep, and what it brings. */
export function limeLines(input: LimeInput, result: LimeResult, { habit }: Style, currency?: string): string[] {
  const [amount] = result.amounts;
  if (!amount) return [];
  const { name } = input.product;
  const { fromPh, toPh } = input;
  const place = area(result.areaSquareMetres, habit);
  if (amount.massGrams === 0) return [`No ${name} is needed on ${place} for pH ${shown(toPh)}.`];
  const lines = [
    `${rough(amount.massGrams, habit)} of ${name} on ${place}, for pH ${shown(fromPh)} to ${shown(toPh)}${byVolume(input.product, amount.volumeMillilitres, habit)}`,
    `  ${onEachArea(result.gramsPerSquareMetre, habit)}`,
    `  ${roughRange(amount.rangeGrams, habit)} by what is published`,
    `  ${goes(result, habit)}`,
    `  mixed through the top ${withUnit(present(result.depthMetres, "length", habit), 2)}${countedAs(input, result)}`,
    `  brings ${deliveredLine(result.deliveredGramsPerSquareMetre, rateUnit("squareMetre", habit))}`,
  ];
  if (amount.cost !== undefined) lines.push(`  cost ${money(amount.cost, currency)}`);
  return lines;
}

/** Two figures: no rate for a soil is better known than that. */
function rough(grams: number, habit: UnitHabit): string {
  const metric = withUnit(present(grams, "mass", "metric"), 2);
  return habit === "us" ? `${withUnit(present(grams, "mass", "us"), 2)} (${metric})` : metric;
}

function roughRange(range: LimeAmount["rangeGrams"], habit: UnitHabit): string {
  const metric = inOneUnit(range, "metric");
  return habit === "us" ? `${inOneUnit(range, "us")} (${metric})` : metric;
}

/** Both ends in the unit of the upper one. */
function inOneUnit([low, high]: LimeAmount["rangeGrams"], habit: UnitHabit): string {
  const { value, unit } = present(high, "mass", habit);
  return `${shownRange((low * value) / high, value, 2)} ${unit}`;
}

function goes({ applications }: LimeResult, habit: UnitHabit): string {
  const [first, second] = applications;
  if (!first || !second) return "in one go";
  const pause = second.month === 12 ? "a year apart" : "half a year apart";
  return `in ${applications.length} goes of ${rough(first.massGrams, habit)}, ${pause}`;
}

function countedAs({ amendment }: LimeInput, result: LimeResult): string {
  if (amendment.kind === "sulfur") return "";
  const fine =
    result.finenessPercent === undefined ? "finely ground" : `${shown(result.finenessPercent)} % fine enough`;
  return `; counted as ${shown(result.calciumCarbonateEquivalentPercent ?? 0)} % calcium carbonate, ${fine}`;
}
