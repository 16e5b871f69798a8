import type { ShoppingLine, UnitHabit } from "nutrient-core";
import { mass } from "./number.ts";

/** "2 x 1 kg + 1 x 250 g bloom feed" */
export function packsText({ packs, name }: ShoppingLine, habit: UnitHabit): string {
  return `${packs.map(({ count, packGrams }) => `${count} x ${mass(packGrams, habit)}`).join(" + ")} ${name}`;
}
