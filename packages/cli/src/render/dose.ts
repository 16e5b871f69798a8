import { type DoseInput, type DoseResult, METRIC_SPOONS, spoonsFor, type UnitHabit, US_SPOONS } from "nutrient-core";
import type { Style } from "../command.ts";
import { deliveredLine } from "./delivered.ts";
import { NOT_BY_SPOON } from "./not-by-spoon.ts";
import { shown, water, weighed } from "./number.ts";
import { shortSpoons, spoonText } from "./spoons.ts";

/** The can first: what to weigh, then what it delivers. */
export function doseLines(input: DoseInput, result: DoseResult, { habit }: Style): string[] {
  const [amount] = result.amounts;
  if (!amount) return [];
  const measure = weighed(amount.massGrams, habit);
  const about = byVolume(input, amount.volumeMillilitres, habit);
  const lines: string[] = [];
  if (result.stock) {
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
  if (result.allCans) {
    const { count, massGrams, waterLitres } = result.allCans;
    lines.push(`  for ${count} cans, ${water(waterLitres, habit)} in all: ${weighed(massGrams, habit)}`);
  }
  lines.push(`  ${deliveredLine(result.deliveredPpm, "ppm")}`);
  if (result.ecMilliSiemensPerCm !== undefined && result.ecMilliSiemensPerCm >= 0.01)
    lines.push(`  EC about ${shown(result.ecMilliSiemensPerCm, 2)} mS/cm above the water's own`);
  else if (result.ecRange)
    lines.push(
      `  EC between ${shown(result.ecRange[0], 2)} and ${shown(result.ecRange[1], 2)} mS/cm above the water's own, by the salts used`,
    );
  return lines;
}

/** A liquid by its millilitres; a powder by spoons, unless it is nothing for a spoon. */
function byVolume({ product }: DoseInput, millilitres: number | undefined, habit: UnitHabit): string {
  if (millilitres === undefined) return "";
  if (product.hazards.some((hazard) => NOT_BY_SPOON.has(hazard)))
    return product.state === "liquid" ? ` (${shown(millilitres)} mL)` : "";
  const spoons = spoonsFor(millilitres, habit === "us" ? US_SPOONS : METRIC_SPOONS);
  if (product.state === "liquid")
    return ` (${shown(millilitres)} mL${habit === "us" && spoons ? `, about ${shortSpoons(spoons)} US` : ""})`;
  return spoons ? ` (about ${spoonText(spoons)})` : "";
}
