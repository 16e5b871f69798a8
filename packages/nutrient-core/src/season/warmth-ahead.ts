import { dayNumber } from "./civil-date.ts";
import type { Milestone } from "./crop.ts";
import { degreeDays } from "./degree-days.ts";
import type { Planting } from "./season.ts";
import type { DateRange } from "./season-plan.ts";
import type { Surroundings } from "./surroundings.ts";
import type { Indoors, WarmthScenario } from "./warmth.ts";
import { type WarmthRange, warmthRange } from "./warmth-range.ts";

/** The warmth of the house in which seedlings stand, or days in the weather record. */
export type WarmthMissing = "house" | "days";

/** What is predicted for a planting by warmth, and what that rests on. */
export interface WarmthAhead {
  /** When so many degree days (least, likely, most) after a milestone have come together; undefined where it cannot be told. */
  readonly after: (
    milestone: Milestone,
    from: DateRange,
    amounts: readonly [number, number, number],
  ) => WarmthRange | undefined;
  /** Which weather the predictions rest on; undefined where none was made. */
  readonly basis: () => WarmthScenario["basis"] | undefined;
  /** Why a prediction failed although there is weather; undefined where none did. */
  readonly missing: () => WarmthMissing | undefined;
}

/**
 * Predictions by warmth for one planting.
 *
 * @param setOutDay When its plants are set out, asked for only where it matters.
 */
export function warmthAhead(
  { raisedAtCelsius, weather }: Surroundings,
  { sown, facts: { thresholds } }: Planting,
  setOutDay: () => DateRange["likely"],
): WarmthAhead {
  const scenarios = thresholds ? weather(thresholds) : [];
  let used = false;
  let missing: WarmthMissing | undefined;

  /** Seedlings raised under cover gather the warmth of the house; where that is not known nothing can be reckoned. */
  const underCover = (after: Milestone): Indoors | undefined | "unknown" => {
    if (after !== "sown" || !sown || sown >= setOutDay()) return undefined;
    if (raisedAtCelsius === undefined) return "unknown";
    return { warmth: degreeDays(raisedAtCelsius, raisedAtCelsius, thresholds!), until: dayNumber(setOutDay()) };
  };

  return {
    after: (milestone, from, amounts) => {
      if (scenarios.length === 0) return undefined;
      const indoors = underCover(milestone);
      if (indoors === "unknown") {
        missing = "house";
        return undefined;
      }
      const range = warmthRange(scenarios, from, amounts, indoors);
      if (range) used = true;
      else missing = "days";
      return range;
    },
    basis: () => (used ? scenarios[0]?.basis : undefined),
    missing: () => missing,
  };
}
