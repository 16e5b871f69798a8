import type { Triple } from "../../supply/ratio.ts";
import type { BlendInput } from "../blend-input.ts";
import { reachableSegment } from "../square-method.ts";
import { inSentence } from "../words.ts";

/** What two products can reach at all, where a ratio was asked of them. */
export function twoProducts({ products, purpose }: BlendInput): string[] {
  const segment = reachableSegment(products);
  if (purpose.kind === "target" || !segment) return [];
  const [first, second] = products.map(({ name }) => inSentence(name));
  return [
    `These two reach every ratio from ${parts(segment.from)} (all ${first}) to ${parts(segment.to)} (all ${second}) as the one gives way to the other, and no other.`,
  ];
}

/** Parts of plant food in hundredths, as a ratio: "50-25-25". */
const parts = (triple: Triple): string => triple.map((part) => Math.round(part * 100)).join("-");
