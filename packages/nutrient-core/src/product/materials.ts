import type { Product } from "./product.ts";

/** The generic materials, without brands. */
export const MATERIALS: readonly Product[] = [];

/** The generic material of this id, if there is one. */
export function materialById(id: string): Product | undefined {
  return MATERIALS.find((material) => material.id === id);
}
