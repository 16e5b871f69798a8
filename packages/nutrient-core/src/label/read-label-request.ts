import * as z from "zod/mini";
import { throughDoor } from "../outcome/door.ts";
import { andThen, answer, at, gather, type Outcome } from "../outcome/outcome.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import type { Product } from "../product/product.ts";
import { type ProductReading, productFromLabel, readProduct } from "../product/read-product.ts";
import { fitsProduct, readProductOptions } from "../product/read-product-options.ts";
import { ofDimension } from "../quantity/quantity.ts";
import type { ReadingContext } from "../supply/reading-context.ts";
import type { LabelInput } from "./label-result.ts";

const text = z.optional(z.string());

/** What a grower says, all as text. */
const labelRequest = z.strictObject({ product: z.string(), mass: text, basis: text, by: text, density: text });
export type LabelRequest = z.infer<typeof labelRequest>;

/**
 * Turns a label request's texts into the product that is asked about, or says everything that is wrong with it.
 *
 * @param request Anything: an object of texts as {@link LabelRequest}.
 * @returns The product, and the mass to take apart where one is given; with the working of percent by volume.
 */
export function readLabelRequest(request: unknown, context: ReadingContext): Outcome<LabelInput> {
  const entered = throughDoor(labelRequest, request);
  if (!entered.ok) return entered;
  const texts = entered.value;
  const options = readProductOptions(texts, context.quantity);
  const parts = gather<{ product: Product; massGrams: number | undefined }>({
    product: options.ok
      ? andThen(at("product", readProduct(texts.product, { ...options.value, shelf: context.shelf })), (read) =>
          fitsProduct(texts, read, context.shelf),
        )
      : options,
    massGrams:
      texts.mass === undefined
        ? answer(undefined)
        : at("mass", ofDimension(context.quantity(texts.mass), "mass", texts.mass)),
  });
  if (!parts.ok) return parts;
  const { product, massGrams } = parts.value;
  const byVolume = options.ok ? volumeLines(texts.product, product, options.value) : [];
  return answer({ product, ...(massGrams === undefined ? {} : { massGrams }) }, parts.cautions, [
    ...byVolume,
    ...parts.working,
  ]);
}

/** Percent by volume is grams in 100 mL: over the density it is percent by mass. */
function volumeLines(written: string, product: Product, reading: ProductReading): WorkingLine[] {
  const { measure, basis, densityKilogramsPerLitre: density } = reading;
  if (measure !== "volume" || density === undefined || product.origin !== "grade") return [];
  const asPrinted = productFromLabel(written, basis === undefined ? {} : { basis });
  if (!asPrinted.ok) return [];
  return asPrinted.value.printed.flatMap(({ form, massFraction }, index) =>
    massFraction === 0
      ? []
      : [
          {
            label: `percent by mass from ${Number((100 * massFraction).toPrecision(6))} % by volume of ${form}`,
            expression: `${term(100 * massFraction)} / ${term(density)}`,
            value: 100 * product.printed[index]!.massFraction,
            unit: "",
            source: null,
          },
        ],
  );
}
