import type { Product } from "../product/product.ts";
import type { QuantityReader } from "../quantity/quantity.ts";

/** What a request is read with: the grower's shelf, and a reader for quantities. */
export interface ReadingContext {
  readonly shelf: readonly Product[];
  readonly quantity: QuantityReader;
}
