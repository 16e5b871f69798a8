import { elementPerForm } from "../element/nutrient.ts";
import { answer, gatherList, type Outcome, unusable } from "../outcome/outcome.ts";
import { NUMBER_PATTERN, plainText, readNumber } from "../quantity/number.ts";
import type { Basis } from "../supply/basis.ts";
import { readRateTarget } from "../supply/read-rates.ts";
import { readTarget } from "../supply/target.ts";
import type { BlendTarget } from "./blend-input.ts";
import type { Direction } from "./engine/problem.ts";

/** A line of a target, taken apart: the plain rate, and how exactly it is meant. */
interface Clause {
  /** `N 100 ppm`, as every target is written. */
  readonly rate: string;
  readonly direction: Direction;
  /** As a share of the rate, or an amount in the line's unit, or the nothing that was said. */
  readonly within?: number;
  readonly withinRate?: string;
  readonly weight?: number;
}

const N = NUMBER_PATTERN;
const WEIGHT = new RegExp(`\\s+weight\\s+(${N})\\s*$`, "i");
const WITHIN = new RegExp(`\\s+within\\s+(${N})\\s*([^\\d\\s].*?)\\s*$`, "i");
const DIRECTION = /^(\S.*?)\s+(at least|at most|about)\s+(.+)$/i;
const SPAN = new RegExp(`^(\\S.*?)\\s+(${N})\\s+to\\s+(${N})\\s*([^\\d\\s].*)$`, "i");

/**
 * Reads what is wanted of a blend, nutrient by nutrient.
 *
 * @param text `N 100 ppm within 5%, Ca at least 80 ppm, Cl at most 50 ppm, K 180 to 220 ppm weight 2`: rates as in any
 *   target, each with `at least`, `at most` or a span, what still counts as met, and a weight beside the others.
 * @param place What it is for, in words: "a can", "a bed".
 * @example
 * readWants("N 100 ppm within 5%", "litre", "a can")  // => [{ nutrient: "N", rate: 100, direction: "about", within: 0.05 }]
 */
export function readWants(text: string, basis: Basis, place: string): Outcome<readonly BlendTarget[]> {
  const lines = plainText(text)
    .split(/[;\n]|,(?!\d)/)
    .map((line) => line.trim())
    .filter((line) => line !== "");
  const clauses = gatherList(lines.map(readClause));
  if (!clauses.ok) return clauses;
  const plain = clauses.value.length > 0 ? clauses.value.map(({ rate }) => rate).join(", ") : text;
  const target = readRateTarget(plain, basis, place);
  if (!target.ok) return target;
  const wants = gatherList(
    target.value.wanted.map((wanted, index): Outcome<BlendTarget> => {
      const { direction, within, withinRate, weight } = clauses.value[index]!;
      const share = withinRate === undefined ? answer(within) : shareOf(withinRate, wanted.rate);
      if (!share.ok) return share;
      return answer({
        ...wanted,
        direction,
        ...(share.value === undefined ? {} : { within: share.value }),
        ...(weight === undefined ? {} : { weight }),
      });
    }),
  );
  return wants.ok ? answer(wants.value, target.cautions, target.working) : wants;
}

function readClause(line: string): Outcome<Clause> {
  let rest = line;
  const weight = WEIGHT.exec(rest);
  if (weight) rest = rest.slice(0, weight.index);
  const within = WITHIN.exec(rest);
  if (within) rest = rest.slice(0, within.index);
  const direction = DIRECTION.exec(rest);
  const side = (direction?.[2]?.toLowerCase().replace(" ", "-") ?? "about") as Direction;
  if (direction) rest = `${direction[1]} ${direction[3]}`;
  const span = SPAN.exec(rest);
  const heavy = weight ? readNumber(weight[1]!) : answer(undefined);
  if (!heavy.ok) return heavy;
  if (heavy.value !== undefined && !(heavy.value > 0)) return unusable(unclear(line, "a weight of more than zero"));
  const said = { direction: side, ...(heavy.value === undefined ? {} : { weight: heavy.value }) };
  if (span) return within || direction ? unusable(unclear(line, "a span by itself")) : readSpan(span, said, line);
  if (!within) return answer({ rate: rest, ...said });
  const width = readNumber(within[1]!);
  if (!width.ok) return width;
  const unit = within[2]!;
  if (unit !== "%") {
    const name = /^\S.*?(?=\s+\d)/.exec(rest)?.[0] ?? rest;
    return answer({ rate: rest, ...said, withinRate: `${name} ${within[1]} ${unit}` });
  }
  return width.value <= 100
    ? answer({ rate: rest, ...said, within: width.value / 100 })
    : unusable(unclear(line, "a tolerance of at most 100 %"));
}

/** `K 180 to 220 ppm` is 200 within a tenth. */
function readSpan(span: RegExpExecArray, said: Pick<Clause, "direction" | "weight">, line: string): Outcome<Clause> {
  const low = readNumber(span[2]!);
  const high = readNumber(span[3]!);
  if (!low.ok) return low;
  if (!high.ok) return high;
  if (!(low.value < high.value)) return unusable(unclear(line, "a span from the lower to the higher rate"));
  const middle = (low.value + high.value) / 2;
  return answer({ rate: `${span[1]} ${middle} ${span[4]}`, ...said, within: (high.value - middle) / middle });
}

/** An amount of tolerance as a share of the rate it belongs to. */
function shareOf(text: string, rate: number): Outcome<number> {
  const read = readTarget(text);
  if (!read.ok) return read;
  const width = read.value.wanted[0]!;
  if (rate > 0) return answer(width.rate / rate);
  return unusable(unclear(text, `a tolerance for a rate above zero, not ${elementPerForm(width.asked.form) * rate}`));
}

function unclear(line: string, expected: string) {
  return {
    code: "target-unclear",
    path: "",
    message: `"${line}" cannot be read as a target.`,
    expected,
    received: line,
    hint: 'write for example "N 100 ppm within 5%", "Ca at least 80 ppm", "K 180 to 220 ppm" or "K 200 ppm weight 2"',
  };
}
