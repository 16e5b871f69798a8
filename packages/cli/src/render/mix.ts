import type { MixComponent, MixResult, OrderedPack, UnitHabit } from "nutrient-core";
import type { Style } from "../command.ts";
import { area, mass, money, shown, volume } from "./number.ts";

/** What to buy first, then what it fills, then how to put it together and what it weighs. */
export function mixLines(result: MixResult, { habit }: Style, currency?: string): string[] {
  return [
    ...orderLines(result, habit, currency),
    ...additionLines(result, habit),
    ...fillLines(result, habit),
    ...weightLines(result, habit),
    ...rootLines(result, habit),
  ];
}

function orderLines(result: MixResult, habit: UnitHabit, currency?: string): string[] {
  const { components, deliveries, cost, fillVolumeLitres, orderVolumeLitres } = result;
  const wide = Math.max(...components.map(({ name }) => name.length));
  const lines = [
    `For ${volume(fillVolumeLitres, habit)} in place, ${volume(orderVolumeLitres, habit)} of loose material:`,
  ];
  for (const component of components) {
    lines.push(`  ${component.name.padEnd(wide)}  ${bought(component, habit, currency)}`);
    if (component.choices)
      lines.push(`    same cost: ${component.choices.map((order) => packs(order, habit)).join("; or ")}`);
  }
  for (const { name, charge } of deliveries) lines.push(`  delivery (${name}) ${money(charge, currency)}`);
  if (cost !== undefined) lines.push(`  together ${money(cost, currency)}`);
  const left = components.filter(({ leftoverLitres }) => leftoverLitres >= 0.05);
  if (left.length > 0) {
    const more = result.leftoverWouldFillLitres ?? 0;
    const fills = more >= 0.5 ? `; together they fill ${volume(more, habit)} more` : "";
    lines.push(
      `  left over ${left.map((one) => `${one.name} ${volume(one.leftoverLitres, habit)}`).join(", ")}${fills}`,
    );
  }
  return lines;
}

function bought(
  { isOwn, order, looseVolumeLitres, cost, stockUsedLitres }: MixComponent,
  habit: UnitHabit,
  currency?: string,
): string {
  const need = volume(looseVolumeLitres, habit);
  if (isOwn) return `${need}, at hand`;
  const stock = stockUsedLitres > 0 ? `, ${volume(stockUsedLitres, habit)} at hand` : "";
  if (order.length === 0) return `${need}${stock}`;
  return `${need}${stock}: ${packs(order, habit)}${cost === undefined ? "" : `, ${money(cost, currency)}`}`;
}

/** `10 x 100 L + 2 x 25 L`; a load of loose material by its volume. */
function packs(order: readonly OrderedPack[], habit: UnitHabit): string {
  return order
    .map(({ pack, count, litres, isBulk }) =>
      isBulk ? `${volume(count * litres, habit)} in bulk` : `${count} x ${pack.replace(/ \(.*\)$/, "")}`,
    )
    .join(" + ");
}

/** A rate in a mix as growers of one habit say it. */
function rate(gramsPerCubicMetre: number, habit: UnitHabit): string {
  if (habit === "metric")
    return gramsPerCubicMetre < 1000
      ? `${shown(gramsPerCubicMetre)} g/m3`
      : `${shown(gramsPerCubicMetre / 1000)} kg/m3`;
  return `${shown((gramsPerCubicMetre / POUND_GRAMS) * CUBIC_YARD_CUBIC_METRES)} lb/cu yd`;
}
const POUND_GRAMS = 453.59237;
const CUBIC_YARD_CUBIC_METRES = 0.764554857984;

function additionLines({ additions }: MixResult, habit: UnitHabit): string[] {
  return additions.map(
    ({ name, massGrams, gramsPerCubicMetre }) =>
      `Mix in ${mass(massGrams, habit)} of ${name} (${rate(gramsPerCubicMetre, habit)})`,
  );
}

function fillLines({ fills, topUpLitres, mixedVolumeLitres }: MixResult, habit: UnitHabit): string[] {
  const lines = fills.map(({ written, label, count, volumeLitres, areaSquareMetres, plants }) => {
    // An outline that the grower did not name is a default: it is never silent.
    const outline = /\((\w+)\)$/.exec(label)?.[1];
    const shape = outline && !written.toLowerCase().includes(outline) ? ` (${outline})` : "";
    const plan = areaSquareMetres === undefined ? "" : ` on ${area(areaSquareMetres, habit)}`;
    const standing = plants === undefined ? "" : `, ${plants} plants`;
    return `Fills ${count} x ${written}${shape}: ${volume(volumeLitres, habit)}${plan}${standing}`;
  });
  if (topUpLitres > 0) {
    lines.push(
      `Mixed it makes ${volume(mixedVolumeLitres, habit)}: heap up ${volume(topUpLitres, habit)}, or keep that for topping up`,
    );
  }
  return lines;
}

function weightLines({ massKilograms, carLoads }: MixResult, habit: UnitHabit): string[] {
  const lines: string[] = [];
  const heavy = (kilograms: number): string => mass(kilograms * 1000, habit);
  if (massKilograms) {
    const { dry, delivered, wet, wetRange } = massKilograms;
    lines.push(
      `Weighs about ${heavy(delivered)} to carry (${heavy(dry)} dry), ${heavy(wet)} watered (${heavy(wetRange[0])} to ${heavy(wetRange[1])})`,
    );
  }
  if (carLoads) {
    const { atLeast, enough } = carLoads;
    const bound = atLeast < enough ? ` (${atLeast} at the very least)` : "";
    lines.push(`Car: ${enough} ${enough === 1 ? "trip" : "trips"}${bound}`);
  }
  return lines;
}

function rootLines({ airAndWater, firstSeason, coirSoak, fillVolumeLitres }: MixResult, habit: UnitHabit): string[] {
  const percent = ([low, high]: readonly [number, number]): string => `${shown(low, 2)} to ${shown(high, 2)} %`;
  const lines = [
    airAndWater.isKnown
      ? `Drained it holds ${percent(airAndWater.airPercent)} air and ${percent(airAndWater.waterPercent)} water (measured on ${airAndWater.like})`
      : `Air and water in it: not known (${airAndWater.reason})`,
  ];
  if (firstSeason) {
    const [low, high] = firstSeason.firstSeasonNitrogenGramsPerCubicMetre;
    lines.push(`Its compost frees about ${rate(low, habit)} to ${rate(high, habit)} of nitrogen in the first season`);
    const brought = `"N ${rate(low, habit)}"`;
    lines.push(
      `  to count it: --already ${brought} in a blend with --volume "${volume(fillVolumeLitres, habit)}", or mix: brings: ${brought} in a season file`,
    );
  }
  if (coirSoak) {
    const { calciumNitrateGrams, waterLitres } = coirSoak;
    lines.push(
      `If the coir is neither washed nor buffered: soak it in ${volume(waterLitres, habit)} of water with ${mass(calciumNitrateGrams, habit)} of calcium nitrate, drain and rinse`,
    );
  }
  return lines;
}
