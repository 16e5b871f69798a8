import * as z from "zod/mini";
import { throughDoor } from "../outcome/door.ts";
import { andThen, answer, at, gather, type Outcome, unusable } from "../outcome/outcome.ts";
import { type FedArea, readArea } from "../supply/read-area.ts";
import { type OneProductInput, oneProductTexts, readOneProduct } from "../supply/read-one-product.ts";
import type { ReadingContext } from "../supply/reading-context.ts";
import type { BedInput } from "./bed.ts";

/** What a grower says, all as text. */
export const bedRequest = z.strictObject({ ...oneProductTexts, area: z.optional(z.string()) });
export type BedRequest = z.infer<typeof bedRequest>;

/**
 * Turns a bed request's texts into the numbers a dressing is worked out from, or says everything that is wrong with it.
 *
 * @param request Anything: an object of texts as {@link BedRequest}.
 */
export function readBed(request: unknown, context: ReadingContext): Outcome<BedInput> {
  return andThen(throughDoor(bedRequest, request), (texts) => {
    const parts = gather<{ one: OneProductInput; area: FedArea }>({
      one: readOneProduct(texts, context, "squareMetre", "a bed"),
      area: texts.area === undefined ? unusable(AREA_MISSING) : at("area", readArea(texts.area, context.quantity)),
    });
    return andThen(parts, ({ one, area }) => answer({ ...one, area }));
  });
}

const AREA_MISSING = {
  code: "option-missing",
  path: "area",
  message: "The area of the bed is missing.",
  expected: "an area such as 3 m2, 4 ft x 8 ft or 12 plants 40 cm x 50 cm",
  received: "nothing",
  hint: 'add --area "1.2 m x 2.4 m"',
};
