import type { BothForms } from "../supply/both-forms.ts";
import type { Delivered } from "../supply/supply.ts";
import type { CivilDate } from "./civil-date.ts";
import type { Milestone } from "./crop.ts";
import type { Evidence } from "./programme.ts";
import type { Ceiling } from "./season.ts";

/** A range of days, with the day that is planned with. */
export interface DateRange {
  readonly earliest: CivilDate;
  readonly likely: CivilDate;
  readonly latest: CivilDate;
}

/** When something is seen or expected in a planting. */
export interface MilestoneDate extends DateRange {
  readonly planting: string;
  readonly milestone: Milestone;
  /** The prediction as its figures gave it, before what was not yet seen today was put ahead of today. */
  readonly expected?: DateRange;
  /**
   * `given` in the file, `observed` in the record, `implied` where only a later milestone is on record; else by which
   * kind of figure it is predicted.
   */
  readonly basis: "given" | "observed" | "implied" | "degree-days" | "days";
  /** The later milestone that was seen, where the basis is `implied`. */
  readonly impliedBy?: Milestone;
  /** Of the figure behind a prediction; null where it is the grower's own date. */
  readonly source: string | null;
}

/** A stage with its days, as it stands today. */
export interface StageSpan {
  readonly planting: string;
  readonly id: string;
  readonly name: string;
  readonly begins: CivilDate;
  /** The day before the next stage, or the last day of the season. */
  readonly ends: CivilDate;
  /** Its beginning hangs on something not yet seen. */
  readonly provisional: boolean;
}

export interface SeasonAmount {
  readonly product: string;
  /** The product's plain name. */
  readonly name: string;
  /** For the whole feed, all cans together. */
  readonly massGrams: number;
  readonly perCanGrams: number;
  /** Of one can, where the density is known. */
  readonly perCanMillilitres?: number;
  readonly cost?: number;
}

/** `given`: recorded. `assumed`: in the past, nothing is recorded at all. `planned`: to come. */
export type EventStatus = "given" | "assumed" | "planned";

export interface SeasonEvent {
  /** Stays the same when the plan moves: planting, and the number of the feed in it. */
  readonly id: string;
  readonly date: CivilDate;
  /** It was due on this earlier day, and nothing was recorded. */
  readonly dueSince?: CivilDate;
  readonly planting: string;
  /** The stage's id. */
  readonly stage: string;
  readonly stageName: string;
  readonly status: EventStatus;
  /** Its date or stage hangs on something not yet seen. */
  readonly provisional: boolean;
  /** Whole cans. */
  readonly cans: number;
  readonly canLitres: number;
  /** What each plant gets when all cans are given out evenly. */
  readonly litresPerPlant: number;
  readonly amounts: readonly SeasonAmount[];
  /** mg per litre of feed, the water's own included; elements and oxides side by side. */
  readonly deliveredPpm: BothForms;
  readonly ecMilliSiemensPerCm?: number;
  /** `met`, or `closest` where the products cannot reach the target. */
  readonly reached: "met" | "closest" | "as-recorded";
  /** How far from the target it is, in words; a caution says why. */
  readonly explanation: readonly string[];
  /** The recipe's number: feeds that are mixed alike share it. Null for what is only recorded. */
  readonly recipe: number | null;
  /** Grams of each element in all cans together, the water's own included. */
  readonly nutrientGrams: Delivered;
}

/** Something to do beside feeding, in a range of days. */
export interface Reminder {
  readonly id: string;
  readonly planting: string;
  readonly kind:
    | "soak-seed"
    | "germination"
    | "set-out"
    | "look-for-first-flower"
    | "pinch"
    | "clear-lowest-leaves"
    | "pick";
  readonly from: CivilDate;
  readonly to: CivilDate;
  readonly text: string;
  /** Source id, or `common-practice`. */
  readonly source: string;
  /** For picking: again after so many days, least and most. */
  readonly everyDays?: readonly [number, number];
}

export interface ProductTotal {
  readonly product: string;
  readonly name: string;
  readonly givenGrams: number;
  readonly plannedGrams: number;
  /** Given and planned. */
  readonly massGrams: number;
  readonly cost?: number;
}

export interface SeasonTotals {
  readonly feeds: number;
  readonly cans: number;
  readonly waterLitres: number;
  readonly products: readonly ProductTotal[];
  /** Grams of each element given out, the water's own included. */
  readonly nutrientGrams: Delivered;
  /** Of what is used up, where every price is known. */
  readonly cost?: number;
  readonly costPerPlant?: number;
  readonly costPerCan?: number;
  readonly harvestedGrams: number;
}

export interface PackLine {
  /** Grams in one pack. */
  readonly packGrams: number;
  readonly count: number;
  readonly price?: number;
}

/** What to buy of one product. needed = fromStock + bought - leftover, exactly. */
export interface ShoppingLine {
  readonly product: string;
  readonly name: string;
  /** From the day the stock was counted to the end. */
  readonly neededGrams: number;
  readonly stockGrams: number;
  /** Empty where nothing has to be bought, or no pack is known. */
  readonly packs: readonly PackLine[];
  readonly boughtGrams: number;
  readonly leftoverGrams: number;
  /** More is needed than there is, and no pack is known to fill the gap. */
  readonly missingGrams: number;
  readonly cost?: number;
}

/** Cumulative amounts on one day. */
export interface BudgetPoint {
  readonly date: CivilDate;
  /** Grams per plant, as labelled. */
  readonly gramsPerPlant: number;
  readonly lowGramsPerPlant: number;
  readonly highGramsPerPlant: number;
}

/** One nutrient of one planting over the season. */
export interface NutrientBudget {
  readonly planting: string;
  readonly nutrient: "N" | "P" | "K";
  readonly given: Spread;
  /** Given and planned, water and feeds. */
  readonly season: Spread;
  /** What the mix brings beside it. */
  readonly fromMixGramsPerPlant: number;
  /** Of the season's amount, what drains away. */
  readonly leachedGramsPerPlant: number;
  /** What a crop takes up or is advised, grams per plant: least and most published; null where none is known. */
  readonly need: { readonly gramsPerPlant: readonly [number, number]; readonly source: string } | null;
  readonly ceilings: readonly CeilingOutlook[];
  readonly curve: readonly BudgetPoint[];
}

/** An amount three ways, and its range from the tolerances of labels and scales. */
export interface Spread {
  readonly gramsPerPlant: number;
  readonly gramsPerSquareMetre?: number;
  readonly totalGrams: number;
  /** The least and the most that it can have been, as a share of the figures above: 0.97 is three percent less. */
  readonly rangeAsShare: readonly [number, number];
}

export interface CeilingOutlook {
  readonly ceiling: Ceiling;
  /** The ceiling as grams per plant of this planting. */
  readonly gramsPerPlant: number;
  readonly shareUsed: number;
  /** First feed that goes over it by the labels; null where none does. */
  readonly passedOn: CivilDate | null;
  /** First feed that may go over it, at the upper end of the range. */
  readonly mayPassOn: CivilDate | null;
}

export interface SeasonPlan {
  /** As of this day; null where no day was given. */
  readonly today: CivilDate | null;
  readonly events: readonly SeasonEvent[];
  readonly milestones: readonly MilestoneDate[];
  readonly stages: readonly StageSpan[];
  readonly reminders: readonly Reminder[];
  readonly totals: SeasonTotals;
  readonly shopping: readonly ShoppingLine[];
  readonly shoppingCost?: number;
  readonly budget: readonly NutrientBudget[];
  readonly programmes: readonly ProgrammeNote[];
}

/** What is to be known about the programme of a planting. */
export interface ProgrammeNote {
  readonly planting: string;
  readonly id: string;
  readonly name: string;
  readonly evidence: Evidence;
  readonly sources: readonly string[];
  readonly notes: readonly string[];
}
