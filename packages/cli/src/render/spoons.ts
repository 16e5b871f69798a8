import type { Spoonful } from "nutrient-core";

const EIGHTHS = ["", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"] as const;

/** "1 tablespoon + 1 1/2 teaspoons", level. */
export function spoonText({ tablespoons, eighthTeaspoons, set }: Spoonful): string {
  const whole = Math.floor(eighthTeaspoons / 8);
  const part = EIGHTHS[eighthTeaspoons % 8]!;
  const teaspoons = [whole > 0 ? String(whole) : "", part].filter(Boolean).join(" ");
  const parts = [tablespoons > 0 ? `${tablespoons} tbsp` : "", teaspoons ? `${teaspoons} tsp` : ""].filter(Boolean);
  return `${parts.join(" + ")} ${set}, level`;
}
