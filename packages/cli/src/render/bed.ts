import type { BedInput, BedResult } from "nutrient-core";
import type { Style } from "../command.ts";
import { deliveredLine } from "./delivered.ts";
import { area, money, shown, weighed } from "./number.ts";

/** The bed first: what to spread, then for each square metre, plant or metre of row, then what it delivers. */
export function bedLines(input: BedInput, result: BedResult, { habit }: Style): string[] {
  const [amount] = result.amounts;
  if (!amount) return [];
  const lines = [
    `${weighed(amount.massGrams, habit)} of ${input.product.name} on ${area(result.areaSquareMetres, habit)}`,
  ];
  lines.push(`  ${weighed(amount.gramsPerSquareMetre, "metric")} on each square metre`);
  if (amount.gramsPerPlant !== undefined) lines.push(`  ${weighed(amount.gramsPerPlant, habit)} for each plant`);
  if (amount.gramsPerMetreOfRow !== undefined)
    lines.push(`  ${weighed(amount.gramsPerMetreOfRow, habit)} on each metre of row`);
  lines.push(`  delivers ${deliveredLine(result.deliveredGramsPerSquareMetre, "g/m2")}`);
  const season = result.firstSeasonNitrogenGramsPerSquareMetre;
  if (season) {
    const [low, high] = season.map((rate) => shown(rate, 2));
    lines.push(`  of the N, ${low === high ? low : `${low} to ${high}`} g/m2 can be used in the first season`);
  }
  if (amount.cost !== undefined) lines.push(`  cost ${money(amount.cost)}`);
  return lines;
}
