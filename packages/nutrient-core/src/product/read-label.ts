import { type Content, percentOf } from "../element/content.ts";
import { type ContentForm, formNamed } from "../element/nutrient.ts";
import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Problem } from "../outcome/problem.ts";
import { NUMBER_PATTERN, plainText, readNumber } from "../quantity/number.ts";

/** Whether a label's P and K numbers are oxides (P2O5, K2O) or the elements: bags of different countries differ. */
export type LabelBasis = "oxide" | "element";

/** Whether a label's percentages are grams in 100 g, or grams in 100 mL (some liquids). */
export type LabelMeasure = "mass" | "volume";

export interface LabelReading {
  readonly basis: LabelBasis;
  readonly measure: LabelMeasure;
  /** Needed where the percentages are by volume; 1 leaves them as printed, grams in a millilitre. */
  readonly densityKilogramsPerLitre?: number;
}

const GRADE = /^(\d+(?:[.,]\d+)?)\s*-\s*(\d+(?:[.,]\d+)?)\s*-\s*(\d+(?:[.,]\d+)?)(?![\d.-]|\s*-)/;

/** Whether a text sets out like a label: a grade, or a nutrient and its number. */
export function looksLikeLabel(text: string): boolean {
  return (
    /^\s*\d+([.,]\d+)?\s*(-|%|\s+[A-Za-z(])/.test(plainText(text)) ||
    /^[A-Za-z][A-Za-z0-9₀-₉-]*\s+\d/.test(plainText(text))
  );
}

/**
 * Reads a guaranteed analysis: a grade, with further lines behind it, such as `15.5-0-0 + 19 Ca`,
 * `20-20-20 + 2 MgO, Fe 0.1` or `N 12, P2O5 4, K2O 8`.
 *
 * The three numbers of a grade are percent N, P2O5 and K2O; on the element basis N, P and K.
 * All other names say themselves what they are. Nothing is said here of whether the numbers make sense
 * (the label room judges that): only amounts over the whole are refused.
 *
 * @returns The shares by mass, each in its printed form.
 * @example
 * readLabel("5-10-10", { basis: "oxide", measure: "mass" })  // => [{ form: "N", massFraction: 0.05 }, { form: "P2O5", massFraction: 0.1 }, { form: "K2O", massFraction: 0.1 }]
 */
export function readLabel(text: string, reading: LabelReading): Outcome<readonly Content[]> {
  const written = plainText(text);
  const grade = GRADE.exec(written);
  const contents: Content[] = [];
  let rest = written;
  if (grade) {
    const forms: readonly ContentForm[] = reading.basis === "oxide" ? ["N", "P2O5", "K2O"] : ["N", "P", "K"];
    forms.forEach((form, index) => {
      contents.push(percentOf(form, Number(grade[index + 1]!.replace(",", "."))));
    });
    rest = written.slice(grade[0].length);
  } else if (/^\d+([.,]\d+)?\s*-/.test(written)) {
    return unusable(gradeProblem(text));
  }
  const problems: Problem[] = [];
  for (const line of rest.split(/[+;\n]|,(?!\d)/)) {
    if (line.trim() === "") continue;
    const read = readLine(line.trim(), text);
    if (read.ok) contents.push(read.value);
    else problems.push(...read.problems);
  }
  if (problems.length > 0) return unusable(...problems);
  if (contents.length === 0) return unusable(gradeProblem(text));
  return byMass(contents, reading, text);
}

const LINE = new RegExp(
  `^(?:(${NUMBER_PATTERN})\\s*%?\\s*([A-Za-z].*?)|([A-Za-z][^%]*?)[\\s:]+(${NUMBER_PATTERN})\\s*%?)$`,
);

function readLine(line: string, text: string): Outcome<Content> {
  const match = LINE.exec(line);
  const name = match?.[2] ?? match?.[3];
  const digits = match?.[1] ?? match?.[4];
  if (!name || !digits) {
    return unusable({
      code: "label-line-unreadable",
      path: "",
      message: `"${line}" in the label "${text}" is not a nutrient with its percentage.`,
      expected: "a number and a nutrient, such as 19 Ca or 2 MgO",
      received: line,
      hint: 'write further lines behind a plus sign: "15.5-0-0 + 19 Ca + 0.3 B"',
    });
  }
  const form = formNamed(name);
  if (!form) return unusable(unknownNutrient(name, text));
  const number = readNumber(digits);
  if (!number.ok) return number;
  return answer(percentOf(form, number.value));
}

function byMass(contents: readonly Content[], reading: LabelReading, text: string): Outcome<readonly Content[]> {
  if (reading.measure === "volume") {
    const density = reading.densityKilogramsPerLitre;
    if (density === undefined) {
      return unusable({
        code: "density-missing",
        path: "",
        message: `The percentages of "${text}" are by volume, so the liquid's density is needed to know its mass.`,
        expected: "a density in kg/L",
        received: "no density",
        hint: "give the density from the label, or weigh a litre: --density '1.2 kg/L'",
      });
    }
    // Grams in 100 mL, over the grams that 100 mL weigh.
    return withinWhole(
      contents.map(({ form, massFraction }) => ({ form, massFraction: massFraction / density })),
      text,
    );
  }
  return withinWhole(contents, text);
}

function withinWhole(contents: readonly Content[], text: string): Outcome<readonly Content[]> {
  const over = contents.find(({ massFraction }) => massFraction > 1);
  if (!over) return answer(contents);
  return unusable({
    code: "label-over-whole",
    path: "",
    message: `The label "${text}" says ${Number((over.massFraction * 100).toPrecision(6))} % ${over.form}: no product holds more than 100 % of anything.`,
    expected: "percentages of at most 100",
    received: text,
    hint: "check the number against the bag; grams per kilogram are ten times the percentage",
  });
}

/** The problem of a nutrient name that nobody knows. */
export function unknownNutrient(name: string, text: string): Problem {
  return {
    code: "nutrient-unknown",
    path: "",
    message: `"${name}" is not a nutrient that is known here.`,
    expected: "N, P, K, Ca, Mg, S, Fe, Mn, Zn, Cu, B, Mo, Cl, Na, Si or an oxide such as P2O5, K2O, CaO, MgO",
    received: text,
    hint: "write the element's symbol, the oxide's formula, or its English name",
  };
}

function gradeProblem(text: string): Problem {
  return {
    code: "grade-unreadable",
    path: "",
    message: `"${text}" is not a grade.`,
    expected: "three numbers for N, P2O5 and K2O, such as 5-10-10",
    received: text,
    hint: 'write three numbers with hyphens, and further nutrients behind a plus sign: "15.5-0-0 + 19 Ca"',
  };
}
