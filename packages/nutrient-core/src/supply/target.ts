import {
  type ContentForm,
  elementPerForm,
  formNamed,
  gramsPerMole,
  type Nutrient,
  nutrientOf,
} from "../element/nutrient.ts";
import { answer, gatherList, type Outcome, unusable } from "../outcome/outcome.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { unknownNutrient } from "../product/read-label.ts";
import { NUMBER_PATTERN, plainText, readNumber } from "../quantity/number.ts";
import { BASIS, type Basis } from "./basis.ts";
import { RATE_UNITS, rateUnitNamed } from "./rate-unit.ts";

/** One line of a target: how much of a nutrient is wanted per unit of the basis. */
export interface Wanted {
  readonly nutrient: Nutrient;
  /** mg/L, g/m2 or g/m3, of the element or nitrogen form. */
  readonly rate: number;
  /** As it was written: the form, and its amount in the basis' rate unit. */
  readonly asked: { readonly form: ContentForm; readonly rate: number };
}

/** What is wanted, all over one and the same basis. */
export interface Target {
  readonly basis: Basis;
  readonly wanted: readonly Wanted[];
}

const NAME = "[A-Za-z][A-Za-z0-9₀-₉-]*(?: [A-Za-z0-9₀-₉-]+)*?";
const LINE = new RegExp(
  `^(?<name>${NAME})(?:\\s*[:=]\\s*|\\s+)(?<digits>${NUMBER_PATTERN})\\s*(?<unit>[^\\d\\s.,].*)$`,
);
/** "150 ppm N", as bulletins also write it. */
const REVERSED = new RegExp(
  `^(?<digits>${NUMBER_PATTERN})\\s*(?<unit>[^\\d\\s.,].*?)\\s+(?:of\\s+)?(?<name>[A-Za-z][A-Za-z0-9₀-₉-]*)$`,
);

/**
 * Reads a target such as `N 150 ppm, K2O 200 ppm` or `P2O5 1 lb/1000 sqft`.
 *
 * @param text Nutrients (element, oxide, ion or nitrogen form), each with a number and a rate unit, parted by commas.
 * @returns Rates of the elements on one basis; the working shows each conversion from an oxide or a mole.
 * @example
 * readTarget("K2O 200 ppm")  // => { basis: "litre", wanted: [{ nutrient: "K", rate: 166.03... }] }
 */
export function readTarget(text: string): Outcome<Target> {
  const lines = plainText(text)
    .split(/[;\n]|,(?!\d)/)
    .map((line) => line.trim())
    .filter((line) => line !== "");
  if (lines.length === 0) return unusable(unreadable(text));
  const read = gatherList(lines.map((line) => readLine(line, text)));
  if (!read.ok) return read;
  const bases = [...new Set(read.value.map(({ basis }) => basis))];
  if (bases.length > 1) {
    return unusable({
      code: "target-mixed-basis",
      path: "",
      message: `"${text}" mixes amounts per litre, per area or per volume of mix.`,
      expected: "one kind of rate for all nutrients of a target",
      received: text,
      hint: "give each kind of rate a target of its own",
    });
  }
  const wanted = read.value.map(({ wanted: line }) => line);
  const twice = wanted.find((line, index) => wanted.findIndex(({ nutrient }) => nutrient === line.nutrient) < index);
  if (twice) {
    return unusable({
      code: "target-nutrient-twice",
      path: "",
      message: `${twice.nutrient} stands twice in "${text}".`,
      expected: "each nutrient once",
      received: text,
      hint: "an element and its oxide are the same nutrient: keep one of the two",
    });
  }
  return answer({ basis: bases[0]!, wanted }, read.cautions, read.working);
}

function readLine(line: string, text: string): Outcome<{ basis: Basis; wanted: Wanted }> {
  const groups = (LINE.exec(line) ?? REVERSED.exec(line))?.groups;
  if (!groups) return unusable(/\d\s*$/.test(line) ? withoutUnit(line) : unreadable(line));
  const { name, digits, unit: unitText } = groups as Readonly<Record<"name" | "digits" | "unit", string>>;
  const form = formNamed(name);
  if (!form) return unusable(unknownNutrient(name, text));
  const number = readNumber(digits);
  if (!number.ok) return number;
  const unit = rateUnitNamed(unitText);
  if (!unit) {
    return unusable({
      code: "rate-unit-unknown",
      path: "",
      message: `"${unitText}" is not a unit for a target.`,
      expected: `one of ${RATE_UNITS.map(({ shown }) => shown).join(", ")}`,
      received: line,
      hint: 'write for example "N 150 ppm", "P2O5 5 g/m2" or "K2O 2 lb/1000 sqft"',
    });
  }
  // Moles count the form that is named: 1 mmol/L of NO3 and of N are the same nitrogen.
  const perUnit = unit.perMole ? unit.factor * gramsPerMole(form) : unit.factor;
  const asked = number.value * perUnit;
  const factor = elementPerForm(form);
  const nutrient = nutrientOf(form);
  const rate = asked * factor;
  const { rateUnit } = BASIS[unit.basis];
  const working: WorkingLine[] = [];
  if (perUnit !== 1) {
    working.push({
      label: `${form} wanted`,
      expression: unit.perMole
        ? `${term(number.value)} * ${term(unit.factor)} * ${term(gramsPerMole(form))} ${rateUnit}`
        : `${term(number.value)} * ${unit.expression}`,
      value: asked,
      unit: rateUnit,
      source: unit.perMole ? "ciaaw-2021" : "nist-handbook-44",
    });
  }
  if (factor !== 1) {
    working.push({
      label: `${form} as ${nutrient}`,
      expression: `${term(asked)} ${rateUnit} * ${term(factor)}`,
      value: rate,
      unit: rateUnit,
      source: "ciaaw-2021",
    });
  }
  return answer({ basis: unit.basis, wanted: { nutrient, rate, asked: { form, rate: asked } } }, [], working);
}

function withoutUnit(line: string) {
  return {
    code: "unit-missing",
    path: "",
    message: `"${line}" has no unit.`,
    expected: "a nutrient, a number and a unit, such as N 150 ppm",
    received: line,
    hint: `write "${line} ppm" for a can, or "${line} g/m2" for a bed`,
  };
}

function unreadable(text: string) {
  return {
    code: "target-unreadable",
    path: "",
    message: `"${text}" is not a target.`,
    expected: "a nutrient, a number and a unit, such as N 150 ppm",
    received: text,
    hint: 'write for example "N 150 ppm, K2O 200 ppm"; several nutrients are parted by commas',
  };
}
