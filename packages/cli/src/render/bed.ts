import type { BedInput, BedResult } from "nutrient-core";
import type { Style } from "../command.ts";
import { byVolume } from "./by-volume.ts";
import { deliveredLine } from "./delivered.ts";
import { area, money, onEachArea, onEachLength, shown, weighed } from "./number.ts";
import { rateUnit } from "./rate.ts";

/** The bed first: what to spread, then for each square metre, plant or metre of row, then what it delivers. */
export function bedLines(input: BedInput, result: BedResult, { habit }: Style, currency?: string): string[] {
  const [amount] = result.amounts;
  if (!amount) return [];
  const { name } = input.product;
  const place = area(result.areaSquareMetres, habit);
  const unit = rateUnit("squareMetre", habit);
  const delivers = `  delivers ${deliveredLine(result.deliveredGramsPerSquareMetre, unit)}`;
  if (amount.massGrams === 0) return [`No ${name} is needed on ${place}: what is there is enough.`, delivers];
  const about = byVolume(input.product, amount.volumeMillilitres, habit);
  const lines = [`${weighed(amount.massGrams, habit)} of ${name} on ${place}${about}`];
  lines.push(`  ${onEachArea(amount.gramsPerSquareMetre, habit)}`);
  if (amount.gramsPerPlant !== undefined) lines.push(`  ${weighed(amount.gramsPerPlant, habit)} for each plant`);
  if (amount.gramsPerMetreOfRow !== undefined) lines.push(`  ${onEachLength(amount.gramsPerMetreOfRow, habit)}`);
  lines.push(delivers);
  const season = result.firstSeasonNitrogenGramsPerSquareMetre;
  if (season) {
    const [low, high] = season.map((rate) => shown(rate * unit.perKept, 2));
    lines.push(`  of the N, ${low === high ? low : `${low} to ${high}`} ${unit.sign} can be used in the first season`);
  }
  if (amount.cost !== undefined) lines.push(`  cost ${money(amount.cost, currency)}`);
  return lines;
}
