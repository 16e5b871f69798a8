import type { CautionKind, Facts } from "../../outcome/caution.ts";
import { shown } from "../../outcome/sentence.ts";

export const FREE_LIME: CautionKind<Facts> = {
  code: "free-lime",
  severity: "caution",
  source: "rhs-acidifying-soil",
  sentence: () =>
    "Not on soil that holds free lime: nothing practical acidifies it. Drop vinegar on a dry pinch; if it fizzes, fill a raised bed or pots instead.",
};

export const SULFUR_SOURCES: CautionKind<{ readonly low: number; readonly high: number }> = {
  code: "sulfur-sources-differ",
  severity: "note",
  source: "ontario-blueberry-ph",
  sentence: ({ low, high }) =>
    `Published rates for this run from ${shown(low)} to ${shown(high)} g/m2 of sulfur, more where a soil is rich in organic matter. Spread half first where you can wait, and test before the rest.`,
};

export const SULFUR_SLOW: CautionKind<Facts> = {
  code: "sulfur-slow",
  severity: "note",
  source: "ontario-blueberry-ph",
  sentence: () =>
    "Soil life turns it to acid in 3 to 12 months, faster in warm, moist soil. Mix it through the whole depth long before planting, test again, and follow the bag and local rules.",
};

export const SULFUR_GOES: CautionKind<{ readonly goes: number }> = {
  code: "sulfur-in-goes",
  severity: "caution",
  source: "common-practice",
  sentence: ({ goes }) =>
    `Not all at once: in ${goes} goes a year apart, no more than one pH unit each, with a new test before each.`,
};

export const SULFUR_NEAR_PLANTS: CautionKind<{ readonly gramsPerSquareMetreAYear: number }> = {
  code: "sulfur-near-plants",
  severity: "caution",
  source: "extension-blueberry-ph",
  sentence: ({ gramsPerSquareMetreAYear }) =>
    `For bare beds. Around standing plants no more than ${shown(gramsPerSquareMetreAYear)} g/m2 a year on the surface.`,
};

export const TOO_SOUR: CautionKind<{ readonly toPh: number }> = {
  code: "too-sour",
  severity: "caution",
  source: "common-practice",
  sentence: ({ toPh }) =>
    `pH ${toPh} is sourer than fruiting vegetables want (6.0 to 6.8): calcium and magnesium run short, manganese and aluminium harm roots.`,
};
