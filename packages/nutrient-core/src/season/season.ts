import type { LabelRule } from "../product/label-tolerance.ts";
import type { Product } from "../product/product.ts";
import type { Delivered } from "../supply/supply.ts";
import type { Measures } from "../supply/weigh-measures.ts";
import type { CivilDate } from "./civil-date.ts";
import type { CropFacts } from "./crop.ts";
import type { DailyTemperature } from "./degree-days.ts";
import type { Programme } from "./programme.ts";

/** Plants that share their dates and their programme: fed on the same days with the same feed. */
export interface Planting {
  /** Unique in the season, as the grower named it. */
  readonly name: string;
  /** Its plain name. */
  readonly crop: string;
  readonly facts: CropFacts;
  readonly places: readonly Place[];
  readonly plants: number;
  /** Of beds, and of pots whose top is known; undefined where a place's area is not known. */
  readonly areaSquareMetres?: number;
  readonly sown?: CivilDate;
  readonly setOut: CivilDate;
  /** Last day of the season. */
  readonly end: CivilDate;
  readonly programme: Programme;
  /** Brought by the mix in the first season. */
  readonly fromMix?: MixOffset;
  /** Fruit hoped for: the need is then reckoned from it rather than from the area. */
  readonly harvestKilogramsPerPlant?: number;
}

export interface Place {
  readonly name: string;
  readonly kind: "bed" | "pot" | "ridge";
  /** How many alike. */
  readonly count: number;
  /** Of all of them together. */
  readonly plants: number;
  /** Of all of them together. */
  readonly volumeLitres: number;
  readonly areaSquareMetres?: number;
}

/** What a compost or a mix gives of itself, evenly over so many days from setting out. */
export interface MixOffset {
  readonly gramsPerPlant: Delivered;
  readonly overDays: number;
}

/** A largest amount that may be given in the season. */
export interface Ceiling {
  /** Elements only; an oxide was turned into its element when it was read. */
  readonly nutrient: "N" | "P" | "K";
  readonly basis: "plant" | "squareMetre" | "total";
  readonly grams: number;
}

export interface SeasonInput {
  readonly name: string;
  readonly plantings: readonly Planting[];
  /** To feed with, unless a stage names its own. */
  readonly products: readonly Product[];
  /** Products that a stage or a record may name. */
  readonly shelf: readonly Product[];
  readonly currency?: string;
  /** mg/L of each nutrient in the water. */
  readonly water: Delivered;
  readonly canLitres: number;
  /** What there is to measure with: each can's amounts are whole steps of it. Exact amounts where left out. */
  readonly measures?: Measures;
  /** Whose rule says how far a product may fall short of its label. */
  readonly labelRule: LabelRule;
  /** The shelf's stock was counted on this day; the first day of the season where left out. */
  readonly stockCounted?: CivilDate;
  readonly ceilings: readonly Ceiling[];
  /** Share of what is given that drains away with the water, 0 to 1. */
  readonly leachingShare: number;
  /** Of a season of years, oldest first; gaps are left out. */
  readonly weather: readonly DailyTemperature[];
  /** The air's temperature around seedlings before they are set out, °C. */
  readonly raisedAtCelsius?: number;
  /** Of the seed bed, °C. */
  readonly sowingCelsius?: number;
  readonly reminders: boolean;
}
