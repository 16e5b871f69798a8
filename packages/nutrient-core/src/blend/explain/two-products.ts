import { asRatio, type Triple } from "../../supply/ratio.ts";
import type { BlendInput } from "../blend-input.ts";
import { reachableSegment } from "../square-method.ts";
import { figure, inSentence } from "../words.ts";

/** What two products can reach at all, where a ratio was asked of them. */
export function twoProducts({ products, purpose }: BlendInput): string[] {
  const segment = reachableSegment(products);
  if (purpose.kind === "target" || !segment) return [];
  const [first, second] = products.map(({ name }) => inSentence(name));
  return [
    `These two reach the ratios from ${parts(segment.from)} (all ${first}) to ${parts(segment.to)} (all ${second}), and none beside that line.`,
  ];
}

/** As a ratio: "2-1-2". */
const parts = (triple: Triple): string => asRatio(triple).map(figure).join("-");
