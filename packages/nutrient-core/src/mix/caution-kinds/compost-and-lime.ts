import type { CautionKind } from "../../outcome/caution.ts";
import { shown } from "../../outcome/sentence.ts";

export const compostShare: CautionKind<{
  readonly sharePercent: number;
  readonly where: string;
  readonly upToPercent: number;
}> = {
  code: "compost-share",
  severity: "caution",
  source: "compost-share-second-hand",
  sentence: ({ sharePercent, where, upToPercent }) =>
    `${shown(sharePercent)} % compost is more than is advised in ${where} (up to ${upToPercent} %): it can be salty, dense and too rich. Have it tested, or use less.`,
};

export const compostSalts: CautionKind<{ readonly sharePercent: number }> = {
  code: "compost-salts",
  severity: "note",
  source: "missouri-media-salts",
  sentence: ({ sharePercent }) =>
    `${shown(sharePercent)} % compost: composts measured EC 2.6 to 4.1 dS/m (methods differ). A growing mix is best at 2 to 3.5 in a saturated extract, and above 5 it harms: have the EC tested before peppers go in.`,
};

export const limeWithCompost: CautionKind<{ readonly additions: readonly string[]; readonly compostPercent: number }> =
  {
    code: "lime-with-compost",
    severity: "caution",
    source: "compost-lime-trade-report",
    sentence: ({ additions, compostPercent }) =>
      `${additions.join(", ")} with ${shown(compostPercent)} % compost: compost raises the pH by itself (40 % of one compost took peat from 4.5 to 6.7 without lime). Use less or none, and measure the pH.`,
  };

interface PeatFacts {
  readonly [fact: string]: number;
  readonly sharePercent: number;
  readonly lowKilogramsPerCubicMetre: number;
  readonly highKilogramsPerCubicMetre: number;
  readonly lowKilograms: number;
  readonly highKilograms: number;
}

const here = ({ lowKilograms: low, highKilograms: high }: PeatFacts): string =>
  high < 1 ? `${shown(1000 * low)} to ${shown(1000 * high)} g` : `${shown(low)} to ${shown(high)} kg`;

const limeRange = (facts: PeatFacts): string =>
  `${shown(facts.lowKilogramsPerCubicMetre)} to ${shown(facts.highKilogramsPerCubicMetre)} kg of ground dolomitic lime per cubic metre are published for peat mixes (${here(facts)} here)`;

export const peatNeedsLime: CautionKind<PeatFacts> = {
  code: "peat-needs-lime",
  severity: "note",
  source: "rutgers-table-r4",
  sentence: (facts) =>
    `${shown(facts.sharePercent)} % peat and neither lime nor compost: such mixes are acid. ${limeRange(facts)}; measure the pH.`,
};

export const peatWithCompost: CautionKind<PeatFacts> = {
  code: "peat-with-compost",
  severity: "note",
  source: "compost-lime-trade-report",
  sentence: (facts) =>
    `${shown(facts.sharePercent)} % peat with compost: ${limeRange(facts)}, but compost raises the pH by itself. Less lime or none; measure the pH first.`,
};

export const coirLime: CautionKind<{ readonly sharePercent: number }> = {
  code: "coir-lime",
  severity: "note",
  source: "hortscience-coir-1996",
  sentence: ({ sharePercent }) =>
    `${shown(sharePercent)} % coir: its pH was 5.6 to 6.9 over 12 sources, so it needs little lime or none, where peat needs much. Measure the pH.`,
};
