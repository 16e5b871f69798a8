import { andThen, answer, gatherList, type Outcome, unusable } from "../../outcome/outcome.ts";
import { term } from "../../outcome/working.ts";
import { plainText } from "../../quantity/number.ts";
import { ofDimension, type QuantityReader } from "../../quantity/quantity.ts";
import { type BedShape, bedFill } from "./bed-fill.ts";
import { readClauses, splitClauses } from "./clauses.ts";
import type { Fill } from "./fill.ts";
import { BELIEVABLE, withLentUnits } from "./lent-unit.ts";
import { measuredPotFill, type PotShape, potFillByVolume, potSizesUnusable, tradePotFill } from "./pot-fill.ts";
import { countUnusable, shapeUnknown } from "./problems.ts";
import { ridgeFill } from "./ridge-fill.ts";
import { sizeLast } from "./size-first.ts";
import { gallonCautions, lengthOf, partsOf } from "./sizes.ts";

/** Text and sizes of one fill, read; lengths in metres. */
export interface FillReading {
  readonly text: string;
  /** The text without its count. */
  readonly written: string;
  readonly count: number;
  readonly lengths: readonly number[];
}

const SHAPES: readonly (readonly [
  RegExp,
  BedShape | "round pot" | "square pot" | "fabric pot" | "trough" | "ridge",
])[] = [
  [/^(?:l-|l )(?:shaped )?beds?\b/i, "L"],
  [/^trapezoid(?:al)?(?: beds?)?\b/i, "trapezoid"],
  [/^round(?: beds?)?(?=\s+[\d.])/i, "round"],
  [/^(?:rectangular )?beds?\b/i, "rectangle"],
  [/^square (?:pots?|containers?)\b/i, "square pot"],
  [/^fabric (?:pots?|bags?)\b/i, "fabric pot"],
  [/^(?:round )?(?:pots?|containers?|buckets?)\b/i, "round pot"],
  [/^troughs?\b/i, "trough"],
  [/^ridges?\b/i, "ridge"],
];

const POT_SHAPES: Readonly<Partial<Record<(typeof SHAPES)[number][1], PotShape>>> = {
  "round pot": "round",
  "fabric pot": "round",
  "square pot": "square",
  trough: "trough",
};

const SHAPE_WORDS = [
  "bed",
  "round",
  "L-bed",
  "trapezoid",
  "ridge",
  "pots",
  "square pots",
  "fabric pots",
  "trough",
  "#5 pots",
];

/**
 * Reads what is to be filled.
 *
 * Beds: `bed 1.2 m x 2.4 m x 30 cm` (two sides, depth), `round 60 cm x 45 cm` (diameter, depth),
 * `L-bed 2 m x 3 m x 80 cm x 30 cm` (outer sides, leg width, depth), `trapezoid 2 m x 1.4 m x 3 m x 30 cm` (parallel
 * sides, distance, depth), `ridge 60 cm x 20 cm x 5 m` (base, height, length).
 * Pots: `12 pots 20 L`, `12 pots 30 cm x 24 cm x 28 cm` (top, bottom, height), `12 pots 30 cm x 28 cm` (straight),
 * `square pots`, `fabric pots`, `trough 80 cm x 20 cm x 18 cm`, `12 trade #5 pots`.
 * Clauses: `mound 10 cm [parabola|triangle|trapezoid [crown 60 cm]]`, `depths 28 cm, 31 cm`, `headspace 3 cm`,
 * `drainage 5 cm`, `wood 15 cm`, `plants 45 cm [triangular]`, `rows 60 cm x 40 cm`, `plants 1` (in each pot).
 * A unit at the end of a run of numbers stands for all of them where that is likely (`4 x 8 ft x 12 in`), and pots may
 * be named by their size (`12 5-gallon pots`).
 * A volume alone (`200 L`) is a space of that size, whatever holds it.
 *
 * @param text One line; a whole number in front counts.
 * @param read Reads each quantity.
 * @returns The space with its volume in litres and its area in square metres, each with its arithmetic.
 * @example
 * readFill("12 pots 20 L", readPlainQuantity)  // => { count: 12, volume: { value: 20 } }
 */
export function readFill(text: string, read: QuantityReader): Outcome<Fill> {
  const plain = plainText(text).replace(/\s+/g, " ");
  const whole = read(plain);
  if (whole.ok && whole.value.dimension === "volume") {
    return answer(spaceFill(plain, whole.value.value), whole.cautions);
  }
  return andThen(sizeLast(plain), (written) => readShape(text, written, read));
}

/** Reads a shape's line; `text` is what the grower wrote, `written` the same with its words in the usual order. */
function readShape(text: string, written: string, read: QuantityReader): Outcome<Fill> {
  const counted = /^(\d+)\s+(?=[a-z#])(.*)$/i.exec(written);
  const count = counted ? Number(counted[1]) : 1;
  const rest = counted ? counted[2]! : written;
  if (count === 0) return unusable(countUnusable(text));
  const trade =
    /^(?:trade )?#\s?(\d+) (?:trade )?(?:pots?|containers?)\b(.*)$|^(?:trade )?(?:pots?|containers?) (?:trade )?#\s?(\d+)\b(.*)$/i.exec(
      rest,
    );
  if (trade) {
    const { clauses } = splitClauses(trade[2] ?? trade[4] ?? "");
    return andThen(readClauses(clauses, text, read), (more) =>
      tradePotFill({ text, written: rest, count, lengths: [] }, (trade[1] ?? trade[3])!, more),
    );
  }
  for (const [pattern, shape] of SHAPES) {
    const head = pattern.exec(rest)?.[0];
    if (head === undefined) continue;
    const { sizes, clauses } = splitClauses(rest.slice(head.length));
    const parts = partsOf(sizes, shape);
    const clausesRead = readClauses(clauses, text, read);
    const pot = POT_SHAPES[shape];
    if (pot && parts.length === 1) {
      const size = read(parts[0]!);
      if (size.ok && size.value.dimension === "length") return potSizesUnusable(text, 1, pot);
      return andThen(ofDimension(size, "volume", parts[0]!), (litres) =>
        andThen(clausesRead, (more) => {
          const fill = potFillByVolume({ text, written: rest, count, lengths: [] }, litres, more);
          return fill.ok ? answer(fill.value, [...fill.cautions, ...gallonCautions(parts[0]!)]) : fill;
        }),
      );
    }
    const whole = withLentUnits(parts, pot ? BELIEVABLE.pot : BELIEVABLE.bed, text, read);
    const lengths = andThen(whole, (sized) => gatherList(sized.map((part) => lengthOf(part, read))));
    // Both are read before either is refused, so that every mistake is told at once.
    if (!lengths.ok || !clausesRead.ok) {
      return unusable(...(lengths.ok ? [] : lengths.problems), ...(clausesRead.ok ? [] : clausesRead.problems));
    }
    const reading: FillReading = { text, written: rest, count, lengths: lengths.value };
    return andThen(lengths, () =>
      andThen(clausesRead, (more) => {
        if (pot) return measuredPotFill(reading, pot, more);
        return shape === "ridge" ? ridgeFill(reading, more) : bedFill(reading, shape as BedShape, more);
      }),
    );
  }
  return unusable(shapeUnknown(text, SHAPE_WORDS));
}

function spaceFill(written: string, litres: number): Fill {
  const expression = `${term(litres)} L`;
  return { written, label: `space of ${expression}`, kind: "pot", count: 1, volume: { value: litres, expression } };
}

/** Reads several lines, all problems at once, each under its place in the list. */
export function readFills(texts: readonly string[], read: QuantityReader): Outcome<readonly Fill[]> {
  if (texts.length === 0) return unusable(shapeUnknown("", SHAPE_WORDS));
  const fills = texts.map((text) => readFill(text, read));
  const many = texts.length > 1;
  return gatherList(
    fills.map((fill, index) =>
      fill.ok || !many ? fill : unusable(...fill.problems.map((p) => ({ ...p, path: p.path || `[${index}]` }))),
    ),
  );
}
