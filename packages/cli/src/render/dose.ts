import type { DoseInput, DoseResult } from "nutrient-core";
import type { Style } from "../command.ts";
import { byVolume } from "./by-volume.ts";
import { deliveredLine } from "./delivered.ts";
import { shown, water, weighed } from "./number.ts";

/** The can first: what to weigh, then what it delivers. */
export function doseLines(input: DoseInput, result: DoseResult, { habit }: Style): string[] {
  const [amount] = result.amounts;
  if (!amount) return [];
  const measure = weighed(amount.massGrams, habit);
  const about = byVolume(input.product, amount.volumeMillilitres, habit);
  const lines: string[] = [];
  if (amount.massGrams === 0) {
    lines.push(`No ${input.product.name} is needed: ${water(input.waterLitres, habit)} of this water holds enough.`);
  } else if (result.stock) {
    const { massGrams, gramsPerLitre, finalVolumeLitres, millilitresForWater } = result.stock;
    const tank = water(input.stock!.tankLitres, habit);
    lines.push(
      `Stock: ${weighed(massGrams, habit)} of ${input.product.name}, made up to ${tank} with water`,
      `  that is ${shown(gramsPerLitre)} g/L, for ${water(finalVolumeLitres, habit)} of feed at 1:${input.stock!.ratio}`,
    );
    if (Math.abs(finalVolumeLitres - input.waterLitres) > 1e-9 * finalVolumeLitres) {
      lines.push(`  for ${water(input.waterLitres, habit)}: ${shown(millilitresForWater)} mL of stock`);
    }
  } else if (input.purpose.kind === "target") {
    lines.push(`${measure} of ${input.product.name} in ${water(input.waterLitres, habit)}${about}`);
  } else {
    lines.push(`${measure} of ${input.product.name} in ${water(input.waterLitres, habit)} delivers:`);
  }
  const delivered = `  ${deliveredLine(result.deliveredPpm, "ppm")}`;
  // Behind "delivers:" comes what is delivered.
  if (input.purpose.kind === "given") lines.push(delivered);
  if (result.allCans && amount.massGrams > 0) {
    const { count, massGrams, waterLitres } = result.allCans;
    lines.push(`  for ${count} cans, ${water(waterLitres, habit)} in all: ${weighed(massGrams, habit)}`);
  }
  if (input.purpose.kind !== "given") lines.push(delivered);
  if (result.ecMilliSiemensPerCm !== undefined && result.ecMilliSiemensPerCm >= 0.01)
    lines.push(`  EC about ${shown(result.ecMilliSiemensPerCm, 2)} mS/cm above the water's own`);
  else if (result.ecRange)
    lines.push(
      `  EC between ${shown(result.ecRange[0], 2)} and ${shown(result.ecRange[1], 2)} mS/cm above the water's own, by the salts used`,
    );
  return lines;
}
