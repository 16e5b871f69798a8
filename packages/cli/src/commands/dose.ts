import { type DoseResult, dose, readDose } from "nutrient-core";
import type { TrugCommand } from "../command.ts";
import { doseLines } from "../render/dose.ts";

export const doseCommand: TrugCommand = {
  name: "dose",
  configure: (command) =>
    command
      .argument("<product>", "a grade, formula, generic material or shelf id")
      .option("--target <rate>", 'what is wanted: "N 150 ppm"')
      .option("--given <amount>", 'or what is given: "1 metric tsp", "10 g"')
      .option("--water <volume>", 'water in the can: "9 L", "2 US gal"')
      .option("--cans <count>", "how many such cans")
      .option("--stock <ratio>", "injector ratio: 1:100 is 1 part of stock in 100 parts of feed")
      .option("--tank <volume>", "volume of stock that is made")
      .option("--already <rates>", 'already in the water: "N 10 ppm, Ca 60 ppm"')
      .option("--basis <basis>", "the label's P and K are oxide (default) or element")
      .option("--by <measure>", "the label's percentages are by mass (default) or volume")
      .option("--density <density>", "of a liquid, or of a level spoonful: 0.95 kg/L"),
  examples: [
    'trug dose 20-10-20 --target "N 150 ppm" --water "9 L"',
    'trug dose potassium-nitrate --given "1 metric tsp" --water "2 US gal"',
    'trug dose 15-5-15 --target "N 200 ppm" --stock 1:100 --tank "5 US gal" --units us',
  ],
  run: async ([product], options, context) => {
    const { target, given, water, cans, stock, tank, already, basis, by, density } = options;
    const quantity = await context.quantityReader([given, water, tank].filter(Boolean));
    const shelf = await context.shelf();
    if (!shelf.ok) return shelf;
    const input = readDose(
      { product, target, given, water, cans, stock, tank, already, basis, by, density },
      { shelf: shelf.value.products, quantity },
    );
    if (!input.ok) return input;
    const outcome = dose(input.value);
    if (!outcome.ok) return outcome;
    const { purpose, waterLitres } = input.value;
    return {
      inputs: {
        product: input.value.product.id,
        // What a gram holds; of a label by volume alone, what a millilitre does.
        [input.value.product.massUnknown ? "gramsPerMillilitre" : "composition"]: input.value.product.composition,
        waterLitres,
        ...(purpose.kind === "target"
          ? { target: { nutrient: purpose.wanted.nutrient, milligramsPerLitre: purpose.wanted.rate } }
          : input.value.product.massUnknown
            ? // Of a label by volume alone: a millilitre stands for a gram.
              { givenMillilitres: purpose.massGrams }
            : { givenGrams: purpose.massGrams }),
        ...(input.value.cans === undefined ? {} : { cans: input.value.cans }),
        ...(input.value.stock ? { stock: input.value.stock } : {}),
        already: input.value.already,
      },
      result: outcome.value satisfies DoseResult,
      cautions: [...outcome.cautions, ...input.cautions],
      working: [...input.working, ...outcome.working],
      lines: (style) => doseLines(input.value, outcome.value, style),
    };
  },
};
