import { type Outcome, type Problem, unusable } from "nutrient-core";

/** Why words cannot be recorded. */
export function recordProblem(
  code: string,
  message: string,
  expected: string,
  received: string,
  hint: string,
): Problem {
  return { code, path: "record", message, expected, received, hint };
}

/** What is wrong with the words of a record stands under its option. */
export function underRecord<T>(outcome: Outcome<T>): Outcome<T> {
  return outcome.ok
    ? outcome
    : unusable(...outcome.problems.map((found) => ({ ...found, path: `record ${found.path}`.trimEnd() })));
}
