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
 * @returns The line without its id; `product-unknown` for a product that is not on the shelf.
 * @example
 * const pots = { name: "pots", fill: "20 pots 20 L" };
 * const dates = { setOut: "2027-05-15", end: "2027-10-10" };
 * const document = { name: "roof", crop: "sweet pepper", ...dates, places: [pots], programme: "two-phase", products: ["20-10-20"], can: "10 L" };
 * const asked = readSeason(document, { shelf: [], quantity: readPlainQuantity });
 * const given = { date: "2027-05-30", cans: 2, amounts: [{ product: "20-10-20", massGrams: 30 }] };
 * fedOtherwise(asked.value, given)  // => { nutrientGrams: { N: 6 } }
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
