import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { shown } from "../outcome/sentence.ts";
import { plainText, readNumber } from "../quantity/number.ts";

/** Nothing that counts for less is sold as lime, and 0.9% is 90% gone wrong (common practice, no source). */
const LEAST_PERCENT = 10;

/**
 * Reads a percent with its sign. A bare 0.9 could be a fraction or nine tenths of a percent: it is a problem, no guess.
 *
 * @param most The highest that is possible, in percent.
 * @returns A fraction, at least 0.1.
 * @example
 * readPercent("90%", 250)  // => 0.9
 */
export function readPercent(text: string, most: number): Outcome<number> {
  const [, digits = "", sign] = /^(.*?)\s*(%|percent)?$/i.exec(plainText(text))!;
  const number = readNumber(digits);
  if (!number.ok) return number;
  const { value } = number;
  const fits = (percent: number): boolean => percent >= LEAST_PERCENT && percent <= most;
  if (sign && fits(value)) return answer(value / 100);
  const meant = [value, 100 * value].find(fits);
  return unusable({
    code: sign ? "percent-out-of-range" : "unit-missing",
    path: "",
    message: sign ? `${value} % cannot be right here.` : `"${text}" has no percent sign.`,
    expected: sign ? `${LEAST_PERCENT} to ${most} percent` : "a percent",
    received: text,
    hint: meant === undefined ? "copy the percent from the bag's label" : `write ${shown(meant)}%, if the bag says so`,
  });
}
