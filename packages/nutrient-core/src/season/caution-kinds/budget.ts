import type { CautionKind } from "../../outcome/caution.ts";
import { shown } from "../../outcome/sentence.ts";
import { type CivilDate, dateInWords } from "../civil-date.ts";
import type { OfPlanting } from "./planting.ts";

type CeilingFacts = OfPlanting & {
  readonly nutrient: string;
  readonly date: CivilDate;
  readonly percentOfCeiling: number;
};

export const ceilingPassed: CautionKind<CeilingFacts> = {
  code: "ceiling-passed",
  severity: "caution",
  source: "common-practice",
  sentence: ({ called, nutrient, date, percentOfCeiling }) =>
    `${called}: with the feed of ${dateInWords(date)} the season's ceiling for ${nutrient} is passed; by the end it is ${shown(percentOfCeiling)} % of it. Feed weaker, less often, or stop before that day.`,
};

export const ceilingMayBePassed: CautionKind<CeilingFacts> = {
  code: "ceiling-near",
  severity: "note",
  source: "common-practice",
  sentence: ({ called, nutrient, date, percentOfCeiling }) =>
    `${called}: the ceiling for ${nutrient} is kept by the labels (${shown(percentOfCeiling)} %), but with what scales and cans can be off it may be passed with the feed of ${dateInWords(date)}.`,
};

export const drainsAway: CautionKind<{ readonly leachedPercent: number; readonly nitrogenGrams: number }> = {
  code: "leaching",
  severity: "note",
  source: "uf-leaching-fraction",
  sentence: ({ leachedPercent, nitrogenGrams }) =>
    `If ${shown(leachedPercent)} % of each feed drains out, about ${shown(nitrogenGrams)} g of nitrogen leave the pots and beds in the season. Catch what drains and water with it, and keep it from drains, ponds and wells.`,
};
