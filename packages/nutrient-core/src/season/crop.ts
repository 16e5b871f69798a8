import type { Thresholds } from "./degree-days.ts";

/** What a grower can see in a plant, and what is known from the start. */
export const MILESTONES = ["sown", "set-out", "first-flower", "first-fruit-set", "first-harvest", "end"] as const;
export type Milestone = (typeof MILESTONES)[number];

/** When a milestone is to be expected: so long after another one, least, likely and most. */
export interface Expectation {
  readonly after: Milestone;
  readonly unit: "days" | "degree-days";
  readonly amounts: readonly [least: number, likely: number, most: number];
  /** Of the figures; null where the grower gave them. */
  readonly source: string | null;
}

/** What a season needs to know of a crop; every figure can be replaced by the grower's own. */
export interface CropFacts {
  readonly thresholds?: Thresholds;
  readonly thresholdsSource?: string;
  /** The first one that can be reckoned holds. */
  readonly expected: Readonly<Partial<Record<Milestone, readonly Expectation[]>>>;
  /** Days to emergence by soil temperature; undefined where nothing came up. */
  readonly emergence?: { readonly days: readonly EmergenceRow[]; readonly source: string };
  readonly uptake?: Uptake;
}

export type EmergenceRow = readonly [celsius: number, days: number | null];

/** What a crop takes up, element: grams per square metre of a full crop, and grams per kilogram of fruit. */
export interface Uptake {
  readonly gramsPerSquareMetre: Readonly<Record<"N" | "P" | "K", readonly [number, number]>>;
  readonly areaSource: string;
  readonly gramsPerKilogramOfFruit: Readonly<Record<"N" | "P" | "K", readonly [number, number]>>;
  readonly fruitSource: string;
}

/** Fahrenheit degree days in Celsius ones. */
const F = 5 / 9;

/**
 * Peppers.
 *
 * Degree days: field-sown New Mexico chile between 55 and 86 °F. Two published data sets disagree on the first bloom
 * (954 and 1369 °F days); the range spans both, and the middle of the two is the likely one.
 * Days: 60 to 90 from setting out to green fruit, 45 to 60 from flower to green fruit; the difference is the time to
 * the first flower, derived here.
 */
const PEPPER: CropFacts = {
  thresholds: { lowerCelsius: (55 - 32) * F, upperCelsius: (86 - 32) * F },
  thresholdsSource: "arizona-chile-thresholds",
  expected: {
    "first-flower": [
      {
        after: "sown",
        unit: "degree-days",
        amounts: [954 * F, ((954 + 1369) / 2) * F, 1369 * F],
        source: "arizona-chile-phenology",
      },
      { after: "set-out", unit: "days", amounts: [0, 23, 45], source: "pepper-timeline" },
    ],
    "first-fruit-set": [{ after: "first-flower", unit: "days", amounts: [2, 5, 10], source: "common-practice" }],
    "first-harvest": [{ after: "first-flower", unit: "days", amounts: [45, 52, 60], source: "pepper-timeline" }],
  },
  emergence: {
    days: [
      [10, null],
      [15, 25],
      [20, 13],
      [25, 8],
      [30, 8],
      [35, 9],
      [40, null],
    ],
    source: "knott-emergence",
  },
  uptake: {
    // 200-260 lb N, 40-60 lb P2O5 and 240-320 lb K2O an acre at 50,000 lb of fruit, as elements per square metre.
    gramsPerSquareMetre: { N: [22.42, 29.14], P: [1.96, 2.94], K: [22.33, 29.78] },
    areaSource: "uc-pepper-fertility",
    gramsPerKilogramOfFruit: { N: [3, 3.5], P: [0.8, 1], K: [5, 6] },
    fruitSource: "hegde-1997",
  },
};

const TOMATO: CropFacts = {
  expected: {},
  emergence: {
    days: [
      [10, 43],
      [15, 14],
      [20, 8],
      [25, 6],
      [30, 6],
      [35, 9],
      [40, null],
    ],
    source: "knott-emergence",
  },
};

const AUBERGINE: CropFacts = {
  expected: {},
  // Not tested below 20 nor above 30 °C. A web copy of the table has this row two columns too far left.
  emergence: {
    days: [
      [20, 13],
      [25, 8],
      [30, 5],
    ],
    source: "knott-emergence",
  },
};

const NAMES: readonly (readonly [RegExp, CropFacts])[] = [
  [/\b(pepper|chil+i|chile|capsicum|paprika)/i, PEPPER],
  [/\btomato/i, TOMATO],
  [/\b(aubergine|eggplant)/i, AUBERGINE],
];

/**
 * What is known of a crop by its plain name; nothing for a crop that is not known, which is no hindrance.
 *
 * @example
 * cropFacts("sweet pepper").emergence?.source  // => "knott-emergence"
 */
export function cropFacts(name: string): CropFacts {
  return NAMES.find(([pattern]) => pattern.test(name))?.[1] ?? { expected: {} };
}

/**
 * Days from sowing to emergence at a soil temperature, by straight lines between the rows of the published table.
 *
 * @param celsius Of the seed bed.
 * @returns Days, or undefined where nothing came up or nothing was tested.
 * @example
 * daysToEmergence(cropFacts("pepper"), 22.5)  // => 10.5
 */
export function daysToEmergence(crop: CropFacts, celsius: number): number | undefined {
  const rows = crop.emergence?.days ?? [];
  const above = rows.findIndex(([temperature]) => temperature >= celsius);
  const upper = rows[above];
  if (!upper) return undefined;
  if (upper[0] === celsius) return upper[1] ?? undefined;
  const lower = rows[above - 1];
  if (!lower || lower[1] === null || upper[1] === null) return undefined;
  return lower[1] + ((celsius - lower[0]) / (upper[0] - lower[0])) * (upper[1] - lower[1]);
}
