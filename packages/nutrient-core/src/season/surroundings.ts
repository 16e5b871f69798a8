import type { Thresholds } from "./degree-days.ts";
import type { SeasonInput } from "./season.ts";
import { type WarmthScenario, warmthScenarios } from "./warmth.ts";

/** What the plants have around them. */
export interface Surroundings {
  readonly raisedAtCelsius?: number;
  /** The ways the weather may go, in degree days between these thresholds; none where no weather is known. */
  readonly weather: (thresholds: Thresholds) => readonly WarmthScenario[];
}

/** Keeps the scenarios of each pair of thresholds: many plantings share them. */
export function surroundingsOf(input: Pick<SeasonInput, "weather" | "raisedAtCelsius">): Surroundings {
  const known = new Map<string, readonly WarmthScenario[]>();
  return {
    ...(input.raisedAtCelsius === undefined ? {} : { raisedAtCelsius: input.raisedAtCelsius }),
    weather: (thresholds) => {
      const key = `${thresholds.lowerCelsius}/${thresholds.upperCelsius}`;
      if (!known.has(key)) known.set(key, warmthScenarios(input.weather, thresholds));
      return known.get(key)!;
    },
  };
}
