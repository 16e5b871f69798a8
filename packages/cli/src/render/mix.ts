import type { MixComponent, MixInput, MixResult, OrderedPack } from "nutrient-core";
import type { Style } from "../command.ts";
import { area, mass, money, shown, volume } from "./number.ts";

/** What to buy first, then what it fills, then how to put it together and what it weighs. */
export function mixLines(input: MixInput, result: MixResult, { habit }: Style, currency?: string): string[] {
  const litres = (value: number): string => volume(value, habit);
  const kilograms = (value: number): string => mass(value * 1000, habit);
  const wide = Math.max(...result.components.map(({ name }) => name.length));
  const lines = [
    `For ${litres(result.fillVolumeLitres)} of mix in place, have ${litres(result.orderVolumeLitres)} of loose material:`,
  ];
  for (const component of result.components) {
    lines.push(
      `  ${component.name.padEnd(wide)}  ${litres(component.looseVolumeLitres)}${bought(component, litres, currency)}`,
    );
    if (component.choices) {
      lines.push(`    for the same money: ${component.choices.map(packs).join("; or ")}`);
    }
  }
  for (const { name, charge } of result.deliveries) lines.push(`  delivery (${name})  ${money(charge, currency)}`);
  if (result.cost !== undefined) lines.push(`  together ${money(result.cost, currency)}`);
  lines.push(...additionLines(result, kilograms, habit));
  lines.push("Fills:");
  for (const space of result.fills) {
    const plants = space.plants === undefined ? "" : `, ${space.plants} plants`;
    const plan = space.areaSquareMetres === undefined ? "" : ` on ${area(space.areaSquareMetres, habit)}`;
    const outline = /mound|ridge/.test(space.written) ? /\((\w+)\)$/.exec(space.label)?.[1] : undefined;
    const shape = outline && !space.written.includes(outline) ? ` (${outline})` : "";
    lines.push(`  ${space.count} x ${space.written}${shape}: ${litres(space.volumeLitres)}${plan}${plants}`);
  }
  if (result.topUpLitres > 0) {
    lines.push(
      `  mixed it is ${litres(result.mixedVolumeLitres)}: heap up the extra ${litres(result.topUpLitres)}, or keep it for topping up`,
    );
  }
  if (result.leftoverWouldFillLitres !== undefined && result.leftoverWouldFillLitres >= 0.5) {
    lines.push(`  what is left over would fill ${litres(result.leftoverWouldFillLitres)} more`);
  }
  lines.push(...weightLines(input, result, kilograms));
  lines.push(...rootLines(result));
  return lines;
}

const packs = (order: readonly OrderedPack[]): string =>
  order.map(({ pack, count }) => `${count} x ${pack}`).join(" + ");

function bought(component: MixComponent, litres: (value: number) => string, currency?: string): string {
  const { isOwn, order, leftoverLitres, cost, stockUsedLitres } = component;
  if (isOwn) return " (at hand)";
  const stock = stockUsedLitres > 0 ? `, ${litres(stockUsedLitres)} at hand` : "";
  if (order.length === 0) return stock;
  const price = cost === undefined ? "" : `, ${money(cost, currency)}`;
  const left = leftoverLitres >= 0.05 ? ` (${litres(leftoverLitres)} left over)` : "";
  return `${stock}: buy ${packs(order)}${price}${left}`;
}

function additionLines(
  { additions }: MixResult,
  kilograms: (value: number) => string,
  habit: Style["habit"],
): string[] {
  if (additions.length === 0) return [];
  const rate = (grams: number): string =>
    habit === "us" ? `${shown((grams / 453.59237) * 0.764554857984)} lb/cu yd` : `${shown(grams / 1000)} kg/m3`;
  return [
    "Mix in:",
    ...additions.map(
      ({ name, massGrams, gramsPerCubicMetre }) =>
        `  ${kilograms(massGrams / 1000)} of ${name} (${rate(gramsPerCubicMetre)})`,
    ),
  ];
}

function weightLines(
  _input: MixInput,
  { massKilograms, carLoads }: MixResult,
  kilograms: (value: number) => string,
): string[] {
  const lines: string[] = [];
  if (massKilograms) {
    const { dry, delivered, wet, wetRange } = massKilograms;
    lines.push(
      `Weight: about ${kilograms(delivered)} to carry (${kilograms(dry)} if dry), ${kilograms(wet)} when watered (${kilograms(wetRange[0])} to ${kilograms(wetRange[1])})`,
    );
  }
  if (carLoads) {
    const { atLeast, enough } = carLoads;
    lines.push(
      `Car: ${enough} ${enough === 1 ? "trip" : "trips"}${atLeast < enough ? ` (${atLeast} at the very least)` : ""}`,
    );
  }
  return lines;
}

function rootLines({ airAndWater, firstSeason }: MixResult): string[] {
  const lines: string[] = [];
  const percent = ([low, high]: readonly [number, number]): string => `${shown(low, 2)} to ${shown(high, 2)} %`;
  lines.push(
    airAndWater.isKnown
      ? `Drained, a pot of it holds ${percent(airAndWater.airPercent)} air and ${percent(airAndWater.waterPercent)} water (measured: ${airAndWater.like})`
      : `Air and water in it: not known (${airAndWater.reason})`,
  );
  if (firstSeason) {
    const [low, high] = firstSeason.firstSeasonNitrogenGramsPerCubicMetre.map((grams) => shown(grams, 2));
    lines.push(`Its compost sets free about ${low} to ${high} g of nitrogen per m3 in the first season`);
  }
  return lines;
}
