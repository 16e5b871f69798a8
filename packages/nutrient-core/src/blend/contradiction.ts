import type { Problem } from "../outcome/problem.ts";
import type { BlendInput } from "./blend-input.ts";
import { limitWords } from "./words.ts";

/** The problem of limits that leave no blend at all. */
export function contradiction(input: BlendInput): Problem {
  const basis = input.purpose.kind === "target" ? input.purpose.extent.basis : "squareMetre";
  const said = [
    ...(input.uses ?? []).map(({ product }) => `the amount of ${product}`),
    ...(input.limits ?? []).map((limit) => limitWords(limit, basis)),
    ...input.products.flatMap(({ id, stockGrams }) => (stockGrams === undefined ? [] : [`the stock of ${id}`])),
  ];
  return {
    code: "limits-contradict",
    path: input.uses ? "use" : input.limits ? "limit" : "products",
    message: "The limits and the least and most amounts cannot all be kept at once.",
    expected: "limits that leave room for a blend",
    received: said.join(", ") || input.products.map(({ id }) => id).join(", "),
    hint: "raise a limit or a largest amount, or lower a smallest one",
  };
}

/** Whether more of a product has to be used than there is of it. */
export function asksForMoreThanThereIs({ products, uses = [] }: BlendInput): boolean {
  return uses.some(({ product, leastGrams = 0, mostGrams = Number.POSITIVE_INFINITY }) => {
    const inStock = products.find(({ id }) => id === product)?.stockGrams ?? Number.POSITIVE_INFINITY;
    return leastGrams > Math.min(inStock, mostGrams);
  });
}
