import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Problem } from "../outcome/problem.ts";
import { ATOMIC_WEIGHT, type ElementSymbol, isElementSymbol } from "./atomic-weight.ts";

/** How many atoms of each element one formula unit holds. */
export type AtomCounts = Readonly<Partial<Record<ElementSymbol, number>>>;

/**
 * Reads a chemical formula as chemists write it, hydrates included.
 *
 * `·`, `.` and `*` all part the pieces of a double salt or hydrate, and a number in front of a
 * piece multiplies the whole piece: `MgSO4.7H2O` is one MgSO4 and seven H2O, never 0.7 of anything.
 *
 * @param text A formula such as `KNO3`, `Ca(NO3)2·4H2O` or `5Ca(NO3)2·NH4NO3·10H2O`.
 * @returns The atoms of one formula unit.
 * @example
 * readFormula("MgSO4·7H2O")  // => { Mg: 1, S: 1, O: 11, H: 14 }
 */
export function readFormula(text: string): Outcome<AtomCounts> {
  const written = text.replace(/[₀-₉]/g, (digit) => String(digit.charCodeAt(0) - 0x2080)).replace(/\s+/g, "");
  if (written === "" || written.length > 200) return unusable(problem(text, "it is empty or very long"));
  const counts: Partial<Record<ElementSymbol, number>> = {};
  for (const piece of written.split(/[·•∙⋅.*]/)) {
    const match = /^(\d{0,3})(.+)$/.exec(piece);
    if (!match) return unusable(problem(text, "a piece between two dots is empty"));
    const times = match[1] === "" ? 1 : Number(match[1]);
    const read = readGroup(match[2]!, text);
    if (!read.ok) return read;
    for (const [symbol, count] of Object.entries(read.value) as [ElementSymbol, number][]) {
      counts[symbol] = (counts[symbol] ?? 0) + times * count;
    }
  }
  return answer(counts);
}

const TOKEN = /([A-Z][a-z]?)(\d*)|([([])|([)\]])(\d*)/y;

function readGroup(group: string, whole: string): Outcome<AtomCounts> {
  type Counts = Partial<Record<ElementSymbol, number>>;
  const open: Counts[] = [{}];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < group.length) {
    const start = TOKEN.lastIndex;
    const token = TOKEN.exec(group);
    if (!token) return unusable(problem(whole, `"${group.slice(start)}" cannot be read`));
    const [, symbol, count, opening, , closingCount] = token;
    if (opening) open.push({});
    else if (symbol) {
      if (!isElementSymbol(symbol)) return unusable(problem(whole, `"${symbol}" is not an element with a weight here`));
      const top = open.at(-1)!;
      top[symbol] = (top[symbol] ?? 0) + (count === "" ? 1 : Number(count));
    } else {
      const inner = open.pop()!;
      const outer = open.at(-1);
      if (!outer) return unusable(problem(whole, "a bracket closes that never opened"));
      const times = closingCount === "" ? 1 : Number(closingCount);
      for (const [name, atoms] of Object.entries(inner) as [ElementSymbol, number][]) {
        outer[name] = (outer[name] ?? 0) + times * atoms;
      }
    }
  }
  const [counts, ...unclosed] = open;
  if (unclosed.length > 0) return unusable(problem(whole, "a bracket opens that never closes"));
  if (Object.values(counts!).some((atoms) => !(atoms > 0)))
    return unusable(problem(whole, "an element stands there zero times"));
  return answer(counts!);
}

/**
 * The molar mass of one formula unit, in g/mol.
 *
 * @example
 * molarMass({ K: 1, N: 1, O: 3 })  // => 101.102
 */
export function molarMass(counts: AtomCounts): number {
  return (Object.entries(counts) as [ElementSymbol, number][]).reduce(
    (sum, [symbol, atoms]) => sum + atoms * ATOMIC_WEIGHT[symbol],
    0,
  );
}

/**
 * The mass fraction of every element in a pure substance, 0 to 1.
 *
 * @example
 * massFractions({ K: 1, Cl: 1 }).K  // => 0.5244674...
 */
export function massFractions(counts: AtomCounts): Readonly<Partial<Record<ElementSymbol, number>>> {
  const whole = molarMass(counts);
  const parts = (Object.entries(counts) as [ElementSymbol, number][]).map(
    ([symbol, atoms]) => [symbol, (atoms * ATOMIC_WEIGHT[symbol]) / whole] as const,
  );
  return Object.fromEntries(parts);
}

function problem(text: string, reason: string): Problem {
  return {
    code: "formula-unreadable",
    path: "",
    message: `"${text}" is not a chemical formula: ${reason}.`,
    expected: "a formula such as KNO3, Ca(NO3)2·4H2O or MgSO4·7H2O",
    received: text,
    hint: "write element symbols with a capital first letter, numbers behind them, and a dot before the water of a hydrate",
  };
}
