import type { BlendInput, BlendResult, UnitHabit } from "nutrient-core";
import type { Style } from "../command.ts";
import { measuredLines, rangeLine, weighedLines } from "./blend-measured.ts";
import { conductivityLine } from "./conductivity.ts";
import { deliveredLine } from "./delivered.ts";
import { area, money, shown, volume, water, weighed } from "./number.ts";
import { rateUnit } from "./rate.ts";

/** The recipe first, a product a line; then what it makes, and the reason where it is not what was asked. */
export function blendLines(input: BlendInput, result: BlendResult, { habit }: Style, currency?: string): string[] {
  const names = new Map(input.products.map(({ id, name }) => [id, name]));
  const lines = [heading(input, result, habit)];
  if (result.stock) lines.push(...tankLines(input, result, names, habit));
  else if (result.weighed) lines.push(...weighedLines(input, result, names, habit));
  else lines.push(...exactLines(input, result, names, habit));
  const unused = result.amounts.filter(({ massGrams }) => massGrams === 0);
  if (unused.length > 0)
    lines.push(`  not needed: ${unused.map(({ product }) => names.get(product) ?? product).join(", ")}`);
  lines.push(...madeLines(input, result, habit));
  if (input.purpose.kind === "target") lines.push(...rangeLine(result, input.purpose.extent.basis, habit));
  lines.push(...conductivityLine(result));
  if (result.cost !== undefined) lines.push(`  cost ${money(result.cost, currency)}`);
  const said = result.status === "closest" ? result.explanation : result.explanation.slice(1);
  if (said.length > 0) lines.push("", ...said);
  return lines;
}

function heading(input: BlendInput, result: BlendResult, habit: UnitHabit): string {
  const { purpose } = input;
  const closest = result.status === "closest" ? "The closest that these come" : "Weigh out";
  if (result.stock) {
    const { finalVolumeLitres, ratio } = result.stock;
    return `${closest} as stock, for ${water(finalVolumeLitres, habit)} of feed at 1:${ratio}:`;
  }
  if (purpose.kind !== "target") return `${closest} for ${weighed(purpose.batchGrams, habit)}:`;
  const { basis, amount } = purpose.extent;
  const place =
    basis === "litre"
      ? water(amount, habit)
      : basis === "squareMetre"
        ? area(amount, habit)
        : `${volume(amount * 1000, habit)} of mix`;
  return `${closest} for ${place}:`;
}

type Names = ReadonlyMap<string, string>;

function exactLines(input: BlendInput, result: BlendResult, names: Names, habit: UnitHabit): string[] {
  // A liquid is measured out in millilitres; how closely a powder lies is too uncertain to say so beside every row.
  const liquids = new Set(input.products.filter(({ state }) => state === "liquid").map(({ id }) => id));
  const rows = result.amounts
    .filter(({ massGrams }) => massGrams > 0)
    .map(({ product, massGrams, share, volumeMillilitres }) => {
      const parts = input.purpose.kind === "target" ? "" : `  (${shown(share * 100)} %)`;
      const poured =
        volumeMillilitres !== undefined && liquids.has(product) ? `  (${shown(volumeMillilitres)} mL)` : "";
      return [weighed(massGrams, habit), `${names.get(product) ?? product}${parts}${poured}`] as const;
    });
  if (result.fillerGrams !== undefined && result.fillerGrams > 1e-9)
    rows.push([weighed(result.fillerGrams, habit), "filler (sand or another inert material)"]);
  return inColumns(rows);
}

function tankLines(input: BlendInput, result: BlendResult, names: Names, habit: UnitHabit): string[] {
  const { stock, weighed: measured } = result;
  if (!stock) return [];
  const several = stock.tanks.length > 1;
  const lines = stock.tanks.flatMap(({ name, amounts }) => [
    `  ${several ? `tank ${name}, made up to` : "made up to"} ${water(stock.tankLitres, habit)} with water:`,
    ...inColumns(
      amounts.map(({ product, massGrams }) => {
        const grams = measured?.amounts.find((one) => one.product === product)?.massGrams ?? massGrams;
        return [weighed(grams, habit), names.get(product) ?? product] as const;
      }),
      "    ",
    ),
  ]);
  if (several) lines.push(`  each through its own injector at 1:${stock.ratio}; never mix the stocks undiluted`);
  if (measured) lines.push(...measuredLines(input, measured, habit));
  return lines;
}

/** Amounts under each other, right-aligned, with what they are amounts of. */
function inColumns(rows: readonly (readonly [amount: string, what: string])[], indent = "  "): string[] {
  const width = Math.max(...rows.map(([amount]) => amount.length));
  return rows.map(([amount, what]) => `${indent}${amount.padStart(width)}  ${what}`);
}

function madeLines(input: BlendInput, result: BlendResult, habit: UnitHabit): string[] {
  const makes = result.weighed ? "exact amounts would make" : "makes";
  const delivers = result.weighed ? "exact amounts would deliver" : "delivers";
  if (input.purpose.kind !== "target") {
    const grade = result.grade.map((percent) => shown(percent)).join("-");
    const ratio = result.ratio.map((part) => shown(part)).join(" : ");
    return [`  ${makes} ${grade} (N-P2O5-K2O), a ratio of ${ratio}`];
  }
  if (result.deliveredPpm) return [`  ${delivers} ${deliveredLine(result.deliveredPpm, "ppm")}`];
  if (result.deliveredGramsPerSquareMetre)
    return [`  ${delivers} ${deliveredLine(result.deliveredGramsPerSquareMetre, rateUnit("squareMetre", habit))}`];
  return [`  ${delivers} ${deliveredLine(result.deliveredGramsPerCubicMetre ?? {}, rateUnit("cubicMetre", habit))}`];
}
