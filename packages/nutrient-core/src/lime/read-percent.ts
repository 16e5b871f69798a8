import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { plainText, readNumber } from "../quantity/number.ts";

/**
 * Reads a percent with its sign. A bare 0.9 could be a fraction or nine tenths of a percent: it is a problem, no guess.
 *
 * @param most The highest that is possible, in percent.
 * @returns A fraction, more than 0.
 * @example
 * readPercent("90%", 250)  // => 0.9
 */
export function readPercent(text: string, most: number): Outcome<number> {
  const [, digits = "", sign] = /^(.*?)\s*(%|percent)?$/i.exec(plainText(text))!;
  const number = readNumber(digits);
  if (!number.ok) return number;
  if (!sign) {
    return unusable({
      code: "unit-missing",
      path: "",
      message: `"${text}" has no percent sign.`,
      expected: "a percent",
      received: text,
      hint: `write ${number.value}%${number.value < 2 ? ` or ${100 * number.value}%` : ""}`,
    });
  }
  if (number.value > 0 && number.value <= most) return answer(number.value / 100);
  return unusable({
    code: "percent-out-of-range",
    path: "",
    message: `${number.value} % is not possible here.`,
    expected: `more than 0 and at most ${most} percent`,
    received: text,
    hint: "copy the percent from the bag's label",
  });
}
