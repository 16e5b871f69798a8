import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { plainText, readNumber } from "../quantity/number.ts";

/** No soil that anything grows in lies outside these (common practice, no source). */
const LOWEST_PH = 3;
const HIGHEST_PH = 10;

/**
 * Reads a pH.
 *
 * @param text `5.6`, `5,6` or `pH 5.6`; 3 to 10.
 * @example
 * readPh("pH 5.6")  // => 5.6
 */
export function readPh(text: string): Outcome<number> {
  const number = readNumber(plainText(text).replace(/^pH\s*/i, ""));
  const value = number.ok ? number.value : Number.NaN;
  if (value >= LOWEST_PH && value <= HIGHEST_PH) return answer(value);
  return unusable({
    code: number.ok ? "ph-out-of-range" : "ph-unreadable",
    path: "",
    message: number.ok ? `No soil has a pH of ${value}.` : `"${text}" is not a pH.`,
    expected: `a pH from ${LOWEST_PH} to ${HIGHEST_PH}`,
    received: text === "" ? "nothing" : text,
    hint: "write the pH as a soil test says it, such as 5.6",
  });
}
