import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { LabelRule } from "../product/label-tolerance.ts";
import type { Product } from "../product/product.ts";
import { readNumber } from "../quantity/number.ts";
import type { BlendAim } from "./engine/problem.ts";

const MISSES = { fair: "squares", largest: "largest" } as const;
const PREFERENCES = { nearest: "nearest", cheapest: "cost", fewest: "fewest" } as const;

/**
 * Reads how a blend is judged where not everything can be met, and what is preferred among equals.
 *
 * @param texts `aim`: `fair` (small misses all round) or `largest` (the largest miss as small as it can be);
 *   `prefer`: `nearest` to the wanted rates, `cheapest`, or `fewest` products.
 * @returns Undefined when neither was said: then fair, and the cheapest where every price is known.
 * @example
 * readAim({ aim: "largest", prefer: "fewest" }, [])  // => { miss: "largest", next: "fewest" }
 */
export function readAim(
  texts: { readonly aim?: string | undefined; readonly prefer?: string | undefined },
  products: readonly Product[],
): Outcome<BlendAim | undefined> {
  const { aim, prefer } = texts;
  if (aim === undefined && prefer === undefined) return answer(undefined);
  const miss = aim === undefined ? "squares" : MISSES[aim.trim().toLowerCase() as keyof typeof MISSES];
  if (!miss) return unusable(unknownChoice("aim", aim!, Object.keys(MISSES)));
  const unpriced = products.find(({ pricePerGram }) => pricePerGram === undefined);
  const usual = unpriced ? "nearest" : "cost";
  const next = prefer === undefined ? usual : PREFERENCES[prefer.trim().toLowerCase() as keyof typeof PREFERENCES];
  if (!next) return unusable(unknownChoice("prefer", prefer!, Object.keys(PREFERENCES)));
  if (next === "cost" && unpriced) {
    return unusable({
      code: "price-missing",
      path: "prefer",
      message: `The cheapest blend needs the price of every product, and ${unpriced.name} has none.`,
      expected: "a price and a pack size for every product in the shelf file",
      received: `no price for ${unpriced.id}`,
      hint: "add price and pack to the shelf file, or use --prefer nearest",
    });
  }
  return answer({ miss, next });
}

/** Reads whose rule about shortfalls of a label is taken: `us` or `eu`. */
export function readLabelRule(written: string | undefined): Outcome<LabelRule | undefined> {
  if (written === undefined) return answer(undefined);
  const rule = written.trim().toLowerCase();
  if (rule === "us" || rule === "eu") return answer(rule);
  return unusable(unknownChoice("labelRule", written, ["us", "eu"]));
}

function unknownChoice(path: string, written: string, choices: readonly string[]) {
  return {
    code: "choice-unknown",
    path,
    message: `"${written}" is not one of the choices.`,
    expected: oneOf(choices),
    received: written,
    hint: `write ${oneOf(choices)}`,
  };
}

const oneOf = (choices: readonly string[]): string => `${choices.slice(0, -1).join(", ")} or ${choices.at(-1)}`;

/** Reads a share of 0 to 1 written in percent: `5%`. */
export function readShare(written: string): Outcome<number> {
  const number = readNumber(written.trim().replace(/\s*%$/, ""));
  if (number.ok && number.value >= 0 && number.value <= 100 && written.includes("%")) return answer(number.value / 100);
  return unusable({
    code: "share-unreadable",
    path: "",
    message: `"${written}" is not a percentage from 0 to 100.`,
    expected: "a percentage such as 5%",
    received: written,
    hint: "write the percent sign too: 5%",
  });
}
