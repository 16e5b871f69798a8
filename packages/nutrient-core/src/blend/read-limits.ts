import { type ContentForm, elementPerForm, formNamed, nutrientOf } from "../element/nutrient.ts";
import { answer, gatherList, type Outcome, unusable } from "../outcome/outcome.ts";
import { unknownNutrient } from "../product/read-label.ts";
import { NUMBER_PATTERN, plainText, readNumber } from "../quantity/number.ts";
import type { Basis } from "../supply/basis.ts";
import { readTarget } from "../supply/target.ts";
import type { Limit } from "./blend-input.ts";

/** Units of conductivity: how many of each are one mS/cm. */
const CONDUCTIVITY: Readonly<Record<string, number>> = {
  "ms/cm": 1,
  "ds/m": 1,
  "us/cm": 1000,
  "µs/cm": 1000,
  "ms/m": 100,
};

const EC = new RegExp(`^(?:EC|conductivity)\\s+(${NUMBER_PATTERN})\\s*(\\S+)$`, "i");
const SHARE = new RegExp(`^(\\S.*?)\\s+(${NUMBER_PATTERN})\\s*%\\s*of\\s+(\\S.*)$`, "i");

/**
 * Reads ceilings that are kept whatever else is missed.
 *
 * @param text `EC 2 mS/cm, NH4-N 20% of N, Cl 50 ppm, Na 40 ppm, B 0.5 ppm`, parted by commas.
 * @param basis Basis of the blend's target; undefined for a ratio or a grade, which has no rates to limit.
 * @example
 * readLimits("NH4-N 20% of N", "litre")  // => [{ kind: "share", nutrient: "NH4-N", of: "N", share: 0.2 }]
 */
export function readLimits(text: string, basis: Basis | undefined): Outcome<readonly Limit[]> {
  const lines = plainText(text)
    .split(/[;\n]|,(?!\d)/)
    .map((line) => line.trim().replace(/\s+(?:at most|up to)\s+/i, " "))
    .filter((line) => line !== "");
  if (lines.length === 0) return unusable(unclear(text));
  return gatherList(lines.map((line) => readLimit(line, basis)));
}

function readLimit(line: string, basis: Basis | undefined): Outcome<Limit> {
  const ec = EC.exec(line);
  if (ec) return readConductivity(line, ec, basis);
  const share = SHARE.exec(line);
  if (share) return readShare(line, share);
  const read = readTarget(line);
  if (!read.ok) return read;
  if (read.value.basis !== basis) return unusable(wrongBasis(line, basis));
  const { nutrient, rate, asked } = read.value.wanted[0]!;
  return answer({ kind: "nutrient", nutrient, rate, asked }, [], read.working);
}

function readConductivity(line: string, match: RegExpExecArray, basis: Basis | undefined): Outcome<Limit> {
  const number = readNumber(match[1]!);
  if (!number.ok) return number;
  const perUnit = CONDUCTIVITY[match[2]!.toLowerCase().replace("μ", "µ")];
  if (perUnit === undefined || !(number.value > 0)) {
    return unusable({ ...unclear(line), expected: "a conductivity above zero in mS/cm, dS/m or uS/cm" });
  }
  if (basis !== "litre") return unusable(wrongBasis(line, basis));
  return answer({ kind: "conductivity", milliSiemensPerCm: number.value / perUnit });
}

function readShare(line: string, match: RegExpExecArray): Outcome<Limit> {
  const [, part, digits, whole] = match as unknown as [string, string, string, string];
  const form = formNamed(part);
  const of = formNamed(whole);
  if (!form) return unusable(unknownNutrient(part, line));
  if (!of) return unusable(unknownNutrient(whole, line));
  const number = readNumber(digits);
  if (!number.ok) return number;
  const share = ((number.value / 100) * elementShare(form)) / elementShare(of);
  return answer({ kind: "share", nutrient: nutrientOf(form), of: nutrientOf(of), share });
}

/** The trade's "ammonium, percent of N" is of its nitrogen, not of the ion. */
const elementShare = (form: ContentForm): number => (nutrientOf(form).endsWith("-N") ? 1 : elementPerForm(form));

function wrongBasis(line: string, basis: Basis | undefined) {
  return {
    code: "limit-basis-mismatch",
    path: "",
    message: basis
      ? `"${line}" is not a limit for this kind of target.`
      : `"${line}" needs a target in water, on an area or in a mix: a batch has no rates.`,
    expected: basis ? "limits in the units of the target" : "a share, such as NH4-N 20% of N",
    received: line,
    hint: 'write limits in the target\'s units, such as "Cl 50 ppm" for a can; EC is for water only',
  };
}

function unclear(line: string) {
  return {
    code: "limit-unreadable",
    path: "",
    message: `"${line}" is not a limit.`,
    expected: "a nutrient, a share or an EC with its most",
    received: line,
    hint: 'write for example "EC 2 mS/cm, NH4-N 20% of N, Cl 50 ppm"',
  };
}
