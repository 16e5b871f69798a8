import type { BlendInput, BlendResult, UnitHabit } from "nutrient-core";
import type { Style } from "../command.ts";
import { deliveredLine } from "./delivered.ts";
import { area, money, shown, volume, water, weighed } from "./number.ts";

/** The recipe first, a product a line; then what it makes, and the reason where it is not what was asked. */
export function blendLines(input: BlendInput, result: BlendResult, { habit }: Style, currency?: string): string[] {
  const names = new Map(input.products.map(({ id, name }) => [id, name]));
  const lines = [heading(input, result, habit)];
  const used = result.amounts.filter(({ massGrams }) => massGrams > 0);
  const amounts = used.map(({ massGrams }) => weighed(massGrams, habit));
  const filler =
    result.fillerGrams !== undefined && result.fillerGrams > 1e-9 ? weighed(result.fillerGrams, habit) : undefined;
  const width = Math.max(...amounts.map(({ length }) => length), filler?.length ?? 0);
  used.forEach(({ product, share }, index) => {
    const parts = input.purpose.kind === "target" ? "" : `  (${shown(share * 100)} %)`;
    lines.push(`  ${amounts[index]!.padStart(width)}  ${names.get(product) ?? product}${parts}`);
  });
  if (filler) lines.push(`  ${filler.padStart(width)}  filler (sand or another inert material)`);
  const unused = result.amounts.filter(({ massGrams }) => massGrams === 0);
  if (unused.length > 0)
    lines.push(`  not needed: ${unused.map(({ product }) => names.get(product) ?? product).join(", ")}`);
  lines.push(...madeLines(input, result));
  if (result.ecMilliSiemensPerCm !== undefined)
    lines.push(`  EC about ${shown(result.ecMilliSiemensPerCm, 2)} mS/cm above the water's own`);
  if (result.cost !== undefined) lines.push(`  cost ${money(result.cost, currency)}`);
  if (result.status === "closest") lines.push("", ...result.explanation);
  return lines;
}

function heading(input: BlendInput, result: BlendResult, habit: UnitHabit): string {
  const { purpose } = input;
  const closest = result.status === "closest" ? "The closest that these come" : "Weigh out";
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

function madeLines(input: BlendInput, result: BlendResult): string[] {
  if (input.purpose.kind !== "target") {
    const grade = result.grade.map((percent) => shown(percent)).join("-");
    const ratio = result.ratio.map((part) => shown(part)).join(" : ");
    return [`  makes ${grade} (N-P2O5-K2O), a ratio of ${ratio}`];
  }
  if (result.deliveredPpm) return [`  delivers ${deliveredLine(result.deliveredPpm, "ppm")}`];
  if (result.deliveredGramsPerSquareMetre)
    return [`  delivers ${deliveredLine(result.deliveredGramsPerSquareMetre, "g/m2")}`];
  return [`  delivers ${deliveredLine(result.deliveredGramsPerCubicMetre ?? {}, "g/m3")}`];
}
