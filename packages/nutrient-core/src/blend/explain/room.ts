import type { BlendInput } from "../blend-input.ts";
import type { Reached } from "../reach.ts";
import { capital, inSentence, listed, percent } from "../words.ts";
import { tryBlend } from "./trial.ts";

/** Above so many products in use, only single ones are tried. */
const MOST_TO_SEARCH = 10;
/** Of more products than these only the number is said. */
const MOST_TO_NAME = 4;
/** How much less a trial asks for, and the least saving that is worth a sentence. */
const LESS = 0.1;
const WORTH_SAVING = 0.02;

/** What could be left out of a blend that meets every target, found by blending without it. */
export function leftOut(input: BlendInput, { massGrams, solution }: Reached): string[] {
  const used = input.products.filter((_, j) => massGrams[j]! > 0);
  if (used.length < 2 || solution.aim.next === "fewest") return [];
  const without = (left: readonly string[]): BlendInput => ({
    ...input,
    products: used.filter(({ id }) => !left.includes(id)),
    uses: (input.uses ?? []).filter(({ product }) => !left.includes(product)),
  });
  const free = used.filter(({ id }) => (input.uses?.find(({ product }) => product === id)?.leastGrams ?? 0) === 0);
  const single = free.find(({ id }) => tryBlend(without([id]))?.solution.status === "met");
  if (!single) return [];
  let left = [single.id];
  if (used.length <= MOST_TO_SEARCH) {
    const fewest = tryBlend({ ...without([]), aim: { miss: solution.aim.miss, next: "fewest" } });
    if (fewest?.solution.status === "met") left = used.filter((_, j) => fewest.massGrams[j] === 0).map(({ id }) => id);
  }
  const names = (ids: readonly string[], isOut: boolean) =>
    used.filter(({ id }) => ids.includes(id) === isOut).map(({ name }) => inSentence(name));
  if (left.length === 0) return [];
  const kept = used.length - left.length;
  const others = kept > MOST_TO_NAME ? `the other ${kept}` : listed(names(left, false));
  return [
    `${capital(listed(names(left, true)))} could be left out: ${others} alone also ${kept > 1 ? "meet" : "meets"} every target.`,
  ];
}

/** Which nutrient costs most to ask for, by asking a tenth less of it. */
export function savedByAskingLess(input: BlendInput, { rows, solution }: Reached): string[] {
  const { purpose } = input;
  const { cost } = solution;
  if (purpose.kind !== "target" || cost === undefined || !(cost > 0)) return [];
  const savings = rows.flatMap((row, i) => {
    if (row.direction === "at-most") return [];
    const wanted = purpose.wanted.map((one, j) => (j === i ? { ...one, rate: one.rate * (1 - LESS) } : one));
    const tried = tryBlend({ ...input, purpose: { ...purpose, wanted } })?.solution;
    return tried?.status === "met" && tried.cost !== undefined ? [{ row, share: 1 - tried.cost / cost }] : [];
  });
  const best = savings.sort((a, b) => b.share - a.share)[0];
  if (!best || best.share < WORTH_SAVING) return [];
  return [`Asking a tenth less ${best.row.name} would save ${percent(best.share)} of the cost.`];
}
