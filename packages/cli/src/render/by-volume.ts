import { METRIC_SPOONS, type Product, spoonsFor, type UnitHabit, US_SPOONS } from "nutrient-core";
import { NOT_BY_SPOON } from "./not-by-spoon.ts";
import { shown } from "./number.ts";
import { shortSpoons, spoonText } from "./spoons.ts";

/** A liquid by its millilitres; a powder by spoons, unless it is nothing for a spoon. */
export function byVolume(product: Product, millilitres: number | undefined, habit: UnitHabit): string {
  if (millilitres === undefined) return "";
  if (product.hazards.some((hazard) => NOT_BY_SPOON.has(hazard)))
    return product.state === "liquid" ? ` (${shown(millilitres)} mL)` : "";
  const spoons = spoonsFor(millilitres, habit === "us" ? US_SPOONS : METRIC_SPOONS);
  if (product.state === "liquid")
    return ` (${shown(millilitres)} mL${habit === "us" && spoons ? `, about ${shortSpoons(spoons)} US` : ""})`;
  return spoons ? ` (about ${spoonText(spoons)})` : "";
}
