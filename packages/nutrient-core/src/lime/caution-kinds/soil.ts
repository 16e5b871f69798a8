import type { CautionKind, Facts } from "../../outcome/caution.ts";

export const NO_ACID: CautionKind<{ readonly toPh: number }> = {
  code: "no-lime-needed",
  severity: "note",
  source: "common-practice",
  sentence: ({ toPh }) => `By this test no lime is needed for pH ${toPh}. Test the soil again next year.`,
};

export const GOAL_REACHED: CautionKind<{ readonly ph: number }> = {
  code: "goal-reached",
  severity: "note",
  source: "common-practice",
  sentence: ({ ph }) => `The soil is at pH ${ph} already: nothing is needed. Test it again next year.`,
};

export const SOIL_NOT_MIX: CautionKind<Facts> = {
  code: "soil-not-mix",
  severity: "note",
  source: "common-practice",
  sentence: () =>
    "For garden soil, not for potting mix: a mix takes its lime by volume (trug mix, + lime kg/m3), by a test of the mix.",
};

export const SAND_HOLDS_LITTLE: CautionKind<Facts> = {
  code: "sand-holds-little",
  severity: "note",
  source: "common-practice",
  sentence: () =>
    "Sand holds little against a change: a small slip goes far, and rain undoes it soon. Give little, and test each year.",
};
