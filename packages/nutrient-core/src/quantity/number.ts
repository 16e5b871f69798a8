import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Problem } from "../outcome/problem.ts";

const VULGAR: Readonly<Record<string, string>> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** How a plain number may be written, for use inside larger patterns. No sign: a negative amount is caught by name. */
export const NUMBER_PATTERN: string = String.raw`(?:\d+\s+\d+\s*/\s*\d+|\d+\s*/\s*\d+|(?:\d[\d,_]*(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)`;

/** A number inside an expression: there, `3/4` is a division, which the arithmetic reader orders among the others. */
export const TERM_PATTERN: string = String.raw`(?:\d+\s+\d+\s*/\s*\d+|(?:\d[\d,_]*(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)`;

/** Replaces typographic fractions and signs by the letters a keyboard has: `1½` becomes `1 1/2`, `×` becomes `x`. */
export function plainText(text: string): string {
  return text
    .replace(
      /(\d?)([¼½¾⅓⅔⅛⅜⅝⅞])/g,
      (_, digit: string, fraction: string) => `${digit}${digit ? " " : ""}${VULGAR[fraction]}`,
    )
    .replace(/×/g, "x")
    .replace(/[−–]/g, "-")
    .replace(/[\u00a0\u2009\u202f]/g, " ")
    .trim();
}

/**
 * Reads a number as people write it: `9`, `0.5`, `.5`, `1,5` (decimal comma), `3/4`, `1 1/2`, `1,200.5`, `2e3`.
 *
 * A comma before exactly three digits (`1,500`) could mean one and a half or fifteen hundred: that is a problem, not a guess.
 *
 * @example
 * readNumber("1 1/2")  // => 1.5
 */
export function readNumber(text: string): Outcome<number> {
  const written = plainText(text);
  const mixed = /^(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)$/.exec(written);
  if (mixed) {
    const [, whole = "0", upper, lower] = mixed;
    if (Number(lower) === 0)
      return unusable(notNumber(text, "a fraction over something other than zero", "write a number such as 0.75"));
    return answer(Number(whole) + Number(upper) / Number(lower));
  }
  if (/^\d{1,3}(,\d{3})+$/.test(written)) {
    const [head, ...tail] = written.split(",");
    return unusable({
      code: "number-ambiguous",
      path: "",
      message: `"${text}" can be read in two ways.`,
      expected: "a number without a comma before three digits",
      received: text,
      hint: `write ${head}${tail.join("")} or ${head}.${tail.join("")}`,
    });
  }
  const digits = /^\d{1,3}(,\d{3})+\.\d*$/.test(written)
    ? written.replace(/,/g, "")
    : written.replace(/^(\d+),(\d+)$/, "$1.$2");
  const clean = digits.replace(/(\d)_(?=\d)/g, "$1");
  if (!/^(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/.test(clean)) {
    return unusable(notNumber(text, "a plain number", "write a number such as 9, 0.5, 3/4 or 1 1/2"));
  }
  const value = Number(clean);
  return isOrdinary(value) ? answer(value) : unusable(notOrdinary(text));
}

/** Nothing in a shed or on a farm is larger than a million million of its unit, or smaller than its inverse. */
const LARGEST = 1e12;

/** Whether a number is nothing, or of a size at which arithmetic means something. */
export function isOrdinary(value: number): boolean {
  const size = Math.abs(value);
  return size === 0 || (size >= 1 / LARGEST && size <= LARGEST);
}

/** The problem of a number that is far too large or too small to mean anything. */
export function notOrdinary(text: string): Problem {
  return notNumber(shortened(text), "a number of ordinary size", "check the number and its unit");
}

/** A text cut to what a message can show. */
export function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

function notNumber(text: string, expected: string, hint: string) {
  return { code: "number-unreadable", path: "", message: `"${text}" is not a number.`, expected, received: text, hint };
}
