import * as z from "zod/mini";
import { throughDoor } from "../outcome/door.ts";
import { answer, at, gather, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
import { readProductOptions } from "../product/read-product-options.ts";
import { ofDimension, type Quantity, type QuantityReader } from "../quantity/quantity.ts";
import { readPurpose } from "../supply/read-purpose.ts";
import { readAlready, readRateTarget } from "../supply/read-rates.ts";
import type { ReadingContext } from "../supply/reading-context.ts";
import type { Target } from "../supply/target.ts";
import type { DoseInput, Stock } from "./dose.ts";

const text = z.optional(z.string());

/** What a grower says, all as text. */
export const doseRequest = z.strictObject({
  product: z.string(),
  target: text,
  given: text,
  water: text,
  stock: text,
  tank: text,
  cans: text,
  already: text,
  basis: text,
  by: text,
  density: text,
});
export type DoseRequest = z.infer<typeof doseRequest>;

/**
 * Turns a dose request's texts into the numbers a dose is worked out from, or says everything that is wrong with it.
 *
 * @param request Anything: an object of texts as {@link DoseRequest}.
 */
export function readDose(request: unknown, context: ReadingContext): Outcome<DoseInput> {
  const entered = throughDoor(doseRequest, request);
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
    water: number | undefined;
    stock: Stock | undefined;
    cans: number | undefined;
    already: DoseInput["already"];
  }>({
    product,
    asked:
      texts.target === undefined ? answer(undefined) : at("target", readRateTarget(texts.target, "litre", "a can")),
    given: texts.given === undefined ? answer(undefined) : at("given", context.quantity(texts.given)),
    water:
      texts.water === undefined
        ? answer(undefined)
        : at("water", ofDimension(context.quantity(texts.water), "volume", texts.water)),
    stock: readStock(texts, context.quantity),
    cans: texts.cans === undefined ? answer(undefined) : at("cans", readCount(texts.cans)),
    already: texts.already === undefined ? answer({}) : at("already", readAlready(texts.already, "litre")),
  });
  if (!parts.ok) return parts;
  const { asked, given, water, stock, cans, already } = parts.value;
  const waterLitres = water ?? (stock ? stock.tankLitres * stock.ratio : undefined);
  if (waterLitres === undefined) {
    return unusable({
      code: "option-missing",
      path: "water",
      message: "How much water the dose is for is missing.",
      expected: "a volume such as 9 L or 2 US gal",
      received: "nothing",
      hint: 'add --water "9 L", or --stock 1:100 --tank "5 L"',
    });
  }
  const purpose = readPurpose(asked, given, parts.value.product);
  if (!purpose.ok) return purpose;
  const input: DoseInput = {
    product: parts.value.product,
    purpose: purpose.value,
    waterLitres,
    already,
    ...(stock ? { stock } : {}),
    ...(cans === undefined ? {} : { cans }),
  };
  return answer(input, [...parts.cautions, ...purpose.cautions], [...parts.working, ...purpose.working]);
}

function readStock(texts: DoseRequest, quantity: QuantityReader): Outcome<Stock | undefined> {
  if (texts.stock === undefined && texts.tank === undefined) return answer(undefined);
  if (texts.stock === undefined || texts.tank === undefined) {
    const missing = texts.stock === undefined ? "stock" : "tank";
    return unusable({
      code: "option-missing",
      path: missing,
      message: "A stock solution needs both its ratio and the volume of the tank.",
      expected: missing === "stock" ? "an injector ratio such as 1:100" : "a volume such as 5 L",
      received: "nothing",
      hint: missing === "stock" ? "add --stock 1:100" : 'add --tank "5 L"',
    });
  }
  return gather<{ ratio: number; tankLitres: number }>({
    ratio: at("stock", readInjectorRatio(texts.stock)),
    tankLitres: at("tank", ofDimension(quantity(texts.tank), "volume", texts.tank)),
  });
}

function readCount(written: string): Outcome<number> {
  const count = Number(written.trim());
  if (/^\d+$/.test(written.trim()) && count >= 1 && count <= 10_000) return answer(count);
  return unusable({
    code: "count-unreadable",
    path: "",
    message: `"${written}" is not a number of cans.`,
    expected: "a whole number of at least 1",
    received: written,
    hint: "write for example --cans 3",
  });
}

/**
 * Reads an injector ratio: `1:100` is one part of stock in one hundred parts of finished feed.
 *
 * @example
 * readInjectorRatio("1:100")  // => 100
 */
export function readInjectorRatio(written: string): Outcome<number> {
  const match = /^\s*1\s*[:/]\s*(\d+(?:\.\d+)?)\s*$/.exec(written);
  const ratio = Number(match?.[1]);
  if (!match || !(ratio >= 1 && ratio <= 5000)) {
    return unusable({
      code: "injector-ratio-unreadable",
      path: "",
      message: `"${written}" is not an injector ratio.`,
      expected: "1:R with R from 1 to 5000, such as 1:100",
      received: written,
      hint: "write 1:100 for one part of stock in one hundred parts of finished feed",
    });
  }
  return answer(ratio);
}
