import type { Problem } from "../outcome/problem.ts";
import type { LogEntry, UndoneEntry } from "./log.ts";
import type { Planting, SeasonInput } from "./season.ts";
import { conditionText, type UnplacedStage } from "./stages.ts";

/** A stage whose beginning or end nothing tells. */
export function unplacedProblem({ stage, condition }: UnplacedStage, planting: Planting): Problem {
  const needsWeather = condition.kind === "degree-days-after";
  return {
    code: "stage-without-date",
    path: "programme",
    message: `When the stage "${stage.name}" of "${planting.name}" begins or ends (${conditionText(condition)}) cannot be told.`,
    expected: needsWeather
      ? "a weather file, thresholds, and raisedAt where it counts from sowing under cover"
      : "what is needed to expect it",
    received: `nothing is known of ${planting.crop} that tells it`,
    hint: needsWeather
      ? "name a weather file and thresholds, or write the condition as a date or in days"
      : 'say when to expect it, such as expect: { first flower: "20 to 45 days after set out" }',
  };
}

/** Lines of the record that belong to no planting. */
export function unknownPlantings(
  input: Pick<SeasonInput, "plantings">,
  entries: readonly Exclude<LogEntry, UndoneEntry>[],
): Problem[] {
  const names = input.plantings.map(({ name }) => name);
  const known = new Set(names);
  return entries.flatMap((entry): Problem[] => {
    const problem = () => ({ path: `record ${entry.id}`, expected: `one of ${names.join(", ")}` });
    if (entry.planting !== undefined && !known.has(entry.planting)) {
      return [
        {
          ...problem(),
          code: "planting-unknown",
          message: `The record names a planting that the season does not have: "${entry.planting}".`,
          received: entry.planting,
          hint: "keep a planting's name as it was when the record was begun, or undo the line",
        },
      ];
    }
    if (entry.kind === "fed" && entry.planting === undefined && names.length > 1) {
      return [
        {
          ...problem(),
          code: "planting-missing",
          message: "A recorded feed does not say which planting was fed.",
          received: "no planting",
          hint: "undo the line and record the feed for each planting",
        },
      ];
    }
    return [];
  });
}
