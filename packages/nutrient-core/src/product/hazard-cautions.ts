import { type Caution, type CautionKind, raise } from "../outcome/caution.ts";
import { capital } from "../outcome/sentence.ts";
import { HAZARDS, type Hazard, type Product } from "./product.ts";

/** The products that a hazard belongs to, by name. */
interface HazardFacts {
  readonly [fact: string]: readonly string[] | number | string;
  readonly products: readonly string[];
  readonly state: StateOfAll;
}

/** Whether what has the hazard is solid or liquid: a liquid is not kept dry. */
type StateOfAll = Product["state"] | "both";

const KEPT: Readonly<Record<StateOfAll, string>> = {
  solid: "keep it dry",
  liquid: "keep it tightly closed and upright",
  both: "keep what is solid dry, what is liquid tightly closed and upright, and both",
};

const named = ({ products }: HazardFacts): string => capital(products.join(", "));

/** Days from raw manure to harvest, for crops off the soil (staked peppers) and on it (7 CFR 205.203(c)(1)). */
const RAW_MANURE_DAYS = { daysToHarvestCropOffSoil: 90, daysToHarvestCropOnSoil: 120 } as const;

/**
 * What is said of each hazard. The usual precautions only: the label and the safety sheet know the product better.
 * Dust, swallowing and eyes are common practice without a source of their own; that a product has the hazard is
 * sourced at each material.
 */
const KINDS: Readonly<Record<Hazard, CautionKind<HazardFacts>>> = {
  oxidiser: {
    code: "hazard-oxidiser",
    severity: "caution",
    source: "osha-1910-109",
    sentence: (facts) =>
      `${named(facts)}: feeds a fire. ${capital(KEPT[facts.state])}${facts.state === "both" ? "" : ","} away from heat, fuel, oil, sawdust, straw, paper and other products, and follow its label and local storage rules.`,
  },
  acid: {
    code: "hazard-acid",
    severity: "danger",
    source: "acid-handling-notes",
    sentence: (facts) =>
      `${named(facts)}: burns skin and eyes. Wear goggles, acid-proof gloves and apron, have water at hand, pour acid into water and never water into acid, never near bleach; follow its label, and leave strong acids to people trained for them.`,
  },
  caustic: {
    code: "hazard-caustic",
    severity: "caution",
    source: "acid-handling-notes",
    sentence: (facts) =>
      `${named(facts)}: strongly alkaline, and can burn before it hurts. Wear goggles and gloves, ${KEPT[facts.state]}${facts.state === "both" ? "" : " and"} apart from ammonium fertilizers and acids, rinse at once with much water, and follow its label.`,
  },
  "eye-damage": {
    code: "hazard-eyes",
    severity: "caution",
    source: "common-practice",
    sentence: (facts) =>
      `${named(facts)}: can irritate or damage the eyes. Wear eye protection and gloves; rinse for many minutes with water and see a doctor if it gets in; follow its label.`,
  },
  "harmful-if-swallowed": {
    code: "hazard-swallowed",
    severity: "caution",
    source: "common-practice",
    sentence: (facts) =>
      `${named(facts)}: harmful if swallowed. Keep it locked away from children, pets and food, in its own labelled pack, and use no kitchen spoon for food again.`,
  },
  "may-harm-fertility": {
    code: "hazard-fertility",
    severity: "danger",
    source: "wecobis-borates",
    sentence: (facts) =>
      `${named(facts)}: may damage fertility or the unborn child. Nobody who is or may become pregnant should handle it; avoid its dust, wear gloves, and follow its label and local rules.`,
  },
  "toxic-to-water-life": {
    code: "hazard-water-life",
    severity: "caution",
    source: "icsc-1416",
    sentence: (facts) =>
      `${named(facts)}: toxic to water life. Let nothing run into drains, ponds or streams, and take leftovers where local rules say.`,
  },
  dust: {
    code: "hazard-dust",
    severity: "note",
    source: "common-practice",
    sentence: (facts) =>
      `${named(facts)}: do not breathe the dust. Pour it low and out of the wind, damp it where it may be damp, and wear a dust mask.`,
  },
  "flammable-dust": {
    code: "hazard-flammable-dust",
    severity: "caution",
    source: "nite-sulfur",
    sentence: (facts) =>
      `${named(facts)}: its dust burns and can explode in the air. No flame, spark or smoking, no mixing with oxidisers, and no raising of dust indoors; follow its label.`,
  },
  pathogens: {
    code: "hazard-pathogens",
    severity: "caution",
    source: "nop-raw-manure",
    sentence: (facts) =>
      `${named(facts)}: unless the label or a hot, turned heap proves it treated, it can carry germs. Dig it in ${facts["daysToHarvestCropOnSoil"]} days before harvesting what touches the soil, ${facts["daysToHarvestCropOffSoil"]} days for staked crops, never beside growing crops; wear gloves and wash.`,
  },
  "sale-restricted": {
    code: "hazard-sale-restricted",
    severity: "note",
    source: "eu-2019-1148",
    sentence: (facts) =>
      `${named(facts)}: sale to the public is restricted in some countries. Ask what local law allows, store it locked, and report a loss.`,
  },
};

/**
 * The cautions that these products bring with them: one for each hazard, naming every product that has it.
 *
 * @param products Whatever is about to be handled; order and repeats do not matter.
 * @returns In the order of the list of hazards, empty for products without any.
 * @example
 * hazardCautions([materialById("potassium-nitrate")!]).map(({ code }) => code)  // => ["hazard-oxidiser", "hazard-eyes"]
 */
export function hazardCautions(products: readonly Product[]): Caution[] {
  return HAZARDS.flatMap((hazard) => {
    const having = products.filter(({ hazards }) => hazards.includes(hazard));
    if (having.length === 0) return [];
    const names = [...new Set(having.map(({ name }) => name))].sort();
    const states = new Set(having.map(({ state }) => state));
    const state = states.size === 2 ? "both" : having[0]!.state;
    const facts = { products: names, state, ...(hazard === "pathogens" ? RAW_MANURE_DAYS : {}) } as const;
    return [raise(KINDS[hazard], facts)];
  });
}
