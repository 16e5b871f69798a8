import type { CautionKind } from "../../outcome/caution.ts";
import { type CivilDate, dateInWords } from "../civil-date.ts";
import type { OfPlanting } from "./planting.ts";

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
export const targetNotReached: CautionKind<
  OfPlanting & {
    readonly stage: string;
    readonly misses: readonly string[];
    readonly reasons: readonly string[];
  }
> = {
  code: "target-not-reached",
  severity: "note",
  source: "common-practice",
  sentence: ({ called, stage, misses, reasons }) =>
    [`${called}, ${stage}: ${misses.map((miss) => miss.replace(/\.$/, "")).join("; ")}.`, ...reasons].join(" "),
};

export const tooLittleToMeasure: CautionKind<
  OfPlanting & {
    readonly stage: string;
    readonly products: readonly string[];
  }
> = {
  code: "too-little-to-measure",
  severity: "caution",
  source: "common-practice",
  sentence: ({ called, stage, products }) =>
    `${called}, ${stage}: a can takes less ${products.join(" and ")} than half a step of the scale or spoon, so it is left out. Dissolve the amount for several cans in a jug and share it out, or use a finer scale.`,
};

export const manureNearHarvest: CautionKind<
  OfPlanting & {
    readonly products: readonly string[];
    readonly date: CivilDate;
    readonly harvest: CivilDate;
    readonly days: number;
  }
> = {
  code: "manure-near-harvest",
  severity: "danger",
  source: "nop-raw-manure",
  sentence: ({ called, products, date, harvest, days }) =>
    `${called}: ${products.join(", ")} on ${dateInWords(date)} is only ${days} days before the first harvest (${dateInWords(harvest)}). Unless it is proved free of germs it must not be given within 90 days of harvest, or 120 where fruit touches the soil, and never to growing crops.`,
};
