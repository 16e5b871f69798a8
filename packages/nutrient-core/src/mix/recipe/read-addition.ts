import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import { NUMBER_PATTERN, readNumber } from "../../quantity/number.ts";
import { rateUnitNamed } from "../../supply/rate-unit.ts";
import type { Addition } from "./recipe.ts";

/** A tonne in a cubic metre is more than most mixes weigh. */
const MOST_GRAMS_PER_CUBIC_METRE = 1e6;

const ADDITION = new RegExp(`^(\\S.*?)[: ]\\s*(${NUMBER_PATTERN})\\s*([a-z].*)$`, "i");

/** Reads what is mixed in by mass: `lime 3 kg/m3`. */
export function readAddition(piece: string, text: string): Outcome<Addition> {
  // Grades such as 5-10-10 hold numbers, so every place where an amount could begin is tried, from the left.
  for (let from = piece.indexOf(" "); from >= 0; from = piece.indexOf(" ", from + 1)) {
    const match = ADDITION.exec(`x${piece.slice(from)}`);
    const unit = match && rateUnitNamed(match[3]!);
    if (!match || unit?.basis !== "cubicMetre" || match[1] !== "x") continue;
    const rate = readNumber(match[2]!);
    if (!rate.ok) return rate;
    const gramsPerCubicMetre = rate.value * unit.factor;
    if (!(rate.value > 0) || gramsPerCubicMetre > MOST_GRAMS_PER_CUBIC_METRE) break;
    return answer({ name: piece.slice(0, from).trim().toLowerCase(), gramsPerCubicMetre });
  }
  return unusable({
    code: "addition-unreadable",
    path: "",
    message: `"${piece}" is not something mixed in by mass.`,
    expected:
      "a name and a rate per cubic metre or cubic yard, such as lime 3 kg/m3, less than a tonne in a cubic metre",
    received: text,
    hint: 'write for example "+ lime 3 kg/m3" or "+ lime 5 lb/cu yd"',
  });
}
