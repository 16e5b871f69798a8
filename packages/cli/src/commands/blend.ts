import { type Answer, answer, type BlendInput, type BlendResult, blend, type Outcome, readBlend } from "nutrient-core";
import type { Context, Reply, TrugCommand } from "../command.ts";
import { EXIT } from "../exit-codes.ts";
import { blendLines } from "../render/blend.ts";

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
      .option("--basis <basis>", "the labels' P and K are oxide (default) or element"),
  examples: [
    'trug blend 46-0-0 0-0-60 18-46-0 --ratio 3-1-2 --batch "1 kg"',
    'trug blend calcium-nitrate potassium-nitrate monopotassium-phosphate --target "N 90 ppm, P 40 ppm, K 180 ppm" --water "9 L"',
    'trug blend 46-0-0 18-46-0 0-0-60 --target "N 120 kg/ha, P2O5 60 kg/ha, K2O 40 kg/ha" --area "1 ha"',
  ],
  run: async (products, options, context) => {
    const { ratio, grade, batch, target, water, area, volume, already, within, basis } = options;
    const quantity = await context.quantityReader([batch, water, area, volume].filter(Boolean));
    const shelf = await context.shelf();
    if (!shelf.ok) return shelf;
    const input = readBlend(
      { products: [...products], ratio, grade, batch, target, water, area, volume, already, within, basis },
      { shelf: shelf.value.products, quantity },
    );
    if (!input.ok) return input;
    const reply = blendReply(input, blend(input.value), context, shelf.value.currency);
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
  const { products, purpose, already, within } = input.value;
  return answer({
    inputs: {
      products: products.map(({ id, composition }) => ({ id, composition })),
      purpose,
      already,
      within,
    },
    result: outcome.value,
    cautions: [...outcome.cautions, ...input.cautions],
    working: [...input.working, ...outcome.working],
    lines: (style) => blendLines(input.value, outcome.value, style, currency),
    exitCode: context.strict && outcome.value.status === "closest" ? EXIT.notMet : EXIT.answer,
  });
}
