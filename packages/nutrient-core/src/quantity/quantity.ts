import { type Caution, type CautionKind, raise } from "../outcome/caution.ts";
import { type Answer, answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Problem } from "../outcome/problem.ts";
import { type Dimension, KEPT_IN, UNITS, type UnitDefinition } from "./definitions.ts";
import { isOrdinary, NUMBER_PATTERN, notOrdinary, plainText, readNumber, shortened } from "./number.ts";
import { nearestUnitNames, unitNamed } from "./unit-name.ts";

/** A measured amount: the value is in the dimension's kept unit (metre, square metre, litre, gram, day). */
export interface Quantity {
  readonly dimension: Dimension;
  readonly value: number;
}

/** Reads a quantity's text. The plain reader takes one number and unit; the expression reader takes arithmetic too. */
export type QuantityReader = (text: string) => Outcome<Quantity>;

/** Raised when a bare name that countries share was read as the US measure. */
export const measureReadAsUs: CautionKind<{
  readonly written: string;
  readonly meant: string;
  readonly size: string;
  readonly others: readonly string[];
}> = {
  code: "measure-read-as-us",
  severity: "note",
  source: "nist-handbook-44",
  sentence: ({ written, meant, size, others }) =>
    `"${written}" was read as the ${meant} (${size}); write ${others.map((name) => `"${name}"`).join(" or ")} for ${others.length > 1 ? "another" : "the other"}.`,
};

/** The note that belongs to a unit whose bare name was assumed to be the US one. */
export function assumedUnitNote(written: string, unit: UnitDefinition): Caution {
  const size =
    unit.dimension === "volume" && unit.factor < 1
      ? `${round(unit.factor * 1000)} mL`
      : `${round(unit.factor)} ${KEPT_IN[unit.dimension]}`;
  const [word] = unit.shared?.names ?? [written];
  const others = UNITS.filter((other) => other !== unit && other.shared?.names[0] === word).map(({ name }) => name);
  return raise(measureReadAsUs, { written, meant: unit.name, size, others });
}

const round = (value: number): number => Number(value.toPrecision(4));

/** No quantity needs more letters; a longer text is a mistake. */
export const LONGEST_TEXT = 300;

const LITERAL = new RegExp(`^(${NUMBER_PATTERN})\\s*([^\\d\\s+*/()^].*)$`);

/**
 * Whether the text is one number and one unit, the form that needs no expression reader.
 *
 * @example
 * isPlainQuantity("9 L")  // => true
 */
export function isPlainQuantity(text: string): boolean {
  const match = LITERAL.exec(plainText(text));
  return match !== null && unitNamed(match[2]!) !== undefined;
}

/**
 * Reads one number and one unit: `9 L`, `3/4 tsp`, `1 imperial gallon`, `2 cu ft`, `1½ cups`.
 *
 * @param text A quantity as written; must be more than nothing.
 * @returns The quantity in the kept unit, with a note where a bare shared name was read as the US measure.
 * @example
 * readPlainQuantity("1 imperial gallon")  // => { dimension: "volume", value: 4.54609 }
 */
export const readPlainQuantity: QuantityReader = (text) => {
  const written = plainText(text);
  if (written === "") return unusable(unreadable(text, "nothing was written"));
  if (written.length > LONGEST_TEXT) return unusable(unreadable(shortened(text), "it is far too long"));
  if (/^-/.test(written)) return unusable(notPositive(text));
  const bare = new RegExp(`^${NUMBER_PATTERN}$`).test(written);
  if (bare) {
    return unusable({
      code: "unit-missing",
      path: "",
      message: `"${text}" has no unit.`,
      expected: "a number with its unit",
      received: text,
      hint: `write the unit too, such as "${text.trim()} L", "${text.trim()} g" or "${text.trim()} cm"`,
    });
  }
  const match = LITERAL.exec(written);
  if (!match) return unusable(unreadable(text, "it does not begin with a number and a unit"));
  const [, digits, name] = match as unknown as [string, string, string];
  const named = unitNamed(name);
  if (!named) return unusable(unknownUnit(name, text));
  const number = readNumber(digits);
  if (!number.ok) return number;
  if (!(number.value > 0)) return unusable(notPositive(text));
  if (!isOrdinary(number.value * named.unit.factor)) return unusable(notOrdinary(text));
  const notes = named.assumed ? [assumedUnitNote(name.trim(), named.unit)] : [];
  return answer({ dimension: named.unit.dimension, value: number.value * named.unit.factor }, notes);
};

/** Holds a quantity to the dimension that is needed here; `what` says what the quantity is for. */
export function ofDimension(outcome: Outcome<Quantity>, dimension: Dimension, text: string): Outcome<number> {
  if (!outcome.ok) return { ...outcome, problems: outcome.problems.map((problem) => nameUnits(problem, dimension)) };
  if (outcome.value.dimension !== dimension) {
    return unusable({
      code: "dimension-mismatch",
      path: "",
      message: `"${text}" is ${article(outcome.value.dimension)}, but ${article(dimension)} is needed here.`,
      expected: `${article(dimension)}, such as ${EXAMPLES[dimension]}`,
      received: text,
      hint: `write ${article(dimension)}, such as ${EXAMPLES[dimension]}`,
    });
  }
  const { value, cautions, working } = outcome as Answer<Quantity>;
  return answer(value.value, cautions, working);
}

const EXAMPLES: Readonly<Record<Dimension, string>> = {
  length: "30 cm or 12 in",
  area: "3 m2, 1.2 m * 2.4 m or 4 ft x 8 ft",
  volume: "9 L, 2 US gal or 2 cu ft",
  mass: "500 g or 2 lb",
  time: "14 days",
};

/** Of a number without a unit: which units would do here. */
function nameUnits(problem: Problem, dimension: Dimension): Problem {
  if (problem.code !== "unit-missing") return problem;
  return {
    ...problem,
    expected: `${article(dimension)}, such as ${EXAMPLES[dimension]}`,
    hint: `write the unit too, such as "${problem.received.trim()} ${UNITS_AS_WRITTEN[dimension].join(`" or "${problem.received.trim()} `)}"`,
  };
}

const UNITS_AS_WRITTEN: Readonly<Record<Dimension, readonly string[]>> = {
  length: ["cm", "in"],
  area: ["m2", "sq ft"],
  volume: ["L", "US gal"],
  mass: ["g", "oz"],
  time: ["days", "weeks"],
};

const article = (dimension: Dimension): string => (dimension === "area" ? "an area" : `a ${dimension}`);

/** The problem of a text that is no quantity at all. */
export function unreadable(text: string, reason: string): Problem {
  return {
    code: "quantity-unreadable",
    path: "",
    message: `"${text}" is not a quantity: ${reason}.`,
    expected: "a number and a unit, or an expression of them",
    received: text,
    hint: 'write for example "9 L", "2 * 10 L", "4 ft x 8 ft" or "3/4 tsp"',
  };
}

/** The problem of an amount that is zero or less. */
export function notPositive(text: string): Problem {
  return {
    code: "not-positive",
    path: "",
    message: `"${text}" is not more than zero.`,
    expected: "an amount of more than zero",
    received: text,
    hint: "write an amount of more than zero",
  };
}

/** The problem of a unit nobody knows, with the nearest known names. */
export function unknownUnit(name: string, text: string): Problem {
  // A lone sign is no slip of a longer name.
  const near = /^[a-zµ]{2}/i.test(name) ? nearestUnitNames(name) : [];
  return {
    code: "unit-unknown",
    path: "",
    message: `"${name}" is not a unit that is known here.`,
    expected: "a unit such as L, mL, US gal, imperial pint, g, kg, lb, oz, m, cm, ft, in, m2 or sq ft",
    received: text,
    hint:
      near.length > 0
        ? `did you mean ${near.join(" or ")}?`
        : "write the unit's usual name, such as L, kg, cm or sq ft",
  };
}
