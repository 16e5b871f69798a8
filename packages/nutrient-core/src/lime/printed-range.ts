import type { Problem } from "../outcome/problem.ts";
import { term } from "../outcome/working.ts";
import type { Amendment } from "./amendment.ts";
import { MEHLICH } from "./mehlich-table.ts";
import type { Soil } from "./read-soil.ts";
import { SIKORA } from "./sikora-table.ts";
import { MEHLICH_BUFFER_PH, MEHLICH_LINEAR_FROM_PH } from "./soil-test.ts";
import { STARTING_PH } from "./texture-need.ts";

/** A figure of the request, and the range in which its source has something to say. */
interface Bound {
  readonly path: "from" | "to" | "bufferPh" | "acidity";
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** Whose range it is, in a sentence. */
  readonly whose: string;
  readonly hint: string;
}

/** No sulfur rate that was read starts above this pH (rhs-acidifying-soil), or goes below this one (msu-sulfur-second-hand). */
const SULFUR_FROM_PH = 7.5;
const SULFUR_TO_PH = 4.5;

/**
 * What of a request lies outside the range that its source prints. Nothing is read beyond a table's end: lime and
 * sulfur that were guessed too high cannot be taken out again.
 */
export function outsidePrintedRange(amendment: Amendment, soil: Soil, fromPh: number, toPh: number): Problem[] {
  return boundsOf(amendment, soil, fromPh, toPh)
    .filter(({ value, least, most }) => value < least || value > most)
    .map(({ path, value, least, most, whose, hint }) => ({
      code: "outside-printed-range",
      path,
      message: `${term(value)} is outside what ${whose} (${least} to ${most}).`,
      expected: `${least} to ${most}`,
      received: term(value),
      hint,
    }));
}

const TEST_INSTEAD = "have the soil tested by a laboratory with a buffer, and give its figure with --method";
const ASK_LABORATORY = "ask the laboratory that made the test for its own recommendation";

function boundsOf(amendment: Amendment, soil: Soil, fromPh: number, toPh: number): readonly Bound[] {
  const from = { path: "from", value: fromPh } as const;
  const to = { path: "to", value: toPh } as const;
  if (amendment.kind === "sulfur") {
    const whose = "the published sulfur rates cover";
    const least = SULFUR_TO_PH;
    const most = SULFUR_FROM_PH;
    return [
      {
        ...from,
        least,
        most,
        whose,
        hint: "a soil above pH 7.5 mostly holds free lime, more than sulfur can use up: fill a raised bed instead",
      },
      { ...to, least, most, whose, hint: "fruiting vegetables want 6.0 to 6.8: write --to 6.5" },
    ];
  }
  if (soil.kind === "texture") {
    const least = STARTING_PH[0];
    const most = STARTING_PH.at(-1)!;
    const whose = "the table by texture covers";
    return [
      { ...from, least, most, whose, hint: TEST_INSTEAD },
      { ...to, least, most, whose, hint: `write --to 6.5, or ${TEST_INSTEAD}` },
    ];
  }
  const { test } = soil;
  if (test.method === "mehlich-formula") {
    const whose = "the Mehlich formula covers";
    const most = MEHLICH_BUFFER_PH;
    const buffer = { least: MEHLICH_LINEAR_FROM_PH, most, whose: "the Mehlich buffer can be read at" };
    return [
      { ...from, least: 3, most, whose, hint: ASK_LABORATORY },
      { ...to, least: 3, most, whose, hint: `write --to ${most} or less` },
      test.bufferPh === undefined
        ? acidityBound(test.acidity, 0, (MEHLICH_BUFFER_PH - MEHLICH_LINEAR_FROM_PH) * 4, whose)
        : { path: "bufferPh", value: test.bufferPh, ...buffer, hint: ASK_LABORATORY },
    ];
  }
  const { grid, whose } =
    test.method === "sikora"
      ? { grid: SIKORA, whose: "the Sikora table covers" }
      : { grid: MEHLICH, whose: "the Mehlich table covers" };
  const [least, most] = ends(grid.rows);
  const [lowest, highest] = ends(grid.columns);
  return [
    { ...to, least: lowest, most: highest, whose, hint: `write --to ${lowest} to ${highest}, or ${ASK_LABORATORY}` },
    test.method === "sikora"
      ? { path: "bufferPh", value: test.bufferPh, least, most, whose, hint: ASK_LABORATORY }
      : acidityBound(test.acidity, least, most, whose),
  ];
}

const acidityBound = (value: number, least: number, most: number, whose: string): Bound => ({
  path: "acidity",
  value,
  least,
  most,
  whose,
  hint: ASK_LABORATORY,
});

const ends = (scale: readonly number[]): readonly [number, number] => [scale[0]!, scale.at(-1)!];
