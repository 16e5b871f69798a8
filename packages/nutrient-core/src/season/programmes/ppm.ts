import { type ContentForm, elementPerForm, nutrientOf } from "../../element/nutrient.ts";
import type { Wanted } from "../../supply/target.ts";

/** Rates as a programme's source prints them, mg per litre of each form. */
export function ppm(rates: Readonly<Partial<Record<ContentForm, number>>>): Wanted[] {
  return (Object.entries(rates) as [ContentForm, number][]).map(([form, rate]) => ({
    nutrient: nutrientOf(form),
    rate: rate * elementPerForm(form),
    asked: { form, rate },
  }));
}
