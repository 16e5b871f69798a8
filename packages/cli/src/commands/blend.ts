import { type Answer, answer, type BlendInput, type BlendResult, blend, type Outcome, readBlend } from "nutrient-core";
import type { Context, Reply, TrugCommand } from "../command.ts";
import { EXIT } from "../exit-codes.ts";
import { blendLines } from "../render/blend.ts";

/** The options that the blend itself reads; the common ones are the shell's. */
const WORDS = [
  ...["ratio", "grade", "batch", "target", "water", "area", "volume", "already", "within", "basis", "limit", "use"],
  ...["aim", "prefer", "stock", "tank", "scale", "spoons", "syringe", "scoop", "labelRule"],
];

export const blendCommand: TrugCommand = {
  name: "blend",
  configure: (command) =>
    command
      .argument("<product...>", "grades, formulas, generic materials or shelf ids")
      .option("--ratio <ratio>", "N:P2O5:K2O that a batch should have: 3-1-2")
      .option("--grade <grade>", "or its grade in percent, made up with filler: 5-10-10")
      .option("--batch <mass>", 'how much of it: "1 kg"')
      .option("--target <rates>", 'or rates: "N 100 ppm, K 200 ppm"')
      .option("--water <volume>", 'for rates in a can: "9 L"')
      .option("--area <area>", 'for rates on a bed: "3 m2", "4 ft x 8 ft"')
      .option("--volume <volume>", 'for rates in a mix: "200 L", "2 cu ft"')
      .option("--already <rates>", 'already there: "Ca 60 ppm"')
      .option("--within <percent>", "how far off still counts as met (default: 0%)")
      .option("--limit <limits>", 'never over: "EC 2 mS/cm, NH4-N 20% of N, Cl 50 ppm"')
      .option("--use <amounts>", 'of single products: "KNO3 at most 5 g, urea at least 1 g or none"')
      .option("--aim <aim>", "where not all can be met: fair (default), or the largest miss least: largest")
      .option("--prefer <choice>", "among equals: nearest, cheapest (default with prices) or fewest products")
      .option("--stock <ratio>", "injector ratio: 1:100 is 1 part of stock in 100 parts of feed")
      .option("--tank <volume>", "volume of each stock that is made")
      .option("--scale <step>", 'weigh all of it in whole steps of the scale: "1 g"')
      .option("--spoons <set>", "level spoons for powders: metric or us")
      .option("--syringe <step>", 'for liquids: "0.5 mL"')
      .option("--scoop <volume>", 'whole level scoops for powders: "25 mL"')
      .option("--label-rule <rule>", "whose rule on shortfalls of labels the range takes: us (default) or eu")
      .option("--basis <basis>", "the labels' P and K are oxide (default) or element"),
  examples: [
    'trug blend 46-0-0 0-0-60 18-46-0 --ratio 3-1-2 --batch "1 kg"',
    'trug blend calcium-nitrate potassium-nitrate monopotassium-phosphate --target "N 90 ppm, P 40 ppm, K 180 ppm" --water "9 L"',
    'trug blend KNO3 KH2PO4 MgSO4.7H2O urea --target "N 100 ppm within 5%, P 40 ppm, K at least 150 ppm" --limit "EC 1.5 mS/cm" --water "10 L" --scale "1 g"',
    'trug blend calcium-nitrate potassium-nitrate magnesium-sulfate --target "N 150 ppm, Ca 100 ppm, K 180 ppm, Mg 30 ppm" --stock 1:100 --tank "20 L"',
    'trug blend 46-0-0 18-46-0 0-0-60 --target "N 120 kg/ha, P2O5 60 kg/ha, K2O 40 kg/ha" --area "1 ha"',
  ],
  run: async (products, options, context) => {
    const { batch, water, area, volume, tank, scale, syringe, scoop } = options;
    const quantity = await context.quantityReader(
      [batch, water, area, volume, tank, scale, syringe, scoop].filter(Boolean),
    );
    const shelf = await context.shelf();
    if (!shelf.ok) return shelf;
    const input = readBlend(
      { products: [...products], ...Object.fromEntries(WORDS.map((name) => [name, options[name]])) },
      { shelf: shelf.value.products, quantity },
    );
    if (!input.ok) return input;
    const reply = blendReply(
      input,
      blend({ ...input.value, explainedIn: context.habit }),
      context,
      shelf.value.currency,
    );
    return reply.ok ? reply.value : reply;
  },
};

/** A blend's outcome as the command's reply. */
export function blendReply(
  input: Answer<BlendInput>,
  outcome: Outcome<BlendResult>,
  context: Context,
  currency?: string,
): Outcome<Reply> {
  if (!outcome.ok) return outcome;
  const { products, ...asked } = input.value;
  return answer({
    inputs: { products: products.map(({ id, composition }) => ({ id, composition })), ...asked },
    result: outcome.value,
    cautions: [...outcome.cautions, ...input.cautions],
    working: [...input.working, ...outcome.working],
    lines: (style) => blendLines(input.value, outcome.value, style, currency),
    exitCode: context.strict && outcome.value.status === "closest" ? EXIT.notMet : EXIT.answer,
  });
}
