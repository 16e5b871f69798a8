import * as z from "zod/mini";
import { throughDoor } from "../outcome/door.ts";
import { andThen, answer, at, gather, type Outcome, unusable } from "../outcome/outcome.ts";
import { ofDimension } from "../quantity/quantity.ts";
import { type OneProductInput, oneProductTexts, readOneProduct } from "../supply/read-one-product.ts";
import { readStock, type Stock } from "../supply/read-stock.ts";
import type { ReadingContext } from "../supply/reading-context.ts";
import type { DoseInput } from "./dose.ts";

const text = z.optional(z.string());

/** What a grower says, all as text. */
export const doseRequest = z.strictObject({ ...oneProductTexts, water: text, cans: text, stock: text, tank: text });
export type DoseRequest = z.infer<typeof doseRequest>;

/**
 * Turns a dose request's texts into the numbers a dose is worked out from, or says everything that is wrong with it.
 *
 * @param request Anything: an object of texts as {@link DoseRequest}.
 */
export function readDose(request: unknown, context: ReadingContext): Outcome<DoseInput> {
  return andThen(throughDoor(doseRequest, request), (texts) => {
    const parts = gather<{
      one: OneProductInput;
      water: number | undefined;
      stock: Stock | undefined;
      cans: number | undefined;
    }>({
      one: readOneProduct(texts, context, "litre", "a can"),
      water:
        texts.water === undefined
          ? answer(undefined)
          : at("water", ofDimension(context.quantity(texts.water), "volume", texts.water)),
      stock: readStock(texts, context.quantity),
      cans: texts.cans === undefined ? answer(undefined) : at("cans", readCount(texts.cans)),
    });
    return andThen(parts, ({ one, water, stock, cans }) => {
      // A tank of stock says itself how much feed it makes.
      if (cans !== undefined && water === undefined)
        return unusable({ ...WATER_MISSING, message: "How much one can holds is missing." });
      const waterLitres = water ?? (stock ? stock.tankLitres * stock.ratio : undefined);
      if (waterLitres === undefined) return unusable(WATER_MISSING);
      return answer({ ...one, waterLitres, ...(stock ? { stock } : {}), ...(cans === undefined ? {} : { cans }) });
    });
  });
}

const WATER_MISSING = {
  code: "option-missing",
  path: "water",
  message: "How much water the dose is for is missing.",
  expected: "a volume such as 9 L or 2 US gal",
  received: "nothing",
  hint: 'add --water "9 L", or --stock 1:100 --tank "5 L"',
};

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
