import { answer, gatherList, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Product } from "../product/product.ts";
import { plainText } from "../quantity/number.ts";
import { ofDimension, type QuantityReader } from "../quantity/quantity.ts";
import type { UseLimit } from "./blend-input.ts";

const LINE = /^(\S.*?)\s+(at most|at least)\s+(\S.*?)(\s+or none)?$/i;

/** A product and the words it was named by. */
export interface NamedProduct {
  readonly written: string;
  readonly product: Product;
}

/**
 * Reads how much of single products may be used.
 *
 * @param text `KNO3 at most 5 g, urea at least 1 g, Epsom salt at least 2 g or none`, parted by commas or semicolons;
 *   a volume is taken by the product's density.
 * @param products Those of the blend, with the words they were named by.
 * @example
 * readUses("KNO3 at most 5 g", [{ written: "KNO3", product: { id: "KNO3" } }], readPlainQuantity)  // => [{ product: "KNO3", mostGrams: 5 }]
 */
export function readUses(
  text: string,
  products: readonly NamedProduct[],
  quantity: QuantityReader,
): Outcome<readonly UseLimit[]> {
  const lines = plainText(text)
    .split(/[;\n]|,(?!\d)/)
    .map((line) => line.trim())
    .filter((line) => line !== "");
  if (lines.length === 0) return unusable(unclear(text));
  const read = gatherList(lines.map((line) => readUse(line, products, quantity)));
  if (!read.ok) return read;
  const merged = new Map<string, UseLimit>();
  for (const use of read.value) merged.set(use.product, { ...merged.get(use.product), ...use });
  const crossed = [...merged.values()].find(
    ({ leastGrams, leastIfUsedGrams, mostGrams }) =>
      mostGrams !== undefined && Math.max(leastGrams ?? 0, leastIfUsedGrams ?? 0) > mostGrams,
  );
  if (crossed) return unusable({ ...unclear(text), message: `The least of ${crossed.product} is above its most.` });
  return answer([...merged.values()], read.cautions);
}

function readUse(line: string, products: readonly NamedProduct[], quantity: QuantityReader): Outcome<UseLimit> {
  const match = LINE.exec(line);
  if (!match) return unusable(unclear(line));
  const [, name, side, amount, orNone] = match as unknown as [string, string, string, string, string | undefined];
  const named = products.find(
    ({ written, product }) => written === name || product.id === name || product.name === name,
  );
  if (!named) {
    return unusable({
      code: "use-product-unknown",
      path: "",
      message: `"${name}" is not one of the products of this blend.`,
      expected: products.map(({ written }) => written).join(", "),
      received: line,
      hint: "name the product as it stands in the list of products",
    });
  }
  const { id, densityKilogramsPerLitre: density } = named.product;
  const measured = quantity(amount);
  const mass =
    measured.ok && measured.value.dimension === "volume" && density !== undefined
      ? answer(measured.value.value * density * 1000, measured.cautions)
      : ofDimension(measured, "mass", amount);
  if (!mass.ok) return mass;
  const isMost = side.toLowerCase() === "at most";
  if (isMost && orNone) return unusable(unclear(line));
  const field = isMost ? "mostGrams" : orNone ? "leastIfUsedGrams" : "leastGrams";
  return answer({ product: id, [field]: mass.value }, mass.cautions);
}

function unclear(line: string) {
  return {
    code: "use-unreadable",
    path: "",
    message: `"${line}" does not say how much of a product may be used.`,
    expected: "a product, at most or at least, and an amount",
    received: line,
    hint: 'write for example "KNO3 at most 5 g", "urea at least 1 g" or "urea at least 1 g or none"',
  };
}
