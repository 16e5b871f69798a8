import { label, readLabelRequest } from "nutrient-core";
import type { Options, Reply, TrugCommand } from "../command.ts";
import { labelLines } from "../render/label.ts";

export const labelCommand: TrugCommand = {
  name: "label",
  configure: (command) =>
    command
      .argument("[product]", "a grade, formula, generic material or shelf id; without it, the generic materials")
      .option("--mass <mass>", 'say what this much holds: "25 kg", "50 lb"')
      .option("--basis <basis>", "the label's P and K are oxide (default) or element")
      .option("--by <measure>", "the label's percentages are by mass (default) or volume")
      .option("--density <density>", "of a liquid: 1.2 kg/L"),
  examples: [
    'trug label "15.5-0-0 + 19 Ca" --mass "25 kg"',
    'trug label 5-10-15 --mass "80 lb" --units us',
    'trug label "5-1-3 + 1 MgO" --by volume --density "1.15 kg/L" --working',
    "trug label",
  ],
  run: async ([product], options, context) => {
    const { mass, basis, by, density } = options;
    if (product === undefined) return listOrProblem(options);
    const quantity = await context.quantityReader([mass]);
    const shelf = await context.shelf();
    if (!shelf.ok) return shelf;
    const input = readLabelRequest({ product, mass, basis, by, density }, { shelf: shelf.value.products, quantity });
    if (!input.ok) return input;
    const outcome = label(input.value);
    if (!outcome.ok) return outcome;
    return {
      inputs: {
        product: input.value.product.id,
        printed: input.value.product.printed.map(({ form, massFraction }) => ({ form, percent: 100 * massFraction })),
        ...(input.value.massGrams === undefined ? {} : { massGrams: input.value.massGrams }),
      },
      result: outcome.value,
      cautions: [...outcome.cautions, ...input.cautions],
      working: [...input.working, ...outcome.working],
      lines: ({ habit }) => labelLines(input.value.product, outcome.value, habit),
    };
  },
};

/** Without a product the generic materials are listed; how to read a label means nothing then. */
async function listOrProblem(options: Options): Promise<Reply | { problems: readonly [ReturnType<typeof missing>] }> {
  const needless = (["mass", "basis", "by", "density"] as const).find((name) => options[name] !== undefined);
  if (needless) return { problems: [missing(needless)] };
  return (await import("./label-list.ts")).materialList();
}

function missing(option: string) {
  return {
    code: "field-missing",
    path: "product",
    message: `--${option} says how to take a product apart, but no product is named.`,
    expected: "a grade (5-10-10), a formula (KNO3), a generic material or an id from the shelf file",
    received: "nothing",
    hint: 'name the product, such as trug label 5-10-10 --mass "25 kg"; "trug label" alone lists the generic materials',
  };
}
