import { fractionOf, type Product } from "../../product/product.ts";
import type { BlendInput } from "../blend-input.ts";
import type { Row } from "../pose.ts";
import type { Reached } from "../reach.ts";
import { inSentence, listed, nutrientName, rateWords } from "../words.ts";

/**
 * Why one nutrient stays short: nothing holds it, or every product that does brings something of which there is
 * enough. The rows that push back are those with a positive pull: one more unit of them makes the blend worse.
 */
export function whyShort(index: number, input: BlendInput, { rows, solution }: Reached): string[] {
  const { nutrient } = rows[index]!;
  const name = nutrientName(nutrient);
  const carriers = input.products.filter((product) => fractionOf(product, nutrient) > 0);
  if (carriers.length === 0) return [`None of these products holds ${name}.`];
  const full = rows.filter((_, i) => solution.pulls[i]! > 0);
  const tied = full.find((row) => carriers.every((product) => fractionOf(product, row.nutrient) > 0));
  if (tied) {
    const other = nutrientName(tied.nutrient);
    return [`All the ${name} here comes with ${other}, so more ${name} would bring too much ${other}.`];
  }
  const companions = carriers.map((product) => ({
    product,
    row: full.find((row) => fractionOf(product, row.nutrient) > 0),
  }));
  const held = companions.filter((one): one is { product: Product; row: Row } => one.row !== undefined);
  if (held.length < carriers.length || held.length === 0) return [];
  const brings = held.map(({ product, row }) => `${inSentence(product.name)} brings ${nutrientName(row.nutrient)}`);
  return [`More ${name} is held back: ${listed(brings)}, and there is enough of ${held.length > 1 ? "each" : "that"}.`];
}

/** Why one nutrient is over although no other is short because of it: it was there before, or comes along. */
export function whyOver(index: number, input: BlendInput, { rows, delivered, solution, extent }: Reached): string[] {
  const row = rows[index]!;
  const there = input.purpose.kind === "target" ? (input.already[row.nutrient] ?? 0) : 0;
  const most = row.wanted * (1 + row.within);
  if (there > most) {
    const amount = `${rateWords(row.shownAs(there), extent.basis, input.explainedIn)} of ${row.name}`;
    return [`There is ${amount} already, more than was asked, and no product takes any away.`];
  }
  const carriers = input.products.filter(
    (product, j) => fractionOf(product, row.nutrient) > 0 && solution.masses[j]! > 0,
  );
  // What every carrier brings besides, and what is still wanted of that: the reason to put up with the excess.
  const reason = rows.find(
    (other, i) => solution.pulls[i]! < 0 && carriers.some((product) => fractionOf(product, other.nutrient) > 0),
  );
  if (!reason || carriers.length === 0 || delivered[index]! <= there) return [];
  const names = carriers
    .filter((product) => fractionOf(product, reason.nutrient) > 0)
    .map(({ name }) => inSentence(name));
  return [
    `The ${row.wanted > 0 ? "extra " : ""}${nutrientName(row.nutrient)} comes along with the ${nutrientName(reason.nutrient)} of ${listed(names)}.`,
  ];
}
