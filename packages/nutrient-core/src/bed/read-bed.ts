import * as z from "zod/mini";
import { throughDoor } from "../outcome/door.ts";
import { answer, at, gather, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
import { readProductOptions } from "../product/read-product-options.ts";
import type { Quantity } from "../quantity/quantity.ts";
import { type FedArea, readArea } from "../supply/read-area.ts";
import { readPurpose } from "../supply/read-purpose.ts";
import { readAlready, readRateTarget } from "../supply/read-rates.ts";
import type { ReadingContext } from "../supply/reading-context.ts";
import type { Target } from "../supply/target.ts";
import type { BedInput } from "./bed.ts";

const text = z.optional(z.string());

/** What a grower says, all as text. */
export const bedRequest = z.strictObject({
  product: z.string(),
  target: text,
  given: text,
  area: text,
  already: text,
  basis: text,
  by: text,
  density: text,
});
export type BedRequest = z.infer<typeof bedRequest>;

/**
 * Turns a bed request's texts into the numbers a dressing is worked out from, or says everything that is wrong with it.
 *
 * @param request Anything: an object of texts as {@link BedRequest}.
 */
export function readBed(request: unknown, context: ReadingContext): Outcome<BedInput> {
  const entered = throughDoor(bedRequest, request);
  if (!entered.ok) return entered;
  const texts = entered.value;
  const options = readProductOptions(texts, context.quantity);
  const product = options.ok
    ? at("product", readProduct(texts.product, { ...options.value, shelf: context.shelf }))
    : options;
  const parts = gather<{
    product: Product;
    asked: Target | undefined;
    given: Quantity | undefined;
    area: FedArea;
    already: BedInput["already"];
  }>({
    product,
    asked:
      texts.target === undefined
        ? answer(undefined)
        : at("target", readRateTarget(texts.target, "squareMetre", "a bed")),
    given: texts.given === undefined ? answer(undefined) : at("given", context.quantity(texts.given)),
    area: texts.area === undefined ? unusable(AREA_MISSING) : at("area", readArea(texts.area, context.quantity)),
    already: texts.already === undefined ? answer({}) : at("already", readAlready(texts.already, "squareMetre")),
  });
  if (!parts.ok) return parts;
  const { asked, given, area, already } = parts.value;
  const purpose = readPurpose(asked, given, parts.value.product);
  if (!purpose.ok) return purpose;
  return answer(
    { product: parts.value.product, purpose: purpose.value, area, already },
    [...parts.cautions, ...purpose.cautions],
    [...parts.working, ...purpose.working],
  );
}

const AREA_MISSING = {
  code: "option-missing",
  path: "area",
  message: "The area of the bed is missing.",
  expected: "an area such as 3 m2, 4 ft x 8 ft or 12 plants 40 cm x 50 cm",
  received: "nothing",
  hint: 'add --area "1.2 m x 2.4 m"',
};
