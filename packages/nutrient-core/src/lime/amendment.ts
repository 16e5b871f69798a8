import { andThen, answer, at, gather, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Problem } from "../outcome/problem.ts";
import { capital, shown } from "../outcome/sentence.ts";
import { calciumCarbonateEquivalent, isLimeByFormula } from "../product/calcium-carbonate-equivalent.ts";
import { fractionOf, type Product } from "../product/product.ts";
import { type Fineness, readFineness } from "./fineness.ts";
import { readPercent } from "./read-percent.ts";

/** How a material moves the pH, and what of it counts. */
export type Amendment =
  | {
      readonly kind: "lime";
      /** As a fraction of pure calcium carbonate, by mass. */
      readonly equivalent: number;
      /** From the label, or reckoned from the calcium and magnesium in it. */
      readonly equivalentFrom: "label" | "composition";
      readonly fineness?: Fineness;
    }
  | { readonly kind: "sulfur" };

/** Magnesium oxide, the strongest, stands at 248. */
const STRONGEST_PERCENT = 250;

/**
 * Magnesium carbonate, the strongest carbonate, by its formula: 119 % (unl-liming-materials). What stands above it is
 * slaked or burnt, and burns.
 */
const STRONGEST_CARBONATE = 1.19;

/** What may be said of a lime beside its name. */
export interface AmendmentTexts {
  readonly cce?: string | undefined;
  readonly fineness?: string | undefined;
}

/** Tells how a product moves the pH, or says plainly that it does not. */
export function amendmentOf(product: Product, { cce, fineness }: AmendmentTexts): Outcome<Amendment> {
  if (product.formula === "S" && fractionOf(product, "S") > 0) {
    const given = cce === undefined ? (fineness === undefined ? undefined : "fineness") : "cce";
    return given ? unusable(ofLimeOnly(given, (cce ?? fineness)!)) : answer({ kind: "sulfur" });
  }
  const said = gather<{ cce: number | undefined; fineness: Fineness | undefined }>({
    cce: cce === undefined ? answer(undefined) : at("cce", readPercent(cce, STRONGEST_PERCENT)),
    fineness: fineness === undefined ? answer(undefined) : at("fineness", readFineness(fineness)),
  });
  return andThen(said, (texts) => {
    const ofFormula = calciumCarbonateEquivalent(product);
    const equivalent = texts.cce ?? ofFormula;
    if (equivalent === undefined || (ofFormula === undefined && !mayBeLime(product)))
      return unusable(noLime(product, mayBeLime(product)));
    if (texts.cce !== undefined && texts.cce > STRONGEST_CARBONATE && !isSlaked(product) && !isBurnt(product))
      return unusable(tooStrong(texts.cce, cce!));
    return answer({
      kind: "lime",
      equivalent,
      equivalentFrom: texts.cce === undefined ? "composition" : "label",
      ...(texts.fineness === undefined ? {} : { fineness: texts.fineness }),
    });
  });
}

/** Ash, and whatever the grower keeps that neither formula nor nitrogen speaks against, may be lime by their label. */
const mayBeLime = (product: Product): boolean =>
  isLimeByFormula(product) ||
  (product.formula === undefined &&
    fractionOf(product, "N") === 0 &&
    (product.origin !== "material" || isAsh(product)));

/** Whether it is wood ash: caustic, with calcium, and no compound. */
export const isAsh = ({ formula, hazards, composition }: Product): boolean =>
  formula === undefined && hazards.includes("caustic") && (composition.Ca ?? 0) > 0;

/** Whether it is a hydroxide. */
export const isSlaked = ({ formula = "" }: Product): boolean => /OH/.test(formula);
/** Whether it is an oxide. */
export const isBurnt = ({ formula = "" }: Product): boolean => /^(?:Ca|Mg)O$/.test(formula);

function tooStrong(equivalent: number, received: string): Problem {
  return {
    code: "cce-contradicts",
    path: "cce",
    message: `No carbonate comes to ${shown(100 * equivalent)} %: a lime this strong is slaked or burnt, and burns skin and eyes.`,
    expected: `at most ${shown(100 * STRONGEST_CARBONATE)} % from ground limestone or ash`,
    received,
    hint: "look at the bag again; where it is slaked lime, name hydrated-lime",
  };
}

function noLime(product: Product, byLabel: boolean): Problem {
  const { name, id } = product;
  if (byLabel) {
    return {
      code: "cce-missing",
      path: "cce",
      message: isAsh(product)
        ? `How much acid ${name} neutralises differs widely from heap to heap.`
        : `How much acid ${name} neutralises cannot be told from its label alone.`,
      expected: "its calcium carbonate equivalent",
      received: "nothing",
      hint: isAsh(product)
        ? "have it tested and add --cce 45%, or whatever was found (25 to 60 %, from memory)"
        : "add --cce 90% from the bag, or name the material: agricultural-lime, dolomitic-lime, sulfur",
    };
  }
  const formula = product.formula ?? "";
  return {
    code: "material-moves-no-ph",
    path: "material",
    message: WHY_NOT.find(({ kind }) => kind.test(formula))?.say(capital(name)) ?? neither(capital(name)),
    expected: "a lime (agricultural-lime, dolomitic-lime, hydrated-lime) or elemental sulfur",
    received: id,
    hint: "write agricultural-lime to raise the pH, sulfur to lower it",
  };
}

const neither = (name: string): string =>
  `${name} is neither a lime nor elemental sulfur: no published rate says how far it moves the pH.`;

/** Materials that are often taken for one that moves the pH, or that move it at too high a price. */
const WHY_NOT: readonly { readonly kind: RegExp; readonly say: (name: string) => string }[] = [
  {
    kind: /^CaSO4/,
    say: (name) =>
      `${name} does not move the pH: it brings calcium and sulfur, but neutralises no acid and makes none.`,
  },
  {
    // rhs-acidifying-soil: 1080 to 2160 g/m2 where 135 to 270 of sulfur do.
    kind: /^FeSO4/,
    say: (name) => `${name} lowers the pH, but takes eight times the weight of sulfur, with all its iron and salt.`,
  },
];

function ofLimeOnly(path: string, received: string): Problem {
  return {
    code: "options-conflict",
    path,
    message: `--${path} belongs to a lime; sulfur is counted by the sulfur in it.`,
    expected: "no such figure with sulfur",
    received,
    hint: `leave out --${path}`,
  };
}
