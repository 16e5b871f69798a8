import type { BlendInput, Limit, UseLimit } from "../blend-input.ts";
import type { BindingLimit } from "../engine/solution.ts";
import type { Reached } from "../reach.ts";
import { grams, inSentence, limitWords, percent } from "../words.ts";
import { largestMiss, tryBlend } from "./trial.ts";

/** How much more room a trial gives a limit. */
const ROOM = 0.1;
/** A gain smaller than this, as a share of what was asked, is not worth a sentence. */
const WORTH_SAYING = 0.001;

/**
 * The limits that hold a blend back, by the multipliers, and what a tenth more room would bring, by solving again.
 */
export function limitsThatBind(input: BlendInput, reached: Reached): string[] {
  return reached.solution.binding.flatMap((limit) => {
    const sentence = sentenceOf(limit, input, reached);
    return sentence ? [sentence] : [];
  });
}

function sentenceOf({ kind, index }: BindingLimit, input: BlendInput, reached: Reached): string | undefined {
  const product = input.products[index];
  const habit = input.explainedIn;
  if (kind === "ceiling") {
    const limit = input.limits?.[index];
    if (limit) {
      const limits = input.limits!.map((one, i) => (i === index ? widened(one) : one));
      return `The limit ${limitWords(limit, reached.extent.basis, input.explainedIn)} is reached; ${gain(reached, { ...input, limits }, "a tenth more room")}.`;
    }
    if (input.purpose.kind === "grade")
      return "The batch is full: these products are too weak for this grade, even without filler.";
    return undefined;
  }
  if (!product) return undefined;
  const name = inSentence(product.name);
  const use = input.uses?.find((one) => one.product === product.id);
  if (kind === "lower")
    return `At least ${grams(use?.leastGrams ?? 0, habit)} of ${name} has to be used; less would come closer.`;
  if (kind !== "upper") return undefined;
  const inStock = product.stockGrams ?? Number.POSITIVE_INFINITY;
  const allowed = use?.mostGrams ?? Number.POSITIVE_INFINITY;
  const most = Math.min(inStock, allowed);
  // Left out by the search for fewest products: no limit that anyone set.
  if (most === Number.POSITIVE_INFINITY) return undefined;
  if (!(most > 0)) return `There is no ${name} left.`;
  const more: BlendInput = {
    ...input,
    products: input.products.map((one, i) => (i === index ? { ...one, stockGrams: most * (1 + ROOM) } : one)),
    uses: (input.uses ?? []).map((one): UseLimit => (one === use ? { ...one, mostGrams: most * (1 + ROOM) } : one)),
  };
  const used =
    inStock <= allowed
      ? `All ${grams(most, habit)} of ${name} on the shelf is used`
      : `${name} is held to ${grams(most, habit)}`;
  return `${used.charAt(0).toUpperCase()}${used.slice(1)}; ${gain(reached, more, `${grams(most * ROOM, habit)} more`)}.`;
}

function widened(limit: Limit): Limit {
  if (limit.kind === "conductivity") return { ...limit, milliSiemensPerCm: limit.milliSiemensPerCm * (1 + ROOM) };
  if (limit.kind === "share") return { ...limit, share: limit.share * (1 + ROOM) };
  return { ...limit, rate: limit.rate * (1 + ROOM) };
}

function gain(reached: Reached, other: BlendInput, what: string): string {
  const tried = tryBlend(other);
  if (!tried) return "it cannot be widened on its own";
  if (tried.solution.status === "met") return `${what} would meet every target`;
  const before = largestMiss(reached);
  const after = largestMiss(tried);
  if (before - after < WORTH_SAYING) return `${what} would come a little closer`;
  return `${what} would bring the largest miss from ${percent(before)} to ${percent(after)}`;
}
