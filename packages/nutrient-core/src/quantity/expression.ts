import { create, type MathNode, parseDependencies } from "mathjs/number";
import type { Caution } from "../outcome/caution.ts";
import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Problem } from "../outcome/problem.ts";
import { type Dimension, UNITS, type UnitDefinition } from "./definitions.ts";
import { isOrdinary, notOrdinary, plainText, readNumber, shortened, TERM_PATTERN } from "./number.ts";
import {
  assumedUnitNote,
  isPlainQuantity,
  LONGEST_TEXT,
  notPositive,
  type QuantityReader,
  readPlainQuantity,
  unknownUnit,
  unreadable,
} from "./quantity.ts";
import { unitNamed, unitNames } from "./unit-name.ts";

/**
 * Reads a quantity that may be an expression: `2 * 10 L`, `4 ft x 8 ft`, `1.2 m * 2.4 m * 30 cm`, `1 gal + 2 qt`.
 *
 * mathjs reads the arithmetic (precedence, brackets, `3/4 tsp`); the units are the exact definitions of this
 * library, because the evaluator's own list rounds the acre and mixes metric teaspoons with US cups.
 *
 * @param text A quantity or an expression of quantities with `+ - * / ^ ( )` and `x` for "by"; must be more than nothing.
 * @returns The quantity in metre, square metre, litre, gram or day.
 * @example
 * readQuantity("4 ft x 8 ft")  // => { dimension: "area", value: 2.97289728 }
 */
export const readQuantity: QuantityReader = (text) => {
  if (isPlainQuantity(text)) return readPlainQuantity(text);
  if (text.length > LONGEST_TEXT) return unusable(unreadable(shortened(text), "it is far too long"));
  const tokens = tokenise(text);
  if (!tokens.ok) return tokens;
  const { source, notes, hasUnit } = tokens.value;
  // A bare number or nothing at all has a clearer problem of its own.
  if (!hasUnit) return readPlainQuantity(text);
  let tree: MathNode;
  try {
    tree = math.parse(source);
  } catch {
    return unusable(unreadable(text, "the arithmetic does not read as an expression"));
  }
  const measured = evaluate(tree, text);
  if (!measured.ok) return measured;
  const { value, length, mass, time } = measured.value;
  const dimension = dimensionOf(length, mass, time);
  if (!dimension)
    return unusable(unreadable(text, "its units do not make a length, an area, a volume, a mass or a time"));
  if (!(value > 0)) return unusable(notPositive(text));
  const kept = dimension === "volume" ? value * LITRES_PER_CUBIC_METRE : value;
  return isOrdinary(kept) ? answer({ dimension, value: kept }, notes) : unusable(notOrdinary(text));
};

const LITRES_PER_CUBIC_METRE = 1000;
const math = create(parseDependencies!);

/** A value with the powers of its dimensions; a volume is carried as cubic metres until the end. */
interface Measured {
  readonly value: number;
  readonly length: number;
  readonly mass: number;
  readonly time: number;
}

const POWERS: Readonly<Record<Dimension, Omit<Measured, "value">>> = {
  length: { length: 1, mass: 0, time: 0 },
  area: { length: 2, mass: 0, time: 0 },
  volume: { length: 3, mass: 0, time: 0 },
  mass: { length: 0, mass: 1, time: 0 },
  time: { length: 0, mass: 0, time: 1 },
};

function dimensionOf(length: number, mass: number, time: number): Dimension | undefined {
  return (Object.keys(POWERS) as Dimension[]).find((name) => {
    const powers = POWERS[name];
    return powers.length === length && powers.mass === mass && powers.time === time;
  });
}

interface Tokens {
  readonly source: string;
  readonly notes: readonly Caution[];
  readonly hasUnit: boolean;
}

let pattern: RegExp | undefined;

function tokenPattern(): RegExp {
  const escaped = unitNames().map((name) => name.replace(/[.*+?^${}()|[\]\\]/g, "\\$&").replace(/ /g, "\\s+"));
  pattern ??= new RegExp(
    `(?<number>${TERM_PATTERN})|(?<unit>${escaped.join("|")})(?![a-z])|(?<by>x|by|\\*)(?![a-z])|(?<sign>[-+/^()])|(?<gap>\\s+)|(?<word>[^\\s\\d+*/()^-]+)`,
    "giy",
  );
  pattern.lastIndex = 0;
  return pattern;
}

/** Rewrites the text for the arithmetic reader: plain numbers, one-word unit names, `*` for "by". */
function tokenise(text: string): Outcome<Tokens> {
  const written = plainText(text);
  const matcher = tokenPattern();
  const parts: string[] = [];
  const notes: Caution[] = [];
  const problems: Problem[] = [];
  let hasUnit = false;
  // Where a run of amounts such as "5 ft 6 in" began; it is a sum, and holds together like one number.
  let run = -1;
  let lengthOfRun = 0;
  const endRun = (): void => {
    if (lengthOfRun > 1) {
      parts.splice(run, 0, "(");
      parts.push(")");
    }
    run = -1;
    lengthOfRun = 0;
  };
  let afterUnit = false;
  while (matcher.lastIndex < written.length) {
    const groups = matcher.exec(written)?.groups;
    if (!groups) return unusable(unreadable(text, "it holds a character that has no meaning here"));
    if (groups["gap"]) continue;
    if (groups["number"]) {
      const number = readNumber(groups["number"]);
      if (!number.ok) problems.push(...number.problems);
      else {
        if (afterUnit) parts.push("+");
        else {
          endRun();
          run = parts.length;
        }
        parts.push(String(number.value));
      }
      afterUnit = false;
      continue;
    }
    if (groups["unit"]) {
      const named = unitNamed(groups["unit"]);
      hasUnit = true;
      if (!named) {
        problems.push(unknownUnit(groups["unit"], text));
        continue;
      }
      parts.push(named.unit.id);
      if (named.assumed) notes.push(assumedUnitNote(groups["unit"], named.unit));
      if (run >= 0) lengthOfRun++;
      afterUnit = true;
      continue;
    }
    endRun();
    afterUnit = false;
    if (groups["by"]) parts.push("*");
    else if (groups["sign"]) parts.push(groups["sign"]);
    else if (groups["word"]) problems.push(unknownUnit(groups["word"], text));
  }
  endRun();
  return problems.length > 0 ? unusable(...problems) : answer({ source: parts.join(" "), notes, hasUnit });
}

const BY_ID: ReadonlyMap<string, UnitDefinition> = new Map(UNITS.map((unit) => [unit.id, unit]));

function evaluate(node: MathNode, text: string): Outcome<Measured> {
  if (is(node, "ParenthesisNode")) return evaluate((node as unknown as { content: MathNode }).content, text);
  if (is(node, "ConstantNode"))
    return answer({ value: Number((node as unknown as { value: number }).value), length: 0, mass: 0, time: 0 });
  if (is(node, "SymbolNode")) {
    const unit = BY_ID.get((node as unknown as { name: string }).name);
    if (!unit) return unusable(unreadable(text, "it holds a name that is no unit"));
    const factor = unit.dimension === "volume" ? unit.factor / LITRES_PER_CUBIC_METRE : unit.factor;
    return answer({ value: factor, ...POWERS[unit.dimension] });
  }
  if (!is(node, "OperatorNode")) return unusable(unreadable(text, "only + - * / ^ and brackets are understood"));
  const { op, args } = node as unknown as { op: string; args: MathNode[] };
  const left = evaluate(args[0]!, text);
  if (!left.ok) return left;
  const a = left.value;
  if (args.length === 1) {
    return op === "-" || op === "+"
      ? answer({ ...a, value: op === "-" ? -a.value : a.value })
      : unusable(unreadable(text, `"${op}" is not understood`));
  }
  const right = evaluate(args[1]!, text);
  if (!right.ok) return right;
  return combine(op, a, right.value, text);
}

function combine(op: string, a: Measured, b: Measured, text: string): Outcome<Measured> {
  const alike = a.length === b.length && a.mass === b.mass && a.time === b.time;
  switch (op) {
    case "+":
    case "-":
      if (!alike) return unusable(unreadable(text, "it adds two amounts of different kinds"));
      return answer({ ...a, value: op === "+" ? a.value + b.value : a.value - b.value });
    case "*":
      return answer({
        value: a.value * b.value,
        length: a.length + b.length,
        mass: a.mass + b.mass,
        time: a.time + b.time,
      });
    case "/":
      if (b.value === 0) return unusable(unreadable(text, "it divides by zero"));
      return answer({
        value: a.value / b.value,
        length: a.length - b.length,
        mass: a.mass - b.mass,
        time: a.time - b.time,
      });
    case "^":
      if (b.length !== 0 || b.mass !== 0 || b.time !== 0 || !Number.isInteger(b.value) || Math.abs(b.value) > 3) {
        return unusable(unreadable(text, "only whole powers up to 3 are understood"));
      }
      return answer({
        value: a.value ** b.value,
        length: a.length * b.value,
        mass: a.mass * b.value,
        time: a.time * b.value,
      });
    default:
      return unusable(unreadable(text, `"${op}" is not understood`));
  }
}

const is = (node: MathNode, type: string): boolean => (node as unknown as { type: string }).type === type;
