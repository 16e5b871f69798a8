import type { CautionKind, Facts } from "../outcome/caution.ts";
import { capital, shown } from "../outcome/sentence.ts";

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

/** Hydroxide and oxide: the burns are a safety sheet's, the rest is common practice. */
export const CAUSTIC_LIME: CautionKind<{ readonly product: string }> = {
  code: "lime-caustic",
  severity: "danger",
  source: "ghs-hydrated-lime",
  sentence: ({ product }) =>
    `${capital(product)} burns skin, eyes, leaves and roots, and moves the pH within days: goggles, gloves and long sleeves, never near plants, weeks before planting. Ground limestone does the same slowly and far more safely; take that in a garden.`,
};

export const QUICKLIME: CautionKind<{ readonly product: string }> = {
  ...CAUSTIC_LIME,
  source: "ghs-quicklime",
  sentence: ({ product }) =>
    `${capital(product)} burns skin and eyes, and grows hot enough with water to scald and to set things on fire: it is for trained people, not for a garden. Take ground limestone.`,
};

export const BY_TEXTURE: CautionKind<{ readonly alsoBy: string }> = {
  code: "lime-by-texture",
  severity: "note",
  source: "garden-lime-by-texture",
  sentence: ({ alsoBy }) =>
    `A first guess: by a garden page's table that names neither its origin nor its depth${alsoBy}. Soils of one texture differ by half and more. A laboratory's buffer test knows yours (--method); without one begin at the low end, and test again after a season.`,
};

export const TEST_SCATTER: CautionKind<{ readonly percentExplained: number; readonly method: string }> = {
  code: "soil-test-scatter",
  severity: "note",
  source: "psu-buffer-comparison-2008",
  sentence: ({ percentExplained, method }) =>
    `${capital(method)}. Tests of this kind explained as little as ${shown(percentExplained)} % of the differences between soils. Follow the laboratory's own recommendation where it differs: another laboratory's rule asks for half or twice as much. Lime given in the last two years still works: count it.`,
};

export const LIME_GOES: CautionKind<{ readonly goes: number }> = {
  code: "lime-in-goes",
  severity: "caution",
  source: "psu-home-garden-lime",
  sentence: ({ goes }) =>
    `Not all at once: in ${goes} goes half a year apart, with a new test before each. Too much lime cannot be taken out, and locks up iron, manganese and zinc for years.`,
};

export const LIME_HEAVY: CautionKind<{
  readonly gramsPerSquareMetreInOneGo: number;
  readonly limitGramsPerSquareMetre: number;
}> = {
  code: "lime-heavy",
  severity: "danger",
  source: "psu-home-garden-lime",
  sentence: ({ gramsPerSquareMetreInOneGo, limitGramsPerSquareMetre }) =>
    `Even in three goes each is ${shown(gramsPerSquareMetreInOneGo)} g/m2 of calcium carbonate, where ${shown(limitGramsPerSquareMetre)} are split in two. Check the figures, ask the laboratory, and give no more than one go before a new test: it can spoil the bed for years.`,
};

/** Of hydroxides and oxides, which do not wait for a season. */
export const LIME_QUICK: CautionKind<Facts> = {
  code: "lime-quick",
  severity: "note",
  source: "common-practice",
  sentence: () =>
    "Mix it through the whole depth at once, and test again after a month. Keep it off paths and out of ponds and streams, where it kills, and follow the bag and local rules.",
};

export const LIME_SLOW: CautionKind<Facts> = {
  code: "lime-slow",
  severity: "note",
  source: "common-practice",
  sentence: () =>
    "Mix it evenly through the whole depth, months before planting; it works over a season and longer. Sweep it off paths, keep it out of ponds and streams, and follow the bag and local rules.",
};

export const LIME_APART: CautionKind<Facts> = {
  code: "lime-apart",
  severity: "caution",
  source: "common-practice",
  sentence: () =>
    "Not together with ammonium fertilizer, urea or fresh manure: lime drives their nitrogen off as ammonia. Leave some weeks between.",
};

export const MAGNESIUM_BROUGHT: CautionKind<{ readonly magnesiumGramsPerSquareMetre: number }> = {
  code: "lime-brings-magnesium",
  severity: "note",
  source: "common-practice",
  sentence: ({ magnesiumGramsPerSquareMetre }) =>
    `It brings ${shown(magnesiumGramsPerSquareMetre)} g/m2 of magnesium: good where magnesium is short; where a test finds plenty, take calcitic lime.`,
};

export const OVERLIMING: CautionKind<{ readonly toPh: number }> = {
  code: "overliming",
  severity: "caution",
  source: "common-practice",
  sentence: ({ toPh }) =>
    `pH ${toPh} is more than fruiting vegetables want (6.0 to 6.8): iron, manganese, zinc and phosphorus run short. Stop at 6.5 unless a test says otherwise.`,
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
