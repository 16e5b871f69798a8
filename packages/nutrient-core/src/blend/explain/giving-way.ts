import type { BlendInput } from "../blend-input.ts";
import type { Reached } from "../reach.ts";
import { figure, rateWords, timesWords } from "../words.ts";
import { largestMiss, tryBlend, withoutPrices } from "./trial.ts";

/** So many times what is wanted of anything is as good as any amount. */
const ANY_AMOUNT = 100;
/** Where nothing is off by more than this, no way out is sought: no scale weighs so finely. */
const WORTH_SEEKING = 1e-3;
/** Further than this nothing may rise or fall, and from here on it is said how far that is. */
const MOST_TIMES = 3;
const WORTH_COUNTING = 2;
/** Halvings of the span in which the least way lies: to a ten-thousandth of it. */
const HALVINGS = 14;

/**
 * Which one nutrient would have to give way, and to what, for everything else to be met. The excesses are tried
 * first: a little more of something is easier to bear than a shortage.
 */
export function givingWay(input: BlendInput, reached: Reached): string[] {
  const { rows, solution, extent } = reached;
  const missed = rows.flatMap((_, i) => (solution.misses[i] === 0 ? [] : [i]));
  if (missed.length < 2 || largestMiss(reached) < WORTH_SEEKING) return [];
  for (const i of missed.sort((a, b) => solution.misses[b]! - solution.misses[a]!)) {
    const tried = leastWay(input, reached, i);
    if (!tried) continue;
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
    const factor = tried.delivered[i]! / row.wanted;
    // Nobody lets a nutrient rise so far, and some would burn the plants; to let one fall so far is to give it up.
    if (!(factor <= MOST_TIMES && factor >= 1 / MOST_TIMES)) continue;
    const way = factor > 1 ? "rise" : "fall";
    const far = factor >= WORTH_COUNTING ? `, ${timesWords(factor)} what was asked` : "";
    return [
      `If ${row.name} may ${way} to ${rateWords(shown, extent.basis, input.explainedIn)}${far}, everything else is met.`,
    ];
  }
  return [];
}

/** The blend that meets everything with row i off by as little as can be; undefined where even any amount does not help. */
function leastWay(input: BlendInput, { rows, solution }: Reached, i: number): Reached | undefined {
  const { nutrient } = rows[i]!;
  const largest = Math.max(...rows.map(({ wanted }) => wanted));
  const free: BlendInput = { ...withoutPrices(input), aim: { miss: solution.aim.miss, next: "nearest" } };
  const within = (band: number): Reached | undefined => {
    const tried = tryBlend(free, { bands: { [nutrient]: band } });
    return tried?.solution.status === "met" ? tried : undefined;
  };
  let best = within(ANY_AMOUNT * largest);
  if (!best) return undefined;
  let tooLittle = 0;
  let enough = Math.abs(best.delivered[i]! - best.rows[i]!.wanted);
  for (let round = 0; round < HALVINGS; round++) {
    const middle = (tooLittle + enough) / 2;
    const tried = within(middle);
    if (tried) {
      best = tried;
      enough = middle;
    } else tooLittle = middle;
  }
  return best;
}
