import type { CautionKind, Severity } from "../../outcome/caution.ts";
import { capital } from "../../outcome/sentence.ts";
import type { IngredientHazard } from "../ingredient/facts.ts";

interface Named {
  readonly [fact: string]: readonly string[];
  readonly ingredients: readonly string[];
}

const list = ({ ingredients }: Named): string => capital(ingredients.join(", "));

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
