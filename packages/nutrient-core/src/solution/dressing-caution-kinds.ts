import type { CautionKind, Facts } from "../outcome/caution.ts";
import { listed, shown } from "../outcome/sentence.ts";
import type { Excess } from "./excess.ts";

export const STRONG_DRESSING: CautionKind<Excess> = {
  code: "feed-strength",
  severity: "caution",
  source: "florida-pepper-drip-2006",
  sentence: ({ excesses }) =>
    `One dressing gives as much as a whole season or more: ${listed(excesses)}. Split it into several, or use less; a soil test tells how much the bed needs.`,
};

export const BURNING_DRESSING: CautionKind<Excess> = {
  ...STRONG_DRESSING,
  severity: "danger",
  sentence: ({ excesses }) =>
    `Do not spread this in one go: ${listed(excesses)}. It will burn roots and wash out. Check the amounts and the units: pounds of product are not pounds of nutrient.`,
};

interface Lime extends Facts {
  readonly products: readonly string[];
  readonly carbonateGramsPerSquareMetre: number;
  readonly limitGramsPerSquareMetre: number;
}

export const MUCH_LIME: CautionKind<Lime> = {
  code: "lime-heavy",
  severity: "caution",
  source: "psu-home-garden-lime",
  sentence: ({ products, carbonateGramsPerSquareMetre, limitGramsPerSquareMetre }) =>
    `This much ${listed(products)}, ${shown(carbonateGramsPerSquareMetre)} g/m2 counted as calcium carbonate, goes on in two dressings half a year apart (from ${shown(limitGramsPerSquareMetre)} g/m2 on), and only where a soil test asks for it: too much lime locks up iron, manganese, zinc and phosphorus for years.`,
};

export const TOO_MUCH_LIME: CautionKind<Lime> = {
  ...MUCH_LIME,
  severity: "danger",
  sentence: ({ products, carbonateGramsPerSquareMetre, limitGramsPerSquareMetre }) =>
    `Do not spread this in one go: ${listed(products)} comes to ${shown(carbonateGramsPerSquareMetre)} g/m2 counted as calcium carbonate. Even on a very sour soil ${shown(limitGramsPerSquareMetre)} g/m2 or more is split over three dressings half a year apart. It can spoil the bed for years: check the amounts, and have the soil tested.`,
};

export const MUCH_SULFUR: CautionKind<{
  readonly sulfurGramsPerSquareMetre: number;
  readonly limitGramsPerSquareMetre: number;
}> = {
  code: "sulfur-heavy",
  severity: "caution",
  source: "rhs-acidifying-soil",
  sentence: ({ sulfurGramsPerSquareMetre, limitGramsPerSquareMetre }) =>
    `${shown(sulfurGramsPerSquareMetre)} g/m2 of elemental sulfur is over the ${shown(limitGramsPerSquareMetre)} g/m2 that take a clay from pH 7.0-7.5 to 6.0-6.5; a sand needs half. Use less, give it months to act, and test the pH before giving more.`,
};

export const RUNOFF_DRESSING: CautionKind<Facts> = {
  code: "runoff",
  severity: "note",
  source: "ny-ecl-17-2103",
  sentence: () =>
    "Keep it off paths and paving and sweep back what falls there, stay well away from drains, wells and open water, and do not spread before heavy rain; local rules may set distances and dates.",
};
