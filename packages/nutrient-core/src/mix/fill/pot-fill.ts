import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import { term } from "../../outcome/working.ts";
import { circleArea, type Measure, metres } from "../shape/measure.ts";
import { type Opening, openingArea, rectangularPotVolume } from "../shape/rectangular-pot.ts";
import { roundPotVolume } from "../shape/round-pot.ts";
import { containerSection } from "../shape/section.ts";
import { TRADE_POT_LITRES } from "../shape/trade-pot.ts";
import { type Clauses, type Kept, layerNotes } from "./clauses.ts";
import type { Fill } from "./fill.ts";
import { clauseUnusable, sizesConflict, sizesUnusable } from "./problems.ts";
import type { FillReading } from "./read-fill.ts";

export type PotShape = "round" | "square" | "trough";

const EXAMPLES: Readonly<Record<PotShape, readonly [string, string]>> = {
  round: [
    "litres, or top and bottom diameter and height (a straight pot: one diameter)",
    "12 pots 30 cm x 24 cm x 28 cm",
  ],
  square: [
    "litres, or top and bottom side and height (a straight pot: one side)",
    "12 square pots 30 cm x 24 cm x 28 cm",
  ],
  trough: [
    "length, width and height (a tapered one: both of the top, both of the bottom, height)",
    "trough 80 cm x 20 cm x 18 cm",
  ],
};

/** The problem of pots whose sizes do not make a shape. */
export function potSizesUnusable(text: string, found: number, shape: PotShape): Outcome<Fill> {
  return unusable(sizesUnusable(text, found, ...EXAMPLES[shape]));
}

/** Pots by their inside measures in metres. */
export function measuredPotFill(reading: FillReading, shape: PotShape, clauses: Clauses): Outcome<Fill> {
  const { text, written, count, lengths } = reading;
  const openings = openingsOf(shape, lengths);
  if (!openings) return potSizesUnusable(text, lengths.length, shape);
  const refused = refusedClause(clauses, text);
  if (refused) return refused;
  const height = lengths.at(-1)!;
  const levels = levelsOf(height, clauses, text);
  if (!levels.ok) return levels;
  const { from, to } = levels.value;
  const [top, bottom] = [openings.top, openings.bottom];
  const upper = between(bottom, top, to / height);
  const lower = between(bottom, top, from / height);
  const isRound = shape === "round";
  const volume = isRound
    ? roundPotVolume(upper.widthMetres, lower.widthMetres, to - from)
    : rectangularPotVolume(upper, lower, to - from);
  return answer({
    written,
    label: `${shape === "trough" ? "trough" : `${shape} pot`} ${lengths.map(metres).join(" x ")}`,
    kind: "pot",
    count,
    volume,
    area: isRound ? circleArea(top.widthMetres) : openingArea(top),
    heightMetres: to - from,
    section: containerSection(top.widthMetres, bottom.widthMetres, height, from, to),
    ...plantsOf(clauses),
  });
}

/** Pots of which the litres are known, as printed by their maker. */
export function potFillByVolume(
  { text, written, count }: FillReading,
  litres: number,
  clauses: Clauses,
): Outcome<Fill> {
  const refused = refusedClause(clauses, text);
  if (refused) return refused;
  const volume = withoutShares({ value: litres, expression: `${term(litres)} L` }, clauses, text);
  if (!volume.ok) return volume;
  return answer({
    written,
    label: `pot ${term(litres)} L`,
    kind: "pot",
    count,
    volume: volume.value,
    ...plantsOf(clauses),
  });
}

/** Pots by US trade number: their true litres, never the number. */
export function tradePotFill(reading: FillReading, tradeNumber: string, clauses: Clauses): Outcome<Fill> {
  const litres = TRADE_POT_LITRES[String(Number(tradeNumber))];
  if (litres === undefined) {
    return unusable({
      code: "trade-size-unknown",
      path: "",
      message: `The true volume of a trade size #${tradeNumber} pot is not on file.`,
      expected: `one of ${Object.keys(TRADE_POT_LITRES)
        .map((size) => `#${size}`)
        .join(", ")}`,
      received: reading.text,
      hint: 'measure it, and write "12 pots 20 L" or "12 pots 30 cm x 24 cm x 28 cm"',
    });
  }
  const fill = potFillByVolume(reading, litres, clauses);
  return fill.ok
    ? answer({
        ...fill.value,
        label: `trade #${Number(tradeNumber)} pot, ${litres} L`,
        notes: ["trade-pot", ...(fill.value.notes ?? [])],
      })
    : fill;
}

interface Openings {
  readonly top: Opening;
  readonly bottom: Opening;
}

function openingsOf(shape: PotShape, lengths: readonly number[]): Openings | undefined {
  const [a, b, c, d] = lengths as [number, number, number, number];
  const square = (side: number): Opening => ({ lengthMetres: side, widthMetres: side });
  if (shape === "trough") {
    if (lengths.length === 3)
      return { top: { lengthMetres: a, widthMetres: b }, bottom: { lengthMetres: a, widthMetres: b } };
    return lengths.length === 5
      ? { top: { lengthMetres: a, widthMetres: b }, bottom: { lengthMetres: c, widthMetres: d } }
      : undefined;
  }
  if (lengths.length === 2) return { top: square(a), bottom: square(a) };
  return lengths.length === 3 ? { top: square(a), bottom: square(b) } : undefined;
}

/** The opening at a share of the way up. */
function between(bottom: Opening, top: Opening, share: number): Opening {
  const mix = (low: number, high: number): number => low + (high - low) * share;
  return {
    lengthMetres: mix(bottom.lengthMetres, top.lengthMetres),
    widthMetres: mix(bottom.widthMetres, top.widthMetres),
  };
}

function levelsOf(height: number, { headspace, layers }: Clauses, text: string): Outcome<{ from: number; to: number }> {
  const kept = [...layers, ...(headspace ? [headspace] : [])];
  if (kept.some((one) => "share" in one)) {
    return unusable(
      clauseUnusable(text, "Where the height is known, headspace and layers are lengths.", 'write "headspace 3 cm"'),
    );
  }
  const sum = (list: readonly Kept[]): number =>
    list.reduce((total, one) => total + ("metres" in one ? one.metres : 0), 0);
  const levels = { from: sum(layers), to: height - sum(headspace ? [headspace] : []) };
  return levels.to > levels.from
    ? answer(levels)
    : unusable(sizesConflict(text, "Layers and headspace leave no room for the mix.", "make them smaller"));
}

function withoutShares(full: Measure, { headspace, layers }: Clauses, text: string): Outcome<Measure> {
  const kept = [...layers, ...(headspace ? [headspace] : [])];
  if (kept.length === 0) return answer(full);
  if (kept.some((one) => "metres" in one)) {
    return unusable(
      clauseUnusable(
        text,
        "Only the litres of this pot are known, not its height.",
        'write "headspace 10%", or give the pot\'s measures: "12 pots 30 cm x 24 cm x 28 cm headspace 3 cm"',
      ),
    );
  }
  const share = kept.reduce((total, one) => total + ("share" in one ? one.share : 0), 0);
  return share < 1
    ? answer({ value: full.value * (1 - share), expression: `${full.expression} * (1 - ${term(share)})` })
    : unusable(sizesConflict(text, "Layers and headspace leave no room for the mix.", "make them smaller"));
}

function refusedClause(clauses: Clauses, text: string): Outcome<Fill> | undefined {
  if (clauses.mound || clauses.depths || clauses.spacing) {
    return unusable(
      clauseUnusable(
        text,
        "Mounds, depth readings and plant distances belong to beds.",
        'a pot takes "headspace", "drainage", "wood" and "plants 1" (plants in each)',
      ),
    );
  }
  return undefined;
}

function plantsOf(clauses: Clauses): Pick<Fill, "plants" | "notes"> {
  const { plantsEach } = clauses;
  return {
    ...(plantsEach === undefined ? {} : { plants: { value: plantsEach, expression: String(plantsEach) } }),
    ...layerNotes(clauses),
  };
}
