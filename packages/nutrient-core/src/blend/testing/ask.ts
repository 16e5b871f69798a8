import type { Answer } from "../../outcome/outcome.ts";
import type { Product } from "../../product/product.ts";
import { readPlainQuantity } from "../../quantity/quantity.ts";
import { blend } from "../blend.ts";
import type { BlendInput } from "../blend-input.ts";
import type { BlendResult } from "../blend-result.ts";
import { type BlendRequest, readBlend } from "../read-blend.ts";

export type Ask = Omit<BlendRequest, "products"> & { readonly products: string };

/** A request as a person writes it, the products in one text parted by commas. */
export function inputOf({ products, ...texts }: Ask, shelf: readonly Product[] = []): BlendInput {
  const read = readBlend(
    { products: products.split(",").map((name) => name.trim()), ...texts },
    { shelf, quantity: readPlainQuantity },
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

/** The blend that a request comes to. */
export function ask(request: Ask, shelf: readonly Product[] = []): Answer<BlendResult> {
  const outcome = blend(inputOf(request, shelf));
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome;
}

/** The code of the first problem that a request has. */
export function problemOf({ products, ...texts }: Ask, shelf: readonly Product[] = []): string | undefined {
  const read = readBlend(
    { products: products.split(",").map((name) => name.trim()), ...texts },
    { shelf, quantity: readPlainQuantity },
  );
  const outcome = read.ok ? blend(read.value) : read;
  return outcome.ok ? undefined : outcome.problems[0]!.code;
}

/** How far apart two numbers are, relative to the larger. */
export function gap(a: number, b: number): number {
  return a === b ? 0 : Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b));
}
