import type { CautionKind } from "../../outcome/caution.ts";

/** A size without a unit took the one that follows it. */
export const unitLent: CautionKind<{ readonly read: string }> = {
  code: "unit-lent",
  severity: "note",
  source: "common-practice",
  sentence: ({ read }) => `Sizes without a unit took the next one's: read as ${read}.`,
};

/** A pot by gallons, which the trade also uses as a name for less. */
export const gallonPot: CautionKind<{
  readonly written: string;
  readonly trade: string;
  /** 0 where the true volume of that trade size is not on file. */
  readonly tradeLitres: number;
}> = {
  code: "gallon-pot",
  severity: "note",
  source: "encyclopedia-trade-gallon",
  sentence: ({ written, trade, tradeLitres }) =>
    `"${written}" was taken as the full volume. Nursery pots are named in trade gallons, which hold less (about 2.8 L each): ${
      tradeLitres > 0 ? `a #${trade} truly holds ${tradeLitres} L, written "trade #${trade} pots"` : "measure one"
    }.`,
};
