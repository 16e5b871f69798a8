import type { BedInput, BedResult } from "nutrient-core";
import type { Style } from "../command.ts";
import { deliveredLine } from "./delivered.ts";
import { area, money, onEachArea, onEachLength, shown, weighed } from "./number.ts";
import { rateUnit } from "./rate.ts";

/** The bed first: what to spread, then for each square metre, plant or metre of row, then what it delivers. */
export function bedLines(input: BedInput, result: BedResult, { habit }: Style): string[] {
  const [amount] = result.amounts;
  if (!amount) return [];
  const lines = [
    `${weighed(amount.massGrams, habit)} of ${input.product.name} on ${area(result.areaSquareMetres, habit)}`,
  ];
  lines.push(`  ${onEachArea(amount.gramsPerSquareMetre, habit)}`);
  if (amount.gramsPerPlant !== undefined) lines.push(`  ${weighed(amount.gramsPerPlant, habit)} for each plant`);
  if (amount.gramsPerMetreOfRow !== undefined) lines.push(`  ${onEachLength(amount.gramsPerMetreOfRow, habit)}`);
  const unit = rateUnit("squareMetre", habit);
  lines.push(`  delivers ${deliveredLine(result.deliveredGramsPerSquareMetre, unit)}`);
  const season = result.firstSeasonNitrogenGramsPerSquareMetre;
  if (season) {
    const [low, high] = season.map((rate) => shown(rate * unit.perKept, 2));
    lines.push(`  of the N, ${low === high ? low : `${low} to ${high}`} ${unit.sign} can be used in the first season`);
  }
  if (amount.cost !== undefined) lines.push(`  cost ${money(amount.cost)}`);
  return lines;
}
