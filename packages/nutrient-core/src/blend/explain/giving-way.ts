import type { BlendInput } from "../blend-input.ts";
import type { Reached } from "../reach.ts";
import { figure, RATE_WORDS } from "../words.ts";
import { tryBlend } from "./trial.ts";

/** The weight of the nutrient that gives way: next to nothing, so that it still stays as near as the others let it. */
const NEXT_TO_NOTHING = 1e-6;
/** With that weight the others are met to this much. */
const MET = 1e-4;

/**
 * Which one nutrient would have to give way, and to what, for everything else to be met. The excesses are tried
 * first: a little more of something is easier to bear than a shortage.
 */
export function givingWay(input: BlendInput, reached: Reached): string[] {
  const { rows, solution, extent } = reached;
  const missed = rows.flatMap((_, i) => (solution.misses[i] === 0 ? [] : [i]));
  if (missed.length < 2) return [];
  const order = missed.sort((a, b) => solution.misses[b]! * rows[b]!.weight - solution.misses[a]! * rows[a]!.weight);
  for (const i of order) {
    const tried = tryBlend(input, { weights: { [rows[i]!.nutrient]: NEXT_TO_NOTHING } });
    if (!tried?.solution.relativeMisses.every((relative, j) => j === i || relative <= MET)) continue;
    const row = tried.rows[i]!;
    const shown = row.shownAs(tried.delivered[i]!);
    // A nutrient that would have to vanish is no way out.
    if (!(shown > 0)) continue;
    if (input.purpose.kind !== "target") {
      const triple = rows.map((one, j) => figure(j === i ? shown : one.shownAs(one.wanted)));
      return [
        `${input.purpose.kind === "ratio" ? "A ratio" : "A grade"} of ${triple.join("-")} could be made exactly.`,
      ];
    }
    const way = tried.delivered[i]! > row.wanted ? "rise" : "fall";
    return [`If ${row.name} may ${way} to ${figure(shown)} ${RATE_WORDS[extent.basis]}, everything else is met.`];
  }
  return [];
}
