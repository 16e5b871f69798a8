import { answer, gatherList, type Outcome, unusable } from "../../outcome/outcome.ts";
import { type CropFacts, cropFacts, type Expectation } from "../crop.ts";
import type { SeasonDocument } from "./document.ts";
import { milestoneNamed, readExpectation } from "./read-condition.ts";

/** What is known of the crops, with the grower's own thresholds and expectations in front. */
export function readFacts({ expect = {}, thresholdsCelsius }: SeasonDocument): Outcome<(crop: string) => CropFacts> {
  const read = gatherList(
    Object.entries(expect).map(([name, text]): Outcome<readonly [string, Expectation]> => {
      const path = `expect.${name}`;
      const milestone = milestoneNamed(name);
      if (milestone === undefined || milestone === "sown" || milestone === "set-out" || milestone === "end") {
        return unusable({
          code: "milestone-unknown",
          path,
          message: `"${name}" is nothing that can be expected.`,
          expected: "first flower, first fruit set or first harvest",
          received: name,
          hint: "write first flower",
        });
      }
      const expectation = readExpectation(text);
      if (!expectation.ok) return unusable(...expectation.problems.map((one) => ({ ...one, path })));
      return answer([milestone, expectation.value] as const);
    }),
  );
  if (!read.ok) return read;
  const [lower, upper] = thresholdsCelsius ?? [];
  if (lower !== undefined && upper !== undefined && !(lower < upper)) {
    return unusable({
      code: "thresholds-out-of-order",
      path: "thresholdsCelsius",
      message: "The lower threshold is not below the upper one.",
      expected: "the lower temperature first",
      received: `${lower}, ${upper}`,
      hint: "write for example thresholdsCelsius: [10, 30]",
    });
  }
  const own = read.value;
  return answer((crop) => {
    const facts = cropFacts(crop);
    const expected = { ...facts.expected };
    for (const [milestone, expectation] of own) expected[milestone as "first-flower"] = [expectation];
    if (lower === undefined) return { ...facts, expected };
    const thresholds = upper === undefined ? { lowerCelsius: lower } : { lowerCelsius: lower, upperCelsius: upper };
    const { thresholdsSource: _, ...rest } = facts;
    return { ...rest, expected, thresholds };
  });
}
