import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { addDelivered } from "../supply/one-product.ts";
import { type Amount, deliver } from "../supply/supply.ts";
import { times } from "./events.ts";
import type { FedEntry } from "./log.ts";
import type { SeasonInput } from "./season.ts";

/** A feed as it is put on record, before it has an id. */
export type FedFacts = Omit<FedEntry, "id">;

/**
 * A feed that was not given as planned, as it is put on record: its nutrients are worked out now, so that the line
 * stands on its own.
 *
 * @param given Cans, and grams of each product in all cans together.
 */
export function fedOtherwise(
  input: SeasonInput,
  given: Omit<FedFacts, "kind" | "nutrientGrams" | "canLitres"> & { readonly canLitres?: number },
): Outcome<FedFacts> {
  const amounts: Amount[] = [];
  for (const { product: id, massGrams } of given.amounts) {
    const product = input.shelf.find((one) => one.id === id);
    if (!product) {
      return unusable({
        code: "product-unknown",
        path: "amounts",
        message: `"${id}" is not on the shelf.`,
        expected: "a product of the shelf",
        received: id,
        hint: `the shelf holds ${input.shelf.map((one) => one.id).join(", ") || "nothing"}`,
      });
    }
    amounts.push({ product, massGrams });
  }
  const canLitres = given.canLitres ?? input.canLitres;
  const litres = given.cans * canLitres;
  const rates = addDelivered(deliver(amounts, { basis: "litre", amount: litres }), input.water);
  return answer({ ...given, kind: "fed", canLitres, nutrientGrams: times(rates, litres / 1000) });
}
