import { asRatio, type Triple } from "../../supply/ratio.ts";
import type { BlendInput } from "../blend-input.ts";
import { reachableSegment } from "../square-method.ts";
import { figure, inSentence } from "../words.ts";

/** What two products can reach at all, where a ratio was asked of them. */
export function twoProducts({ products, purpose }: BlendInput): string[] {
  const segment = reachableSegment(products);
  if (purpose.kind === "target" || !segment) return [];
  const [first, second] = products.map(({ name }) => inSentence(name));
  const [from, to] = [parts(segment.from), parts(segment.to)];
  if (from === to) return [`Both are ${from}, and so is every mixture of the two.`];
  return [`Mixed, these two reach only what lies between ${from} (all ${first}) and ${to} (all ${second}).`];
}

/** As a ratio: "2-1-2". */
const parts = (triple: Triple): string => asRatio(triple).map(figure).join("-");
