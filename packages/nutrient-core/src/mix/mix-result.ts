import type { AirAndWater } from "./air-and-water.ts";
import type { FirstSeason } from "./first-season.ts";
import type { FloorLoad, MixMass } from "./weight.ts";

export interface OrderedPack {
  /** As it is asked for: "50 L". */
  readonly pack: string;
  readonly count: number;
  /** Loose litres that one of them gives. */
  readonly litres: number;
  /** Brought loose, in steps of so many litres. */
  readonly isBulk: boolean;
}

export interface MixComponent {
  readonly name: string;
  /** Share by volume of loose material. */
  readonly share: number;
  /** At hand: mixed in, not ordered. */
  readonly isOwn: boolean;
  /** Its part of the filled space. */
  readonly volumeLitres: number;
  /** Its part of the loose material. */
  readonly looseVolumeLitres: number;
  /** Loose litres taken from what is at hand. */
  readonly stockUsedLitres: number;
  readonly order: readonly OrderedPack[];
  /** Bought, less what is needed beside the stock. */
  readonly leftoverLitres: number;
  readonly cost?: number;
  /** Other orders of it that cost exactly the same. */
  readonly choices?: readonly (readonly OrderedPack[])[];
}

export interface FilledSpace {
  readonly written: string;
  readonly label: string;
  readonly count: number;
  readonly volumeLitres: number;
  readonly areaSquareMetres?: number;
  readonly plants?: number;
  readonly load?: FloorLoad;
}

export interface MixAddition {
  readonly name: string;
  readonly massGrams: number;
  readonly gramsPerCubicMetre: number;
}

/** Trips of a car: what is certainly needed, and what suffices when whole packs are loaded largest first. */
export interface CarLoads {
  readonly atLeast: number;
  readonly enough: number;
}

/** For coir that a test shows to be salty. */
export interface CoirSoak {
  readonly calciumNitrateGrams: number;
  readonly waterLitres: number;
}

export interface MixResult {
  readonly fillVolumeLitres: number;
  readonly mixedVolumeLitres: number;
  readonly orderVolumeLitres: number;
  /** Lowest and highest by the published losses, where the grower stated none. */
  readonly orderVolumeRangeLitres: readonly [number, number];
  /** To heap above the rim now, or to keep for topping up. */
  readonly topUpLitres: number;
  readonly fills: readonly FilledSpace[];
  /** Of all fills; unknown when a pot's litres are all that is known of it. */
  readonly areaSquareMetres?: number;
  readonly plants?: number;
  readonly components: readonly MixComponent[];
  readonly deliveries: readonly { readonly name: string; readonly charge: number }[];
  readonly cost?: number;
  /** How many more litres what is left over of everything would fill. */
  readonly leftoverWouldFillLitres?: number;
  readonly additions: readonly MixAddition[];
  readonly massKilograms?: MixMass;
  readonly carLoads?: CarLoads;
  readonly airAndWater: AirAndWater;
  readonly firstSeason?: FirstSeason;
  /** What a calcium soak of the coir takes, where it was sold neither washed nor buffered. */
  readonly coirSoak?: CoirSoak;
  /** Source of a named recipe. */
  readonly recipeSource: string | null;
}
