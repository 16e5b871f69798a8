import type { DoseInput, DoseResult, UnitHabit } from "nutrient-core";
import type { Style } from "../command.ts";
import { byVolume } from "./by-volume.ts";
import { conductivityLine } from "./conductivity.ts";
import { deliveredLine } from "./delivered.ts";
import { shown, water, weighed } from "./number.ts";

/** The can first: what to weigh, then what it delivers. */
export function doseLines(input: DoseInput, result: DoseResult, { habit }: Style): string[] {
  const [amount] = result.amounts;
  if (!amount) return [];
  const none = (amount.massGrams ?? amount.volumeMillilitres) === 0;
  const measure = measured(amount, habit);
  const about = amount.massGrams === null ? "" : byVolume(input.product, amount.volumeMillilitres, habit);
  const lines: string[] = [];
  if (none) {
    lines.push(`No ${input.product.name} is needed: ${water(input.waterLitres, habit)} of this water holds enough.`);
  } else if (result.stock) {
    const { gramsPerLitre, millilitresPerLitre = 0, finalVolumeLitres, millilitresForWater } = result.stock;
    const tank = water(input.stock!.tankLitres, habit);
    const strength = gramsPerLitre === null ? `${shown(millilitresPerLitre)} mL/L` : `${shown(gramsPerLitre)} g/L`;
    lines.push(
      `Stock: ${measured(result.stock, habit)} of ${input.product.name}, made up to ${tank} with water`,
      `  that is ${strength}, for ${water(finalVolumeLitres, habit)} of feed at 1:${input.stock!.ratio}`,
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
  if (result.allCans && !none) {
    const { count, waterLitres } = result.allCans;
    lines.push(`  for ${count} cans, ${water(waterLitres, habit)} in all: ${measured(result.allCans, habit)}`);
  }
  if (input.purpose.kind !== "given") lines.push(delivered);
  lines.push(...conductivityLine(result));
  return lines;
}

interface Measured {
  readonly massGrams: number | null;
  readonly volumeMillilitres?: number;
}

/** For the scale; for the measuring cup where nobody knows what a millilitre weighs. */
function measured({ massGrams, volumeMillilitres = 0 }: Measured, habit: UnitHabit): string {
  return massGrams === null ? `${shown(volumeMillilitres)} mL` : weighed(massGrams, habit);
}
