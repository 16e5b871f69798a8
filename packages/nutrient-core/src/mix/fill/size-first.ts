import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import { NUMBER_PATTERN } from "../../quantity/number.ts";
import { unitNamed } from "../../quantity/unit-name.ts";

const SIZE_FIRST = new RegExp(
  `^(?:(\\d+)\\s+(?:x\\s+)?)??(${NUMBER_PATTERN})[\\s-]?([a-z][a-z. -]*?)[\\s-](round |square |fabric |grow )?(pots?|containers?|buckets?|bags?)\\b(.*)$`,
  "i",
);
const TRADE_GALLON =
  /\b(?:trade (\d+)[\s-]gal(?:lon)?s?|(\d+)[\s-]trade[\s-]gal(?:lon)?s?|(\d+)[\s-]gal(?:lon)?s? trade)\b/i;

/**
 * Puts pots that are named by their size into the usual order: `12 5-gallon pots` is `12 pots 5 gallon`, and
 * `12 trade 5-gallon pots` is `12 trade #5 pots`. Any other text passes as it is.
 */
export function sizeLast(written: string): Outcome<string> {
  const trade = written.replace(TRADE_GALLON, (_, a = "", b = "", c = "") => `trade #${a}${b}${c}`);
  if (trade !== written) return answer(trade);
  const match = SIZE_FIRST.exec(written);
  if (!match) return answer(written);
  const [, count, number, unit, kind = "", word, rest] = match as unknown as [
    string,
    string | undefined,
    string,
    string,
    string | undefined,
    string,
    string,
  ];
  const isBag = /^bag/i.test(word);
  if (!unitNamed(unit) || (isBag && kind === "")) return answer(written);
  // "12 1/2 gallon pots": twelve of half a gallon, or some of twelve and a half.
  if (count === undefined && /\s/.test(number)) {
    return unusable({
      code: "number-ambiguous",
      path: "",
      message: `"${written}" can be read in two ways.`,
      expected: "the count first, then the pots, then the size of one",
      received: written,
      hint: `write for example "12 pots 0.5 ${unit}"`,
    });
  }
  const shape = isBag ? "fabric pots" : `${kind.toLowerCase()}pots`;
  return answer(`${count === undefined ? "" : `${count} `}${shape} ${number} ${unit}${rest}`);
}
