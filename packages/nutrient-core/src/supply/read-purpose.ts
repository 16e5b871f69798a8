import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { mayBeSpooned } from "../product/not-by-spoon.ts";
import type { Product } from "../product/product.ts";
import type { Quantity } from "../quantity/quantity.ts";
import type { Purpose } from "./one-product.ts";
import type { Target, Wanted } from "./target.ts";

/** Decides what an amount is for: exactly one of a target (of one nutrient) and a given amount. */
export function readPurpose(
  asked: Target | undefined,
  given: Quantity | undefined,
  product: Product,
): Outcome<Purpose> {
  if ((asked === undefined) === (given === undefined)) {
    return unusable({
      code: asked ? "options-conflict" : "option-missing",
      path: "target",
      message: asked
        ? "A target and a given amount cannot both be used."
        : "Neither a target nor a given amount was said.",
      expected: "either a target or a given amount",
      received: asked ? "both" : "neither",
      hint: 'use --target "N 150 ppm" to find the amount, or --given "1 tsp" to see what it delivers',
    });
  }
  if (given) return readGiven(given, product);
  const [wanted, ...more] = asked!.wanted as [Wanted, ...Wanted[]];
  if (more.length > 0) {
    return unusable({
      code: "target-too-many",
      path: "target",
      message: "One product can be measured to one nutrient; the others follow from its label.",
      expected: "one nutrient",
      received: asked!.wanted.map(({ asked: { form } }) => form).join(", "),
      hint: "keep the nutrient that matters most, or use blend with two or more products",
    });
  }
  return answer({ kind: "target", wanted });
}

function readGiven(given: Quantity, product: Product): Outcome<Purpose> {
  if (given.dimension === "mass") {
    if (!product.massUnknown) return answer({ kind: "given", massGrams: given.value });
    return unusable({
      code: "density-missing",
      path: "given",
      message: `The percentages of ${product.name} are by volume, so a weight of it says nothing without its density.`,
      expected: "a volume, or a density beside the weight",
      received: "a weight",
      hint: 'give the amount in millilitres, or add the density from the label: --density "1.2 kg/L"',
    });
  }
  if (given.dimension === "volume") {
    const density = product.densityKilogramsPerLitre;
    if (density === undefined) {
      const spooned = product.state === "solid" && mayBeSpooned(product);
      return unusable({
        code: "density-missing",
        path: "given",
        message: `What ${spooned ? "a spoonful" : "a millilitre"} of ${product.name} weighs is not known.`,
        expected: "a mass, or a density to turn the volume into one",
        received: "a volume",
        hint: `${spooned ? "weigh ten level spoons and give" : "take it from the label or the safety sheet for"} --density, or give the amount in grams`,
      });
    }
    const massGrams = given.value * density * 1000;
    if (product.massUnknown) return answer({ kind: "given", massGrams });
    return answer(
      { kind: "given", massGrams },
      [],
      [
        {
          label: `${product.name} given, by mass`,
          expression: `${given.value} L * ${density} kg/L`,
          value: massGrams,
          unit: "g",
          source: product.source,
        },
      ],
    );
  }
  return unusable({
    code: "dimension-mismatch",
    path: "given",
    message: "A given amount is a mass or a volume.",
    expected: "a mass such as 5 g, or a volume such as 1 tsp",
    received: `a ${given.dimension}`,
    hint: 'write for example --given "5 g" or --given "1 metric tsp"',
  });
}
