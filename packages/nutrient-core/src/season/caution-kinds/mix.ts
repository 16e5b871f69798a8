import type { CautionKind } from "../../outcome/caution.ts";
import { listed, shown } from "../../outcome/sentence.ts";

export const mixReckoned: CautionKind<{
  readonly lowGramsPerCubicMetre: number;
  readonly highGramsPerCubicMetre: number;
}> = {
  code: "mix-reckoned",
  severity: "note",
  source: "uc-orchard-compost-nitrogen",
  sentence: ({ lowGramsPerCubicMetre: low, highGramsPerCubicMetre: high }) =>
    `The mix is counted with N ${shown(low)} g/m3, reckoned from its recipe: the mean of many composts, and the least of the ${shown(low)} to ${shown(high)} g/m3 that are published for the first season. Its phosphorus and potassium are not counted, for no figure was found. The compost's own label or a test goes before this: write it as brings in place of the recipe.`,
};

export const mixWithoutCompost: CautionKind<Record<string, never>> = {
  code: "mix-without-compost",
  severity: "note",
  source: "common-practice",
  sentence: () =>
    "The mix's recipe holds no compost of known density, so nothing of it is counted. If it feeds all the same, write what it gives as brings in place of the recipe.",
};

export const mixAdditionsNotCounted: CautionKind<{ readonly additions: readonly string[] }> = {
  code: "mix-additions-not-counted",
  severity: "caution",
  source: "common-practice",
  sentence: ({ additions }) =>
    `What is mixed in by mass is not counted among what the mix gives: ${listed(additions)}. Where it feeds, the plants get more than is planned: write all that the mix gives as brings in place of the recipe.`,
};
