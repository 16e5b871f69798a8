import { LIME_IN_ONE_GO, LIME_IN_TWO_GOES } from "../solution/feed-limits.ts";
import type { Amendment } from "./amendment.ts";
import type { LimeApplication } from "./lime-input.ts";

/** Half a year between limings (psu-home-garden-lime). */
const LIME_MONTHS = 6;
/** Sulfur has worked after 3 to 12 months (ontario-blueberry-ph): the new test waits for the longest. */
const SULFUR_MONTHS = 12;
/** One go moves the pH by one unit at most: that far every published sulfur rate speaks. A choice of ours. */
const SULFUR_UNITS_IN_ONE_GO = 1;
/** Of wood ash on a square metre, in g: its salts and potassium are the limit (common practice, no source). */
export const ASH_A_YEAR = 100;
const ASH_MONTHS = 12;
/** 6.3 - 5.3 is a hair over one in floating numbers, and 110 lb/1000 sq ft a hair under 11 lb/100 sq ft. */
const FLOATING = 1e-9;

const reaches = (grams: number, limit: number): boolean => grams >= limit * (1 - FLOATING);

/** Into how many parts of at most so much something falls. */
const atMost = (part: number, whole: number): number => Math.max(1, Math.ceil(whole / part - FLOATING));

/**
 * In how many goes is it spread, and when?
 *
 * Lime from 11 lb/100 sq ft of calcium carbonate in two goes, from 21 in three, half a year apart
 * (psu-home-garden-lime); sulfur one pH unit at a time, and ash 100 g/m2 at a time, a year apart.
 *
 * @param neededGramsPerSquareMetre Of pure calcium carbonate or sulfur, through the whole depth.
 * @param phUnits How far the pH is to move.
 * @returns Equal parts; none where nothing is needed.
 */
export function applicationsOf(
  kind: Amendment["kind"] | "ash",
  neededGramsPerSquareMetre: number,
  phUnits: number,
  whole: Pick<LimeApplication, "massGrams" | "gramsPerSquareMetre">,
): readonly LimeApplication[] {
  if (!(whole.massGrams > 0)) return [];
  const [goes, months] = {
    sulfur: [atMost(SULFUR_UNITS_IN_ONE_GO, phUnits), SULFUR_MONTHS] as const,
    ash: [atMost(ASH_A_YEAR, whole.gramsPerSquareMetre), ASH_MONTHS] as const,
    lime: [
      1 +
        Number(reaches(neededGramsPerSquareMetre, LIME_IN_ONE_GO)) +
        Number(reaches(neededGramsPerSquareMetre, LIME_IN_TWO_GOES)),
      LIME_MONTHS,
    ] as const,
  }[kind];
  return Array.from({ length: goes }, (_, go) => ({
    month: go * months,
    massGrams: whole.massGrams / goes,
    gramsPerSquareMetre: whole.gramsPerSquareMetre / goes,
  }));
}
