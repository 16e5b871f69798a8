import * as z from "zod/mini";
import { andThen, answer, at, gather, type Outcome } from "../outcome/outcome.ts";
import type { Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
import { fitsProduct, readProductOptions } from "../product/read-product-options.ts";
import type { Quantity } from "../quantity/quantity.ts";
import type { Basis } from "./basis.ts";
import type { Purpose } from "./one-product.ts";
import { readPurpose } from "./read-purpose.ts";
import { readAlready, readRateTarget } from "./read-rates.ts";
import type { ReadingContext } from "./reading-context.ts";
import type { Delivered } from "./supply.ts";
import type { Target } from "./target.ts";

const text = z.optional(z.string());

/** The texts about one product and what it is for; each room adds where it goes. */
export const oneProductTexts = {
  product: z.string(),
  target: text,
  given: text,
  already: text,
  basis: text,
  by: text,
  density: text,
};
const oneProductRequest = z.object(oneProductTexts);

/** A product, what its amount is for, and what is already there. */
export interface OneProductInput {
  readonly product: Product;
  readonly purpose: Purpose;
  readonly already: Delivered;
}

/**
 * Reads a product, its target or given amount, and what is already there.
 *
 * @param basis What the rates must be over; `place` says it in words: "a can", "a bed".
 */
export function readOneProduct(
  texts: z.infer<typeof oneProductRequest>,
  context: ReadingContext,
  basis: Basis,
  place: string,
): Outcome<OneProductInput> {
  const options = readProductOptions(texts, context.quantity);
  // Into water a liquid is measured, not weighed; on a bed everything is told by mass.
  const byMillilitre = basis === "litre";
  const parts = gather<{
    product: Product;
    asked: Target | undefined;
    given: Quantity | undefined;
    already: Delivered;
  }>({
    product: options.ok
      ? andThen(
          at("product", readProduct(texts.product, { ...options.value, shelf: context.shelf, byMillilitre })),
          (product) => fitsProduct(texts, product, context.shelf),
        )
      : options,
    asked: texts.target === undefined ? answer(undefined) : at("target", readRateTarget(texts.target, basis, place)),
    given: texts.given === undefined ? answer(undefined) : at("given", context.quantity(texts.given)),
    already: texts.already === undefined ? answer({}) : at("already", readAlready(texts.already, basis)),
  });
  if (!parts.ok) return parts;
  const { product, asked, given, already } = parts.value;
  const purpose = readPurpose(asked, given, product);
  if (!purpose.ok) return purpose;
  return answer(
    { product, purpose: purpose.value, already },
    [...parts.cautions, ...purpose.cautions],
    [...parts.working, ...purpose.working],
  );
}
