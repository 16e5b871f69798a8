import { bed, blend, type Outcome, readBed, readBlend } from "nutrient-core";
import type { Context, Options, Reply, TrugCommand } from "../command.ts";
import { bedLines } from "../render/bed.ts";
import { blendReply } from "./blend.ts";

export const bedCommand: TrugCommand = {
  name: "bed",
  configure: (command) =>
    command
      .argument("<product...>", "grades, formulas, generic materials or shelf ids")
      .option("--target <rates>", 'what is wanted: "N 5 g/m2", "P2O5 1 lb/1000 sqft"')
      .option("--given <amount>", 'or what is given, of one product: "500 g"')
      .option(
        "--area <area>",
        'the bed: "3 m2", "4 ft x 8 ft", "2 beds 1.2 m x 2.4 m", "circle 60 cm", "row 10 m x 30 cm", "12 plants 40 cm x 50 cm"',
      )
      .option("--already <rates>", 'already in the bed: "N 2 g/m2"')
      .option("--basis <basis>", "the labels' P and K are oxide (default) or element")
      .option("--by <measure>", "the label's percentages are by mass (default) or volume")
      .option("--density <density>", "of a liquid, or of a level spoonful: 0.95 kg/L"),
  examples: [
    'trug bed 5-10-10 --target "N 5 g/m2" --area "1.2 m x 2.4 m"',
    'trug bed 21-0-0 --target "N 3 lb/1000 sqft" --area "5000 sq ft" --units us',
    'trug bed blood-meal bone-meal-steamed --target "N 8 g/m2, P2O5 6 g/m2" --area "12 plants 40 cm x 50 cm"',
  ],
  run: async (products, options, context) =>
    products.length === 1 ? one(products[0]!, options, context) : several(products, options, context),
};

async function one(product: string, options: Options, context: Context): ReturnType<TrugCommand["run"]> {
  const { target, given, area, already, basis, by, density } = options;
  const quantity = await context.quantityReader([given, area].filter(Boolean));
  const shelf = await context.shelf();
  if (!shelf.ok) return shelf;
  const input = readBed(
    { product, target, given, area, already, basis, by, density },
    { shelf: shelf.value.products, quantity },
  );
  if (!input.ok) return input;
  const outcome = bed(input.value);
  if (!outcome.ok) return outcome;
  const { purpose } = input.value;
  return {
    inputs: {
      products: [input.value.product.id],
      composition: input.value.product.composition,
      areaSquareMetres: input.value.area.squareMetres,
      ...(purpose.kind === "target"
        ? { target: { nutrient: purpose.wanted.nutrient, gramsPerSquareMetre: purpose.wanted.rate } }
        : { givenGrams: purpose.massGrams }),
      already: input.value.already,
    },
    result: outcome.value,
    cautions: [...outcome.cautions, ...input.cautions],
    working: [...input.working, ...outcome.working],
    lines: (style) => bedLines(input.value, outcome.value, style, shelf.value.currency),
  };
}

/** Several products on a bed are a blend whose basis is the area. */
async function several(
  products: readonly string[],
  options: Options,
  context: Context,
): ReturnType<TrugCommand["run"]> {
  const { target, area, already, basis, given } = options;
  if (given !== undefined) return { problems: [GIVEN_OF_SEVERAL] };
  const ofOne = (["by", "density"] as const).find((name) => options[name] !== undefined);
  if (ofOne) return { problems: [ofOneProduct(ofOne, String(options[ofOne]))] };
  const quantity = await context.quantityReader([area].filter(Boolean));
  const shelf = await context.shelf();
  if (!shelf.ok) return shelf;
  const input = readBlend(
    { products: [...products], target, area, already, basis },
    { shelf: shelf.value.products, quantity },
  );
  if (!input.ok) return input;
  const outcome: Outcome<Reply> = blendReply(
    input,
    blend({ ...input.value, explainedIn: context.habit }),
    context,
    shelf.value.currency,
  );
  if (!outcome.ok) return outcome;
  const { extent } = input.value.purpose as { extent: { amount: number } };
  return { ...outcome.value, result: { ...outcome.value.result, areaSquareMetres: extent.amount } };
}

function ofOneProduct(path: "by" | "density", received: string) {
  const what = path === "by" ? "Percent by volume" : "A density";
  return {
    code: "options-conflict",
    path,
    message: `${what} belongs to one product, and several are named.`,
    expected: `one product with --${path}, or several without it`,
    received,
    hint: 'give the liquid an entry in the shelf file: label: 5-1-3, by: volume, density: "1.15 kg/L"',
  };
}

const GIVEN_OF_SEVERAL = {
  code: "options-conflict",
  path: "given",
  message: "A given amount belongs to one product.",
  expected: "one product with --given, or several with --target",
  received: "several products with --given",
  hint: "ask for each product by itself",
};
