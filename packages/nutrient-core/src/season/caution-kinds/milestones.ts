import type { CautionKind } from "../../outcome/caution.ts";
import { type CivilDate, dateInWords } from "../civil-date.ts";
import { named, type OfPlantings } from "./planting.ts";

export const milestoneNotRecorded: CautionKind<
  OfPlantings & {
    readonly milestone: string;
    readonly latest: CivilDate;
  }
> = {
  code: "milestone-overdue",
  severity: "note",
  source: "common-practice",
  sentence: ({ called, milestone, latest }) =>
    `${named(called)}: the ${milestone} was expected by ${dateInWords(latest)} at the latest and is not on record. Look at the plants and record it; the plan waits for it.`,
};

export const milestoneImplied: CautionKind<
  OfPlantings & {
    readonly milestone: string;
    readonly later: string;
    readonly date: CivilDate;
  }
> = {
  code: "milestone-implied",
  severity: "note",
  source: "common-practice",
  sentence: ({ called, milestone, later, date }) =>
    `${named(called)}: the ${milestone} is not on record, but the ${later} is, so ${dateInWords(date)} is taken for it. If you know the day, record it.`,
};

export const weatherGoesOn: CautionKind<OfPlantings & { readonly lastRecorded: CivilDate }> = {
  code: "weather-carried-on",
  severity: "note",
  source: "common-practice",
  sentence: ({ called, lastRecorded }) =>
    `${named(called)}: the weather record ends on ${dateInWords(lastRecorded)} and holds no earlier year, so the prediction carries the warmth of its last two weeks on. A record of some years makes it better.`,
};

const WARMTH_MISSING = {
  house:
    "for the warmth of the house in which the seedlings stand is not known. Say it in the season file: raisedAtCelsius: 19.",
  days: "for the record does not hold every day that is needed: it begins too late, or has a gap of more than a week. Name a station that measured them all.",
} as const;

export const weatherNotUsed: CautionKind<
  OfPlantings & {
    readonly missing: keyof typeof WARMTH_MISSING;
  }
> = {
  code: "weather-not-used",
  severity: "note",
  source: "common-practice",
  sentence: ({ called, missing }) =>
    `${named(called)}: the first flower is predicted from days, not from the weather, ${WARMTH_MISSING[missing]}`,
};
