import { answer, gatherList, type Outcome, unusable } from "../outcome/outcome.ts";
import { shown } from "../outcome/sentence.ts";
import { NUMBER_PATTERN, plainText, readNumber } from "../quantity/number.ts";
import { readPercent } from "./read-percent.ts";
import type { Reading } from "./table.ts";

/** How much of a ground lime works in the first year, as a fraction. */
export interface Fineness extends Reading {
  /** Null where the grower gave the efficiency itself. */
  readonly source: string | null;
}

/** What part of each sieve class counts; what is coarser than all of them does not. Meshes to the inch. */
interface Scheme {
  readonly source: string;
  readonly efficiency: Readonly<Record<string, number>>;
}

/** The schemes differ by authority: 20-60 mesh counts 60 % in one and 40 % in another, so none is mixed with another. */
const SCHEMES: readonly Scheme[] = [
  { source: "bc-limestone-637200", efficiency: { "through 60": 1, "20-60": 0.6, "8-20": 0.2 } },
  { source: "cornell-cca-lime", efficiency: { "through 100": 1, "60-100": 0.8, "20-60": 0.4 } },
  { source: "cornell-afs-7", efficiency: { "through 100": 1, "20-100": 0.6 } },
];

/** Of what works less, so much would go on that its coarse part limes for years (common practice, no source). */
const LEAST_EFFICIENCY = 0.1;

const CLASS = new RegExp(
  `^(?:(?:through|under|passing|finer than|<)\\s*(\\d+)|(\\d+)\\s*(?:-|to)\\s*(\\d+))\\s*(?:mesh)?\\s*:?\\s+(${NUMBER_PATTERN})\\s*%?$`,
  "i",
);

/**
 * Reads how finely a lime is ground.
 *
 * @param text The part that works, `94%`, or the percent by mass in each sieve class of one published scheme:
 *   `through 60 mesh 90, 20-60 mesh 6, 8-20 mesh 4`.
 * @returns The efficiency, 0.1 to 1.
 * @example
 * readFineness("through 60 mesh 90, 20-60 mesh 6, 8-20 mesh 4")  // => { value: 0.944, source: "bc-limestone-637200" }
 */
export function readFineness(text: string): Outcome<Fineness> {
  const written = plainText(text);
  if (/^[\d.,]+\s*%?$/.test(written)) {
    const share = readPercent(written, 100);
    return share.ok ? answer({ value: share.value, expression: String(share.value), source: null }) : share;
  }
  const classes = gatherList(written.split(/,\s+|;/).map((piece) => readClass(piece.trim(), text)));
  if (!classes.ok) return classes;
  const names = classes.value.map(({ name }) => name);
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice) return unusable(unreadable(text, `"${twice} mesh" stands in it twice`));
  const whole = classes.value.reduce((sum, { percent }) => sum + percent, 0);
  // Printed percents are rounded: a sum of 100.4 is still the whole.
  if (whole > 100.5) return unusable(unreadable(text, `its classes make ${whole} %, more than the whole`));
  const fitting = SCHEMES.filter(({ efficiency }) => names.every((name) => Object.hasOwn(efficiency, name)));
  const readings = fitting.map((scheme) => efficiencyBy(scheme, classes.value));
  const [first, ...others] = readings;
  if (!first) return unusable(unreadable(text, "its classes are not those of one published scheme"));
  if (others.some(({ value }) => value !== first.value))
    return unusable(unreadable(text, "two published schemes count these classes differently"));
  if (first.value < LEAST_EFFICIENCY)
    return unusable(unreadable(text, `only ${shown(100 * first.value)} % of it is fine enough to work`));
  return answer(first);
}

interface SieveClass {
  readonly name: string;
  readonly percent: number;
}

function readClass(piece: string, text: string): Outcome<SieveClass> {
  const match = CLASS.exec(piece);
  if (!match) return unusable(unreadable(text, `"${piece}" is no sieve class with its percent`));
  const [, through, low, high, digits = ""] = match;
  const percent = readNumber(digits);
  if (!percent.ok) return percent;
  return answer({ name: through ? `through ${through}` : `${low}-${high}`, percent: percent.value });
}

function efficiencyBy({ source, efficiency }: Scheme, classes: readonly SieveClass[]): Fineness {
  return {
    value: classes.reduce((sum, { name, percent }) => sum + percent * efficiency[name]!, 0) / 100,
    expression: `(${classes.map(({ name, percent }) => `${percent} * ${efficiency[name]}`).join(" + ")}) / 100`,
    source,
  };
}

function unreadable(text: string, reason: string) {
  return {
    code: "fineness-unreadable",
    path: "",
    message: `"${text}" is not a fineness: ${reason}.`,
    expected: `a percent, or the classes of one scheme: ${SCHEMES.map(({ efficiency }) => Object.keys(efficiency).join(", ")).join("; or ")}`,
    received: text,
    hint: 'write for example "94%" or "through 60 mesh 90, 20-60 mesh 6, 8-20 mesh 4"',
  };
}
