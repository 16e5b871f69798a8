import type { CautionKind } from "../../outcome/caution.ts";

/*
 * What a label can be suspected of. The answer stands as the label was read; only the bag can settle it.
 */

/** Four digits tell two figures of percent apart. */
const percent = (value: number): string => `${Number(value.toPrecision(4))} %`;

/** The contents, each in the lightest compound that a fertilizer holds it in, weigh more than the whole. */
export const labelOver100: CautionKind<{ readonly product: string; readonly leastPercent: number }> = {
  code: "label-over-100",
  severity: "caution",
  source: "ciaaw-2021",
  sentence: ({ product, leastPercent }) =>
    `${product}: with the nitrogen as urea and the other nutrients as oxides or chlorides, the lightest they come in, these contents weigh ${percent(leastPercent)} of the product. Check the numbers against the bag, and whether they are percent.`,
};

/** The printed forms of the nitrogen and its total differ. */
export const labelFormsDoNotSum: CautionKind<{
  readonly product: string;
  readonly totalPercent: number;
  readonly formsPercent: number;
  readonly forms: readonly string[];
}> = {
  code: "label-forms-do-not-sum",
  severity: "caution",
  source: "eu-2003-2003-annex-2",
  sentence: ({ product, totalPercent, formsPercent, forms }) =>
    `${product}: ${forms.join(" + ")} make ${percent(formsPercent)} N, but the total is printed as ${percent(totalPercent)}. The total was used; check both against the bag.`,
};

/** More of a nutrient than the salt of the product's name holds, or than any salt of the trade; or far less. */
export const labelUnlikeItsSalt: CautionKind<{
  readonly product: string;
  readonly salt: string;
  readonly form: string;
  readonly percent: number;
  readonly lowPercent: number;
  readonly highPercent: number;
}> = {
  code: "label-unlike-its-salt",
  severity: "caution",
  source: "ciaaw-2021",
  sentence: ({ product, salt, form, percent: found, lowPercent, highPercent }) => {
    const held =
      highPercent === 0
        ? "none of it"
        : lowPercent === 0
          ? `at most ${percent(highPercent)}`
          : `${percent(lowPercent)} to ${percent(highPercent)}`;
    return `${product}: ${percent(found)} ${form} does not fit ${salt}, which holds ${held}. Check the number, its basis (oxide or element) and the name against the bag.`;
  },
};

/** As it was read the grade fits no salt, on the other basis it fits one. */
export const labelElementBasis: CautionKind<{
  readonly product: string;
  readonly salt: string;
  readonly readAs: string;
  readonly fitsAs: string;
}> = {
  code: "label-element-basis",
  severity: "caution",
  source: "ciaaw-2021",
  sentence: ({ product, salt, readAs, fitsAs }) =>
    `${product}: with P and K read as ${readAs}s this is no grade of the usual salts, with P and K as ${fitsAs}s it is ${salt}. If the bag is of a country that prints ${fitsAs}s, read it with basis ${fitsAs}; P differs by 2.29 times, K by 1.20.`,
};

/** The analysis stands on memory. */
export const labelFromMemory: CautionKind<{ readonly product: string }> = {
  code: "label-from-memory",
  severity: "note",
  source: "from-memory",
  sentence: ({ product }) =>
    `${product}: this analysis is remembered, not read in a source. The label of your bag goes before it.`,
};
