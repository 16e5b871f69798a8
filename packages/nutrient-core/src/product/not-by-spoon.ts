import type { Hazard, Product } from "./product.ts";

/** What is never measured with anything from a kitchen (common practice, no source). */
export const NOT_BY_SPOON: ReadonlySet<Hazard> = new Set<Hazard>([
  "acid",
  "caustic",
  "harmful-if-swallowed",
  "may-harm-fertility",
]);

/** Whether a product may be measured with a spoon. */
export function mayBeSpooned({ hazards }: Product): boolean {
  return !hazards.some((hazard) => NOT_BY_SPOON.has(hazard));
}
