import type { BlendInput } from "../blend-input.ts";
import type { Reached } from "../reach.ts";
import { percent } from "../words.ts";
import { givingWay } from "./giving-way.ts";
import { limitsThatBind } from "./limits-that-bind.ts";
import { leftOut, savedByAskingLess } from "./room.ts";
import { materialThatHelps, materialWords } from "./try-materials.ts";
import { twoProducts } from "./two-products.ts";
import { whyOver, whyShort } from "./why.ts";

/** A miss smaller than this is not worth a sentence. */
const WORTH_SAYING = 1e-6;

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
  const off = rows
    .map((row, index) => ({ row, index, relative: solution.relativeMisses[index]!, miss: solution.misses[index]! }))
    .filter(({ relative }) => relative > WORTH_SAYING)
    .sort((a, b) => b.relative - a.relative);
  const sentences = off.map(({ row, relative, miss }) =>
    row.wanted > 0
      ? `${row.name} comes out ${percent(relative)} ${miss < 0 ? "short of" : "over"} what was asked.`
      : `${row.name} comes along though none was asked.`,
  );
  for (const { index, miss } of off) {
    sentences.push(...(miss < 0 ? whyShort(index, input, reached) : whyOver(index, input, reached)));
  }
  sentences.push(...limitsThatBind(input, reached), ...twoProducts(input), ...givingWay(input, reached));
  const helper = materialThatHelps(input, reached);
  if (helper) sentences.push(materialWords(helper));
  return [...new Set(sentences)];
}
