import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import type { Basis } from "../../supply/basis.ts";
import { readTarget, type Wanted } from "../../supply/target.ts";
import type { Ceiling } from "../season.ts";

/** Rates of a season: per litre, area or volume of mix, as everywhere, and also per plant and in all. */
export interface SeasonRates {
  readonly basis: Basis | "plant" | "total";
  /** Grams of the element per plant or in all; else in the basis' own unit. */
  readonly wanted: readonly Wanted[];
}

const PER_PLANT = /\b(m?g|kg)\s*(?:\/|per|a|an)\s*plant\b/gi;
const IN_ALL = /\b(m?g|kg)\s*(?:in all|in total|total)\b/gi;

/**
 * Reads rates such as `N 150 ppm`, `N 2 g/m2`, `N 0.2 g/plant` or `N 500 g in all`.
 *
 * @returns Rates of the elements, all on one basis.
 * @example
 * readSeasonRates("N 0.2 g/plant")  // => { basis: "plant", wanted: [{ nutrient: "N", rate: 0.2 }] }
 */
export function readSeasonRates(text: string): Outcome<SeasonRates> {
  for (const [pattern, basis] of [
    [PER_PLANT, "plant"],
    [IN_ALL, "total"],
  ] as const) {
    const found = text.match(pattern);
    if (!found) continue;
    // So many grams for one plant, or for all, are read like so many on one square metre.
    const asArea = text.replace(pattern, (_, unit: string) => (unit.toLowerCase() === "kg" ? "kg/m2" : "g/m2"));
    if (found.some((unit) => /^mg/i.test(unit))) return unusable(milligramProblem(text));
    const read = readTarget(asArea);
    if (!read.ok) return unusable(...read.problems.map((problem) => ({ ...problem, received: text })));
    if (read.value.basis !== "squareMetre") return unusable(mixedProblem(text));
    return answer({ basis, wanted: read.value.wanted }, read.cautions, read.working);
  }
  return readTarget(text);
}

/** Reads ceilings: one nutrient each or several, per plant, per area or in all. */
export function readCeilings(text: string): Outcome<readonly Ceiling[]> {
  const read = readSeasonRates(text);
  if (!read.ok) return read;
  const { basis, wanted } = read.value;
  if (basis === "litre" || basis === "cubicMetre") {
    return unusable({
      code: "ceiling-basis",
      path: "",
      message: `"${text}" is no ceiling for a season.`,
      expected: "grams per plant, per area or in all",
      received: text,
      hint: 'write for example "N 20 g/m2", "P2O5 3 g/plant" or "N 500 g in all"',
    });
  }
  const stranger = wanted.find(({ nutrient }) => nutrient !== "N" && nutrient !== "P" && nutrient !== "K");
  if (stranger) {
    return unusable({
      code: "ceiling-nutrient",
      path: "",
      message: `A ceiling for ${stranger.nutrient} is not kept.`,
      expected: "N, P (P2O5) or K (K2O)",
      received: text,
      hint: "leave it out; cautions watch the other nutrients",
    });
  }
  return answer(
    wanted.map(({ nutrient, rate }) => ({ nutrient: nutrient as Ceiling["nutrient"], basis, grams: rate })),
  );
}

function milligramProblem(text: string) {
  return {
    code: "rate-unit-unknown",
    path: "",
    message: `"${text}" is given in milligrams.`,
    expected: "grams",
    received: text,
    hint: "write grams: 200 mg/plant is 0.2 g/plant",
  };
}

function mixedProblem(text: string) {
  return {
    code: "target-mixed-basis",
    path: "",
    message: `"${text}" mixes amounts per plant or in all with other ones.`,
    expected: "one kind of rate",
    received: text,
    hint: "give each kind of rate a line of its own",
  };
}
