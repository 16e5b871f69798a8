import type { CautionKind, Facts } from "../outcome/caution.ts";
import { capital, listed, shown } from "../outcome/sentence.ts";
import type { Excess } from "./excess.ts";
import { AMMONIUM_PPM } from "./feed-limits.ts";

export const STRONG_FEED: CautionKind<Excess> = {
  code: "feed-strength",
  severity: "caution",
  source: "sonneveld-straver-1994",
  sentence: ({ excesses }) =>
    `This feed is far stronger than those that are published: ${listed(excesses)}. It can burn roots and leaves: use less product or more water, and follow the label.`,
};

export const BURNING_FEED: CautionKind<Excess> = {
  ...STRONG_FEED,
  severity: "danger",
  sentence: ({ excesses }) =>
    `Do not water with this: ${listed(excesses)}. It will burn roots. Check the amounts and the units, and thin it with several times the water.`,
};

export const BORON: CautionKind<{ readonly amount: number; readonly unit: string; readonly limit: number }> = {
  code: "boron-narrow",
  severity: "danger",
  source: "maas-1990-boron",
  sentence: ({ amount, unit, limit }) =>
    `Boron: ${shown(amount)} ${unit} is over ${shown(limit)} ${unit}, where it turns from food to poison for peppers and many others. Weigh it on a fine scale, never by the spoon, and add it only where a test shows that it is short.`,
};

export const TRACE: CautionKind<Excess> = {
  code: "micronutrient-narrow",
  severity: "caution",
  source: "common-practice",
  sentence: ({ excesses }) =>
    `${capital(listed(excesses))}: trace elements harm in small excess and stay in the ground for years. Use less, and only where a test or the leaves show that they are short.`,
};

export const RUNOFF_FEED: CautionKind<{ readonly nitrogenPpm: number; readonly timesDrinkingWaterLimit: number }> = {
  code: "runoff",
  severity: "note",
  source: "us-epa-nitrate-mcl",
  sentence: ({ timesDrinkingWaterLimit }) =>
    `Not for drinking: its nitrogen is ${shown(timesDrinkingWaterLimit)} times the limit for drinking water. Mark the can, keep it from children and animals, pour leftovers on a bed and never into a drain or a stream, and follow local rules.`,
};

interface Salt extends Facts {
  readonly amount: number;
  readonly limit: number;
}

export const SOME_CHLORIDE: CautionKind<Salt> = {
  code: "chloride",
  severity: "note",
  source: "fao-29",
  sentence: ({ amount, limit }) =>
    `Chloride ${shown(amount)} mg/L: water for sensitive plants has less than ${shown(limit)} mg/L, and pepper stands salt only moderately. It builds up in pots: give clear water between the feeds, or choose a product without chloride (potassium as the sulfate or nitrate).`,
};

export const MUCH_CHLORIDE: CautionKind<Salt> = {
  ...SOME_CHLORIDE,
  severity: "caution",
  sentence: ({ amount, limit }) =>
    `Chloride ${shown(amount)} mg/L is over ${shown(limit)} mg/L, from where the use of water is severely restricted: it scorches leaf edges and holds water back from the roots. Choose a product without chloride (potassium as the sulfate or nitrate), or give much less.`,
};

export const MUCH_SODIUM: CautionKind<Salt> = {
  code: "sodium",
  severity: "caution",
  source: "fao-29",
  sentence: ({ amount, limit }) =>
    `Sodium ${shown(amount)} mg/L is over ${shown(limit)} mg/L, where it begins to harm wetted leaves; it feeds no pepper, builds up in pots and spoils the crumb of clay. Choose a product without sodium, and keep the leaves dry.`,
};

export const AMMONIUM: CautionKind<{
  readonly ammoniumPpm: number;
  readonly ureaPpm: number;
  readonly shareOfNitrogen: number;
  readonly sources: readonly string[];
}> = {
  code: "ammonium-share",
  severity: "caution",
  source: "bar-tal-2001",
  sentence: ({ ammoniumPpm, ureaPpm, shareOfNitrogen }) =>
    `${shown(ammoniumPpm + ureaPpm)} mg/L of the nitrogen (${shown(shareOfNitrogen * 100)} %) is ammonium${
      ureaPpm > 0 ? " or urea, which becomes ammonium," : ""
    } and in trials with pepper in pots and substrates yields fell above ${AMMONIUM_PPM} mg/L or half of the nitrogen: less calcium reaches the fruit, whose ends rot. Take part of the nitrogen as nitrate, most of all from flowering on.`,
};
