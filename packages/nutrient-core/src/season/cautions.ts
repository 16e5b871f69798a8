import type { CautionKind } from "../outcome/caution.ts";
import { type CivilDate, dateInWords } from "./civil-date.ts";

const rounded = (value: number): string => String(Number(value.toPrecision(3)));

/** More plantings than this are counted rather than named; the facts hold them all. */
const NAMED = 4;

function named(plantings: readonly string[]): string {
  if (plantings.length <= NAMED) return plantings.join(", ");
  return `${plantings.slice(0, NAMED - 1).join(", ")} and ${plantings.length - NAMED + 1} more`;
}

interface CeilingFacts {
  readonly [fact: string]: string | number;
  readonly planting: string;
  readonly nutrient: string;
  readonly date: CivilDate;
  readonly percentOfCeiling: number;
}

export const ceilingPassed: CautionKind<CeilingFacts> = {
  code: "ceiling-passed",
  severity: "caution",
  source: "common-practice",
  sentence: ({ planting, nutrient, date, percentOfCeiling }) =>
    `${planting}: with the feed of ${dateInWords(date)} the season's ceiling for ${nutrient} is passed; by the end it is ${rounded(percentOfCeiling)} % of it. Feed weaker, less often, or stop before that day.`,
};

export const ceilingMayBePassed: CautionKind<CeilingFacts> = {
  code: "ceiling-near",
  severity: "note",
  source: "common-practice",
  sentence: ({ planting, nutrient, date, percentOfCeiling }) =>
    `${planting}: the ceiling for ${nutrient} is kept by the labels (${rounded(percentOfCeiling)} %), but with what scales and cans can be off it may be passed with the feed of ${dateInWords(date)}.`,
};

/** A rule of thumb, with what speaks for it and against it. */
export const ruleOfThumb: CautionKind<{
  readonly programme: string;
  readonly sourcesAgainst: readonly string[];
  readonly sourcesFor: readonly string[];
}> = {
  code: "rule-of-thumb",
  severity: "note",
  source: "ndsu-high-phosphorus",
  sentence: ({ programme }) =>
    `"${programme}" follows a rule of thumb for which no trial with peppers was found. It gives little nitrogen and much phosphorus from the first flower on. Against it: in trials growth and flowering gained nothing from phosphorus above about 15 to 30 mg/L, peppers yielded fully on steady or rising nitrogen, and too much phosphorus hinders iron and zinc. For it: a university's advice for containers, and a trial in which the flower mass of geraniums rose with phosphorus up to 30 mg/L. The choice is yours; a comparison of programmes shows it in grams and money.`,
};

/** @remarks `misses` say how far off each nutrient is, `reasons` why, and what would help. */
export const targetNotReached: CautionKind<{
  readonly planting: string;
  readonly stage: string;
  readonly misses: readonly string[];
  readonly reasons: readonly string[];
}> = {
  code: "target-not-reached",
  severity: "note",
  source: "common-practice",
  sentence: ({ planting, stage, misses, reasons }) =>
    [`${planting}, ${stage}: ${misses.map((miss) => miss.replace(/\.$/, "")).join("; ")}.`, ...reasons].join(" "),
};

export const tooLittleToMeasure: CautionKind<{
  readonly planting: string;
  readonly stage: string;
  readonly products: readonly string[];
}> = {
  code: "too-little-to-measure",
  severity: "caution",
  source: "common-practice",
  sentence: ({ planting, stage, products }) =>
    `${planting}, ${stage}: a can takes less ${products.join(" and ")} than half a step of the scale or spoon, so it is left out. Dissolve the amount for several cans in a jug and share it out, or use a finer scale.`,
};

export const milestoneNotRecorded: CautionKind<{
  readonly plantings: readonly string[];
  readonly milestone: string;
  readonly latest: CivilDate;
}> = {
  code: "milestone-overdue",
  severity: "note",
  source: "common-practice",
  sentence: ({ plantings, milestone, latest }) =>
    `${named(plantings)}: the ${milestone} was expected by ${dateInWords(latest)} at the latest and is not on record. Look at the plants and record it; the plan waits for it.`,
};

export const milestoneImplied: CautionKind<{
  readonly plantings: readonly string[];
  readonly milestone: string;
  readonly later: string;
  readonly date: CivilDate;
}> = {
  code: "milestone-implied",
  severity: "note",
  source: "common-practice",
  sentence: ({ plantings, milestone, later, date }) =>
    `${named(plantings)}: the ${milestone} is not on record, but the ${later} is, so ${dateInWords(date)} is taken for it. If you know the day, record it.`,
};

export const nothingRecorded: CautionKind<{ readonly plantings: readonly string[]; readonly feeds: number }> = {
  code: "nothing-recorded",
  severity: "note",
  source: "common-practice",
  sentence: ({ plantings, feeds }) =>
    `${named(plantings)}: no feed is on record, so ${feeds === 1 ? "the one" : `the ${feeds}`} before today ${feeds === 1 ? "is" : "are"} assumed to have been given as planned. Record what was given, and the rest is worked out from that.`,
};

export const weatherGoesOn: CautionKind<{ readonly plantings: readonly string[]; readonly lastRecorded: CivilDate }> = {
  code: "weather-carried-on",
  severity: "note",
  source: "common-practice",
  sentence: ({ plantings, lastRecorded }) =>
    `${named(plantings)}: the weather record ends on ${dateInWords(lastRecorded)} and holds no earlier year, so the prediction carries the warmth of its last two weeks on. A record of some years makes it better.`,
};

const WARMTH_MISSING = {
  house:
    "for the warmth of the house in which the seedlings stand is not known. Say it in the season file: raisedAtCelsius: 19.",
  days: "for the record does not hold every day that is needed: it begins too late, or has a gap of more than a week. Name a station that measured them all.",
} as const;

export const weatherNotUsed: CautionKind<{
  readonly plantings: readonly string[];
  readonly missing: keyof typeof WARMTH_MISSING;
}> = {
  code: "weather-not-used",
  severity: "note",
  source: "common-practice",
  sentence: ({ plantings, missing }) =>
    `${named(plantings)}: the first flower is predicted from days, not from the weather, ${WARMTH_MISSING[missing]}`,
};

export const manureNearHarvest: CautionKind<{
  readonly planting: string;
  readonly products: readonly string[];
  readonly date: CivilDate;
  readonly harvest: CivilDate;
  readonly days: number;
}> = {
  code: "manure-near-harvest",
  severity: "danger",
  source: "nop-raw-manure",
  sentence: ({ planting, products, date, harvest, days }) =>
    `${planting}: ${products.join(", ")} on ${dateInWords(date)} is only ${days} days before the first harvest (${dateInWords(harvest)}). Unless it is proved free of germs it must not be given within 90 days of harvest, or 120 where fruit touches the soil, and never to growing crops.`,
};

export const productNotOnShelf: CautionKind<{ readonly products: readonly string[] }> = {
  code: "recorded-product-unknown",
  severity: "note",
  source: "common-practice",
  sentence: ({ products }) =>
    `The record names ${products.join(", ")}, which is not on the shelf. What was given still counts; its cost and packs are not known.`,
};

export const drainsAway: CautionKind<{ readonly leachedPercent: number; readonly nitrogenGrams: number }> = {
  code: "leaching",
  severity: "note",
  source: "uf-leaching-fraction",
  sentence: ({ leachedPercent, nitrogenGrams }) =>
    `If ${rounded(leachedPercent)} % of each feed drains out, about ${rounded(nitrogenGrams)} g of nitrogen leave the pots and beds in the season. Catch what drains and water with it, and keep it from drains, ponds and wells.`,
};

export const recordedAhead: CautionKind<{ readonly lines: readonly string[]; readonly today: CivilDate }> = {
  code: "recorded-ahead",
  severity: "note",
  source: "common-practice",
  sentence: ({ lines, today }) =>
    `The record holds ${lines.length === 1 ? "a line" : `${lines.length} lines`} of a day after today (${dateInWords(today)}): ${lines.join(", ")}. Check the year, and undo what was mistyped.`,
};

export const recordedBeforePlanting: CautionKind<{ readonly lines: readonly string[] }> = {
  code: "recorded-before-planting",
  severity: "caution",
  source: "common-practice",
  sentence: ({ lines }) =>
    `The record holds ${lines.length === 1 ? "a line" : `${lines.length} lines`} of a day before the plants can have been there: ${lines.join(", ")}. It counts as it stands. Check the year, and undo what was mistyped.`,
};
