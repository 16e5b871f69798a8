import type { BlendInput } from "../blend-input.ts";
import type { Reached } from "../reach.ts";
import { nutrientName, percent, timesWords } from "../words.ts";
import { givingWay } from "./giving-way.ts";
import { limitsThatBind } from "./limits-that-bind.ts";
import { leftOut, savedByAskingLess } from "./room.ts";
import { materialsThatHelp, materialWords } from "./try-materials.ts";
import { twoProducts } from "./two-products.ts";
import { whyOver, whyShort } from "./why.ts";

/** No label and no scale is as exact as this: where nothing is off by more, no remedy is worth its trouble. */
const NO_MATTER = 0.01;
/** A miss smaller than this share of the largest one is not worth a sentence, and no more than three are. */
const WORTH_SAYING = 0.1;
const MOST_SAID = 3;

/**
 * The reason behind a blend in a grower's words.
 *
 * Where targets are missed: what is short and over, which nutrients pull against each other and through which
 * products, which limits hold the blend back and what a little more room would bring, what could give way, and which
 * generic material would close the gap. Where all are met: what could be left out, and what asking less would save.
 * Every claim about another blend is made by solving that blend.
 */
export function explain(input: BlendInput, reached: Reached): string[] {
  const { rows, solution } = reached;
  if (solution.status === "met") {
    return ["Every target is met.", ...leftOut(input, reached), ...savedByAskingLess(input, reached)];
  }
  const largest = Math.max(...solution.relativeMisses);
  const isExact = rows.every(({ wanted, within }, i) => solution.misses[i] === 0 || (wanted > 0 && within === 0));
  if (largest < NO_MATTER && isExact) {
    return [
      `Nothing is off by more than ${percent(largest)} of what was asked: labels and scales are less exact than that. Within 1 % it would all count as met.`,
    ];
  }
  const off = rows
    .map((_, index) => ({ index, relative: solution.relativeMisses[index]!, miss: solution.misses[index]! }))
    .filter(({ relative }) => relative >= WORTH_SAYING * largest)
    // Misses that are alike but for rounding (the largest miss is shared out) stay in the order they were asked in.
    .sort((a, b) => rounded(b.relative) - rounded(a.relative))
    .slice(0, MOST_SAID);
  const sentences = off.flatMap(({ index }) => whatIsOff(index, reached));
  const reasons = off.flatMap(({ index, miss }) => (miss < 0 ? whyShort(index, input, reached) : []));
  for (const { index, miss } of off) {
    // Said already where a shortage was put down to it.
    const isSaid = reasons.some((reason) => reason.includes(nutrientName(rows[index]!.nutrient)));
    if (miss > 0 && !isSaid) reasons.push(...whyOver(index, input, reached));
  }
  sentences.push(...reasons);
  sentences.push(...limitsThatBind(input, reached), ...twoProducts(input), ...givingWay(input, reached));
  sentences.push(...materialWords(materialsThatHelp(input, reached), input.explainedIn));
  if (sentences.length > 0) return [...new Set(sentences)];
  // Only what comes out at nothing is left unsaid above, and then a limit that was set forbids it.
  return off.map(
    ({ index }) => `None of the ${rows[index]!.name} that was asked comes out within the limits that were set.`,
  );
}

/** How far off one nutrient is, from what was asked; nothing where none of it is there, for that has its own reason. */
function whatIsOff(index: number, { rows, delivered }: Reached): string[] {
  const row = rows[index]!;
  if (!(row.wanted > 0)) return [`${row.name} comes along though none was asked.`];
  if (delivered[index] === 0) return [];
  const off = delivered[index]! / row.wanted - 1;
  const allowed = row.within > 0 ? ` (${percent(row.within)} would still count as met)` : "";
  // "156 % over" has to be worked out in the head.
  if (off >= 1) return [`${row.name} comes out at ${timesWords(1 + off)} what was asked${allowed}.`];
  return [`${row.name} comes out ${percent(Math.abs(off))} ${off < 0 ? "short of" : "over"} what was asked${allowed}.`];
}

/** A relative miss without its last digits. */
function rounded(relative: number): number {
  return Math.round(relative * 1e9);
}
