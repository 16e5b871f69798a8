import type { CautionKind, Facts } from "../outcome/caution.ts";
import { capital, listed } from "../outcome/sentence.ts";

/*
 * What dry products do to each other. Handbooks of the trade agree on these pairs; where no page was read the source
 * says so.
 */

/** The products on both sides of a rule, by name. */
export interface Pair extends Facts {
  readonly ones: readonly string[];
  readonly others: readonly string[];
}
export type PairKind = CautionKind<Pair>;

const pair = ({ ones, others }: Pair): string => `${capital(listed(ones))} with ${listed(others)}`;

/**
 * An oxidiser among fuel. The rules for storing ammonium nitrate name sawdust, hay, paper and oil; sulfur and meals,
 * and the other nitrates, are common practice.
 */
export const FIRE: PairKind = {
  code: "pair-fire",
  severity: "danger",
  source: "osha-1910-109",
  sentence: (facts) =>
    `${pair(facts)}: never mix or store them together. A nitrate among sulfur or dry meal can catch fire and burn fiercely. Spread each by itself, dig one in before the other goes on, use a scoop of its own for each, and follow the labels.`,
};

export const AMMONIA_ESCAPES: PairKind = {
  code: "pair-ammonia",
  severity: "caution",
  source: "common-practice",
  sentence: (facts) =>
    `${pair(facts)}: the strong alkali turns ammonium and urea into ammonia, a gas that stings eyes and lungs and is lost to the plants. Never mix them: dig the alkali in first, and give the nitrogen two weeks or more later.`,
};

export const TURNS_LIQUID: PairKind = {
  code: "pair-turns-liquid",
  severity: "caution",
  source: "common-practice",
  sentence: (facts) =>
    `${pair(facts)}: mixed dry they draw water from the air and turn to slush. Keep and spread them apart, or dissolve both in water.`,
};

export const TURNS_STICKY: PairKind = {
  code: "pair-turns-sticky",
  severity: "caution",
  source: "compatibility-chart-2010",
  sentence: (facts) =>
    `${pair(facts)}: mixed dry they set free water and turn sticky, then hard. Spread them apart, or mix them only right before spreading.`,
};

export const SETS_HARD: PairKind = {
  code: "pair-sets-hard",
  severity: "note",
  source: "compatibility-chart-2010",
  sentence: (facts) =>
    `${pair(facts)}: mixed dry they draw water and set hard. Spread them apart, or mix them only right before spreading and keep no leftovers.`,
};
