import { type ContentForm, elementPerForm, type Nutrient, nutrientOf } from "../element/nutrient.ts";
import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { type Extent, unitExtent } from "../supply/basis.ts";
import type { Triple } from "../supply/ratio.ts";
import { supplyMatrix } from "../supply/supply.ts";
import type { BlendInput } from "./blend.ts";
import type { BlendProblem, NutrientTarget } from "./engine/problem.ts";

/** One wanted nutrient, as a row of the problem. */
export interface Row {
  readonly nutrient: Nutrient;
  /** As the grower named it: K2O. */
  readonly name: ContentForm;
  /** In the row's own unit: the element, per unit of the basis. */
  readonly wanted: number;
  /** Mass of the named form per mass of element. */
  readonly perElement: number;
  /** A rate of the element in the form and unit that people asked in. */
  readonly shownAs: (rate: number) => number;
}

/** A blend as pure numbers, with what each row means. */
export interface PosedBlend {
  readonly problem: BlendProblem;
  readonly rows: readonly Row[];
  readonly extent: Extent;
}

const TRIPLE_FORMS = ["N", "P2O5", "K2O"] as const;

/** Poses the blend: a row per wanted nutrient, a column per product, one gram as the unit of every amount. */
export function poseBlend(input: BlendInput): Outcome<PosedBlend> {
  const { products, purpose, already, within } = input;
  const extent = purpose.kind === "target" ? purpose.extent : unitExtent;
  const rows =
    purpose.kind === "target"
      ? targetRows(input)
      : tripleRows(purpose.kind === "ratio" ? purpose.ratio : purpose.grade, input);
  if (rows.every(({ wanted }) => !(wanted > 0))) {
    return unusable({
      code: "not-positive",
      path: purpose.kind === "target" ? "target" : purpose.kind,
      message: "Nothing is asked for.",
      expected: "at least one nutrient with more than zero",
      received: rows.map(({ name, wanted }) => `${name} ${wanted}`).join(", "),
      hint: "write what is wanted, such as 3-1-2 or N 150 ppm",
    });
  }
  const targets: NutrientTarget[] = rows.map(({ wanted }) => ({
    wanted,
    bandBelow: wanted * within,
    bandAbove: wanted * within,
  }));
  const prices = products.map(({ pricePerGram }) => pricePerGram);
  const priced = prices.every((price) => price !== undefined);
  const problem: BlendProblem = {
    supply: supplyMatrix(
      products,
      rows.map(({ nutrient }) => nutrient),
      extent,
    ),
    targets,
    offsets: purpose.kind === "target" ? rows.map(({ nutrient }) => already[nutrient] ?? 0) : rows.map(() => 0),
    ...(purpose.kind === "ratio"
      ? {}
      : { upper: products.map(({ stockGrams }) => stockGrams ?? Number.POSITIVE_INFINITY) }),
    // A batch cannot hold more than itself; what is missing to it is filler.
    ...(purpose.kind === "grade"
      ? { ceilings: [{ coefficients: products.map(() => 1), limit: purpose.batchGrams }] }
      : {}),
    ...(priced ? { prices: prices as number[], aim: { miss: "squares", next: "cost" } as const } : {}),
  };
  return answer({ problem, rows, extent });
}

function targetRows({ purpose }: BlendInput): Row[] {
  if (purpose.kind !== "target") return [];
  return purpose.wanted.map(({ nutrient, rate, asked: { form } }) => {
    const perElement = 1 / elementPerForm(form);
    return { nutrient, name: form, wanted: rate, perElement, shownAs: (amount) => amount * perElement };
  });
}

function tripleRows(triple: Triple, { purpose }: BlendInput): Row[] {
  // A grade is percent of the batch; a ratio has no scale, so that of one hundred grams does.
  const batch = purpose.kind === "grade" ? purpose.batchGrams : 100;
  return TRIPLE_FORMS.map((name, index) => {
    const factor = elementPerForm(name);
    return {
      nutrient: nutrientOf(name),
      name,
      wanted: (triple[index]! / 100) * batch * factor,
      perElement: 1 / factor,
      shownAs: (amount) => ((amount / factor) * 100) / batch,
    };
  });
}
