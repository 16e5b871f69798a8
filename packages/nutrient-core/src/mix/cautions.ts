import type { CautionKind, Severity } from "../outcome/caution.ts";
import type { IngredientHazard } from "./ingredient/facts.ts";

const LITRES_PER_CUBIC_FOOT = 28.316846592;

const number = (value: number): string => String(Number(value.toPrecision(3)));

export const compostShare: CautionKind<{
  readonly sharePercent: number;
  readonly where: string;
  readonly upToPercent: number;
}> = {
  code: "compost-share",
  severity: "caution",
  source: "compost-share-second-hand",
  sentence: ({ sharePercent, where, upToPercent }) =>
    `${number(sharePercent)} % compost is more than is advised in ${where} (up to ${upToPercent} %): it can be salty, dense and too rich. Have it tested, or use less.`,
};

export const volumeLossAssumed: CautionKind<{
  readonly lossPercent: number;
  readonly settlingPercent: number;
  readonly assumed: readonly string[];
  readonly lowLitres: number;
  readonly highLitres: number;
}> = {
  code: "volume-loss-assumed",
  severity: "note",
  source: "container-mix-guidance",
  sentence: ({ lossPercent, settlingPercent, assumed, lowLitres, highLitres }) => {
    const parts = [
      assumed.includes("loss") ? `${number(lossPercent)} % lost on mixing` : "",
      assumed.includes("settling")
        ? `${number(settlingPercent)} % lost on settling (no measured figure was found)`
        : "",
    ];
    const range = `${number(lowLitres)} to ${number(highLitres)} L (${number(lowLitres / LITRES_PER_CUBIC_FOOT)} to ${number(highLitres / LITRES_PER_CUBIC_FOOT)} cu ft)`;
    return `Assumed: ${parts.filter(Boolean).join(", ")}. Published figures make it ${range}; mix a measured trial and state --loss and --settling.`;
  },
};

export const noPackKnown: CautionKind<{ readonly ingredients: readonly string[] }> = {
  code: "no-pack-known",
  severity: "note",
  source: "common-practice",
  sentence: ({ ingredients }) =>
    `No pack is known for ${ingredients.join(", ")}: litres only. Give sizes and prices with --pack "${ingredients[0]} 50 L 6.50", or on the shelf.`,
};

export const priceMissing: CautionKind<{ readonly ingredients: readonly string[] }> = {
  code: "price-missing",
  severity: "note",
  source: "common-practice",
  sentence: ({ ingredients }) =>
    `Not every pack of ${ingredients.join(", ")} has a price: it is bought with the least left over, and the cost is not known.`,
};

export const weightUnknown: CautionKind<{ readonly ingredients: readonly string[] }> = {
  code: "weight-unknown",
  severity: "note",
  source: "common-practice",
  sentence: ({ ingredients }) =>
    `No published weight was found for ${ingredients.join(", ")}, so the mix's weight is not known. Weigh a litre before loading a car, a balcony or a roof.`,
};

export const tradePot: CautionKind<{ readonly pots: readonly string[] }> = {
  code: "trade-pot",
  severity: "note",
  source: "nursery-true-pot-volumes",
  sentence: ({ pots }) =>
    `A trade number is no volume: counted here as ${pots.join("; ")}, one nursery's measured fill. Makers differ; measure one.`,
};

export const brickYield: CautionKind<{
  readonly packs: readonly string[];
  readonly litresPerKilogram: number;
  readonly lowLitresPerKilogram: number;
  readonly highLitresPerKilogram: number;
}> = {
  code: "brick-yield",
  severity: "caution",
  source: "hortscience-coir-1996",
  sentence: ({ packs, litresPerKilogram, lowLitresPerKilogram, highLitresPerKilogram }) =>
    `${packs.join("; ")}: ${number(litresPerKilogram)} L from a kilogram is not what published densities allow (${number(lowLitresPerKilogram)} to ${number(highLitresPerKilogram)} L). Swell one in a bucket and measure.`,
};

export const drainageLayer: CautionKind<Record<string, never>> = {
  code: "drainage-layer",
  severity: "note",
  source: "plos-drainage-layers-2025",
  sentence: () =>
    "A drainage layer lowered the water held in most mixes without loam in a 2025 trial, and did mostly nothing in loam: it takes room that roots could have.",
};

export const limeWithCompost: CautionKind<{ readonly additions: readonly string[]; readonly compostPercent: number }> =
  {
    code: "lime-with-compost",
    severity: "caution",
    source: "compost-lime-trade-report",
    sentence: ({ additions, compostPercent }) =>
      `${additions.join(", ")} with ${number(compostPercent)} % compost: compost raises the pH by itself (40 % of one compost took peat from 4.5 to 6.7 without lime). Use less or none, and measure the pH.`,
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
  high < 1 ? `${number(1000 * low)} to ${number(1000 * high)} g` : `${number(low)} to ${number(high)} kg`;

const limeRange = (facts: PeatFacts): string =>
  `${number(facts.lowKilogramsPerCubicMetre)} to ${number(facts.highKilogramsPerCubicMetre)} kg of ground dolomitic lime per cubic metre are published for peat mixes (${here(facts)} here)`;

export const peatNeedsLime: CautionKind<PeatFacts> = {
  code: "peat-needs-lime",
  severity: "note",
  source: "rutgers-table-r4",
  sentence: (facts) =>
    `${number(facts.sharePercent)} % peat and neither lime nor compost: such mixes are acid. ${limeRange(facts)}; measure the pH.`,
};

export const peatWithCompost: CautionKind<PeatFacts> = {
  code: "peat-with-compost",
  severity: "note",
  source: "compost-lime-trade-report",
  sentence: (facts) =>
    `${number(facts.sharePercent)} % peat with compost: ${limeRange(facts)}, but compost raises the pH by itself. Less lime or none; measure the pH first.`,
};

export const coirLime: CautionKind<{ readonly sharePercent: number }> = {
  code: "coir-lime",
  severity: "note",
  source: "hortscience-coir-1996",
  sentence: ({ sharePercent }) =>
    `${number(sharePercent)} % coir: its pH was 5.6 to 6.9 over 12 sources, so it needs little lime or none, where peat needs much. Measure the pH.`,
};

export const compostSalts: CautionKind<{ readonly sharePercent: number }> = {
  code: "compost-salts",
  severity: "note",
  source: "missouri-media-salts",
  sentence: ({ sharePercent }) =>
    `${number(sharePercent)} % compost: composts measured EC 2.6 to 4.1 dS/m (methods differ). A growing mix is best at 2 to 3.5 in a saturated extract, and above 5 it harms: have the EC tested before peppers go in.`,
};

interface Named {
  readonly [fact: string]: readonly string[];
  readonly ingredients: readonly string[];
}

const list = ({ ingredients }: Named): string => {
  const text = ingredients.join(", ");
  return text.charAt(0).toUpperCase() + text.slice(1);
};

function hazard(
  code: string,
  severity: Severity,
  source: string,
  sentence: (facts: Named) => string,
): CautionKind<Named> {
  return { code, severity, source, sentence };
}

/** One caution for each hazard, naming the ingredients that have it. */
export const HAZARD_CAUTIONS: Readonly<Record<IngredientHazard, CautionKind<Named>>> = {
  "mineral-dust": hazard(
    "dust-perlite",
    "caution",
    "niosh-perlite",
    (facts) => `${list(facts)}: do not breathe the dust. Wet it in the bag before pouring, and wear a dust mask.`,
  ),
  "silica-dust": hazard(
    "dust-silica",
    "caution",
    "niosh-respirable-silica",
    (facts) =>
      `${list(facts)}: dry dust can hold fine silica, which harms the lungs. Keep it damp and wear a dust mask.`,
  ),
  legionella: hazard(
    "legionella",
    "caution",
    "legionella-potting-mix",
    (facts) =>
      `${list(facts)}: can carry Legionella. Open bags away from the face, damp it, air the place, wear mask and gloves, wash your hands.`,
  ),
  "herbicide-residue": hazard(
    "herbicide-residue",
    "note",
    "ncsu-herbicide-carryover",
    (facts) =>
      `${list(facts)}: some weedkillers survive composting and cripple peppers and tomatoes. Grow a few beans in it first.`,
  ),
  salts: hazard(
    "coir-salts",
    "note",
    "hortscience-coir-1996",
    (facts) =>
      `${list(facts)}: can be salty (over 12 sources EC 0.3 to 2.9 dS/m, potassium 19 to 948 and sodium 22 to 88 mg/L). Buy it washed and buffered, or rinse it; where sodium stays high it is soaked with calcium nitrate: follow its label, and let the water that drains out reach no drain or stream.`,
  ),
  "raw-manure": hazard(
    "fresh-manure",
    "danger",
    "nop-raw-manure",
    (facts) =>
      `${list(facts)}: unless hot-composted it can carry germs, gives off ammonia and burns roots. Not in a mix that is planted now, and not in pots: 90 days from digging in to harvest for staked crops, 120 for what touches the soil; gloves, and wash.`,
  ),
  // 131 to 170 F for 3 days in a vessel, or 15 days in windrows turned five times: 7 CFR 205.203(c)(2).
  "rotted-manure": hazard(
    "rotted-manure",
    "note",
    "nop-raw-manure",
    (facts) =>
      `${list(facts)}: counts as composted only if the heap was hot (55 to 77 °C for 3 days in a vessel, or for 15 days in a windrow turned five times). If not, treat it as fresh: 90 or 120 days before harvest.`,
  ),
  "soil-lead": hazard(
    "soil-lead",
    "note",
    "umd-soil-lead",
    (facts) =>
      `${list(facts)}: near old paint, roads or works have it tested; above 400 ppm lead grow no vegetables in it.`,
  ),
};
