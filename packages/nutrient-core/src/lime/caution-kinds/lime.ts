import type { CautionKind, Facts } from "../../outcome/caution.ts";
import { capital, shown } from "../../outcome/sentence.ts";

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

export const BUFFER_BELOW: CautionKind<{ readonly bufferPh: number; readonly fromPh: number }> = {
  code: "buffer-below-soil",
  severity: "caution",
  source: "common-practice",
  sentence: ({ bufferPh, fromPh }) =>
    `The buffer's pH, ${bufferPh}, is below the soil's, ${fromPh}, but an acid soil's buffer reads higher than the soil. Check the report: the two may stand in each other's place.`,
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

export const ASH_SALTY: CautionKind<{ readonly gramsPerSquareMetreAYear: number }> = {
  code: "ash-salty",
  severity: "caution",
  source: "common-practice",
  sentence: ({ gramsPerSquareMetreAYear }) =>
    `Only ash of clean, untreated wood. It is salty and rich in potassium: no more than about ${shown(gramsPerSquareMetreAYear)} g/m2 a year, with a new test before each go, or ground limestone for the rest.`,
};

/** Of hydroxides, oxides and ash, which do not wait for a season. */
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
