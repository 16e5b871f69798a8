import * as z from "zod/mini";
import { throughDoor } from "../outcome/door.ts";
import { andThen, answer, at, gather, gatherList, type Outcome, unusable } from "../outcome/outcome.ts";
import type { LabelRule } from "../product/label-tolerance.ts";
import type { Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
import { readProductOptions } from "../product/read-product-options.ts";
import { readAlready } from "../supply/read-rates.ts";
import { readStock, type Stock } from "../supply/read-stock.ts";
import type { ReadingContext } from "../supply/reading-context.ts";
import type { Delivered } from "../supply/supply.ts";
import type { Measures } from "../supply/weigh-measures.ts";
import { readMeasures } from "../supply/weigh-read.ts";
import type { BlendInput, BlendPurpose, Limit, UseLimit } from "./blend-input.ts";
import type { BlendAim } from "./engine/problem.ts";
import { readAim, readLabelRule, readShare } from "./read-choices.ts";
import { readLimits } from "./read-limits.ts";
import { readBlendPurpose } from "./read-purpose.ts";
import { type NamedProduct, readUses } from "./read-uses.ts";

const text = z.optional(z.string());

/** What a grower says, all as text. */
export const blendRequest = z.strictObject({
  products: z.array(z.string()),
  ratio: text,
  grade: text,
  batch: text,
  target: text,
  water: text,
  area: text,
  volume: text,
  already: text,
  within: text,
  basis: text,
  limit: text,
  use: text,
  aim: text,
  prefer: text,
  stock: text,
  tank: text,
  scale: text,
  spoons: text,
  syringe: text,
  scoop: text,
  labelRule: text,
});
export type BlendRequest = z.infer<typeof blendRequest>;

/** The most products a blend takes. */
export const MOST_PRODUCTS = 30;

/**
 * Turns a blend request's texts into the numbers a blend is worked out from, or says everything that is wrong with it.
 *
 * @param request Anything: an object of texts as {@link BlendRequest}.
 */
export function readBlend(request: unknown, context: ReadingContext): Outcome<BlendInput> {
  return andThen(throughDoor(blendRequest, request), (texts) => {
    const stock = readStock(texts, context.quantity);
    const products = readProducts(texts, context);
    const purpose = readBlendPurpose(texts, context, stock.ok ? stock.value : undefined);
    const basis = purpose.ok && purpose.value.kind === "target" ? purpose.value.extent.basis : undefined;
    const parts = gather<Parts>({
      products,
      purpose,
      stock: stock.ok && stock.value && purpose.ok && basis !== "litre" ? unusable(STOCK_WITHOUT_WATER) : stock,
      already:
        texts.already === undefined || basis === undefined
          ? answer({})
          : at("already", readAlready(texts.already, basis)),
      within: texts.within === undefined ? answer(0) : at("within", readShare(texts.within)),
      limits:
        texts.limit === undefined || !purpose.ok ? answer(undefined) : at("limit", readLimits(texts.limit, basis)),
      uses:
        texts.use === undefined || !products.ok
          ? answer(undefined)
          : at("use", readUses(texts.use, named(texts, products.value), context.quantity)),
      aim: products.ok ? readAim(texts, products.value) : answer(undefined),
      measures: readMeasures(texts, context.quantity),
      labelRule: readLabelRule(texts.labelRule),
    });
    if (!parts.ok) return parts;
    const given = Object.entries(parts.value).filter(([, value]) => value !== undefined);
    return answer(Object.fromEntries(given) as unknown as BlendInput, parts.cautions, parts.working);
  });
}

interface Parts extends Record<string, unknown> {
  readonly products: readonly Product[];
  readonly purpose: BlendPurpose;
  readonly stock: Stock | undefined;
  readonly already: Delivered;
  readonly within: number;
  readonly limits: readonly Limit[] | undefined;
  readonly uses: readonly UseLimit[] | undefined;
  readonly aim: BlendAim | undefined;
  readonly measures: Measures | undefined;
  readonly labelRule: LabelRule | undefined;
}

const STOCK_WITHOUT_WATER = {
  code: "options-conflict",
  path: "stock",
  message: "A stock solution is for a target in water.",
  expected: "a target in ppm, or no stock",
  received: "a stock for something else",
  hint: "leave out --stock and --tank, or write the target in ppm",
};

function named({ products }: BlendRequest, read: readonly Product[]): NamedProduct[] {
  return read.map((product, index) => ({ written: products[index]!, product }));
}

function readProducts(texts: BlendRequest, context: ReadingContext): Outcome<readonly Product[]> {
  const options = readProductOptions(texts, context.quantity);
  if (!options.ok) return options;
  if (texts.products.length === 0 || texts.products.length > MOST_PRODUCTS) {
    return unusable({
      code: "products-count",
      path: "products",
      message: texts.products.length === 0 ? "There is nothing to blend." : "There are too many products to blend.",
      expected: `one to ${MOST_PRODUCTS} products`,
      received: String(texts.products.length),
      hint: "name the bags to blend, such as 46-0-0 0-0-60",
    });
  }
  const twice = texts.products.find((name, index) => texts.products.indexOf(name) < index);
  if (twice !== undefined) {
    return unusable({
      code: "product-twice",
      path: "products",
      message: `"${twice}" is named twice.`,
      expected: "each product once",
      received: texts.products.join(", "),
      hint: "leave one of the two out",
    });
  }
  return gatherList(
    texts.products.map((name, index) =>
      at(`products[${index}]`, readProduct(name, { ...options.value, shelf: context.shelf })),
    ),
  );
}
