import { type LimeInput, lime, readLime } from "nutrient-core";
import type { TrugCommand } from "../command.ts";
import { limeLines } from "../render/lime.ts";

export const limeCommand: TrugCommand = {
  name: "lime",
  configure: (command) =>
    command
      .argument("<material>", "agricultural-lime, dolomitic-lime ... or sulfur; also a formula or a shelf id")
      .option("--area <area>", 'the bed: "3 m2", "4 ft x 8 ft", "2 beds 1.2 m x 2.4 m", "circle 60 cm"')
      .option("--from <ph>", "the pH that the soil has, measured in water")
      .option("--to <ph>", "the pH that is wanted")
      .option("--texture <texture>", "sand, sandy-loam, loam, clay-loam or clay")
      .option("--method <method>", "or the soil test's: sikora, mehlich-formula or mehlich-table")
      .option("--buffer-ph <ph>", "its buffer's pH (sikora, mehlich-formula)")
      .option("--acidity <figure>", "its acidity: meq/100 g (mehlich-table), meq/100 cm3 (mehlich-formula)")
      .option("--depth <depth>", "how deep it is mixed in (default: that of the source, 15 cm or 6 in)")
      .option("--cce <percent>", "the lime's calcium carbonate equivalent, from the bag: 90%")
      .option("--fineness <fineness>", 'how much of the lime works: "94%", or "through 60 mesh 90, 20-60 mesh 6"'),
  examples: [
    'trug lime calcitic-lime --area "4 ft x 8 ft" --from 5.6 --to 6.5 --texture loam --units us',
    'trug lime dolomitic-lime --area "1.2 m x 2.4 m" --from 5.5 --to 6.4 --method sikora --buffer-ph 6.2 --cce 95%',
    'trug lime sulfur --area "3 m2" --from 7.2 --to 6.5 --texture sandy-loam',
  ],
  run: async ([material], options, context) => {
    const { area, from, to, texture, method, bufferPh, acidity, depth, cce, fineness } = options;
    const quantity = await context.quantityReader([area, depth].filter(Boolean));
    const shelf = await context.shelf();
    if (!shelf.ok) return shelf;
    const input = readLime(
      { material, area, from, to, texture, method, bufferPh, acidity, depth, cce, fineness },
      { shelf: shelf.value.products, quantity },
    );
    if (!input.ok) return input;
    const outcome = lime(input.value);
    if (!outcome.ok) return outcome;
    return {
      inputs: understood(input.value),
      result: outcome.value,
      cautions: [...outcome.cautions, ...input.cautions],
      working: [...input.working, ...outcome.working],
      lines: (style) => limeLines(input.value, outcome.value, style, shelf.value.currency),
    };
  },
};

function understood({ product, amendment, area, fromPh, toPh, soil, depthMetres }: LimeInput): object {
  return {
    material: product.id,
    composition: product.composition,
    areaSquareMetres: area.squareMetres,
    fromPh,
    toPh,
    ...(soil.kind === "texture" ? { texture: soil.texture } : { test: soil.test }),
    ...(depthMetres === undefined ? {} : { depthMetres }),
    ...(amendment.kind === "lime" && amendment.equivalentFrom === "label"
      ? { calciumCarbonateEquivalent: amendment.equivalent }
      : {}),
    ...(amendment.kind === "lime" && amendment.fineness ? { fineness: amendment.fineness.value } : {}),
  };
}
