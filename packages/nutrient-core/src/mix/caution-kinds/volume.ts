import type { CautionKind } from "../../outcome/caution.ts";
import { shown } from "../../outcome/sentence.ts";

const LITRES_PER_CUBIC_FOOT = 28.316846592;

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
      assumed.includes("loss") ? `${shown(lossPercent)} % lost on mixing` : "",
      assumed.includes("settling") ? `${shown(settlingPercent)} % lost on settling (no measured figure was found)` : "",
    ];
    const range = `${shown(lowLitres)} to ${shown(highLitres)} L (${shown(lowLitres / LITRES_PER_CUBIC_FOOT)} to ${shown(highLitres / LITRES_PER_CUBIC_FOOT)} cu ft)`;
    return `Assumed: ${parts.filter(Boolean).join(", ")}. Published figures make it ${range}; mix a measured trial and state --loss and --settling.`;
  },
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

export const drainageLayer: CautionKind<Record<string, never>> = {
  code: "drainage-layer",
  severity: "note",
  source: "plos-drainage-layers-2025",
  sentence: () =>
    "A drainage layer lowered the water held in most mixes without loam in a 2025 trial, and did mostly nothing in loam: it takes room that roots could have.",
};
