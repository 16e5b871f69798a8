import type { Hazard } from "nutrient-core";

/** What is never measured with anything from a kitchen. */
export const NOT_BY_SPOON: ReadonlySet<Hazard> = new Set<Hazard>([
  "acid",
  "caustic",
  "harmful-if-swallowed",
  "may-harm-fertility",
]);
