import type { Spoonful } from "nutrient-core";

const EIGHTHS = ["", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"] as const;

/** "1 tbsp + 1 1/2 tsp metric, level". */
export function spoonText(spoons: Spoonful): string {
  return `${shortSpoons(spoons)} ${spoons.set}, level`;
}

/** "1 tbsp + 1 1/2 tsp", where the set is said elsewhere. */
export function shortSpoons({ tablespoons, eighthTeaspoons }: Spoonful): string {
  const whole = Math.floor(eighthTeaspoons / 8);
  const part = EIGHTHS[eighthTeaspoons % 8]!;
  const teaspoons = [whole > 0 ? String(whole) : "", part].filter(Boolean).join(" ");
  return [tablespoons > 0 ? `${tablespoons} tbsp` : "", teaspoons ? `${teaspoons} tsp` : ""]
    .filter(Boolean)
    .join(" + ");
}
