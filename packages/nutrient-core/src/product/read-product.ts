import { distance } from "fastest-levenshtein";
import { percentOf } from "../element/content.ts";
import { readFormula } from "../element/formula.ts";
import { isLabelForm } from "../element/nutrient.ts";
import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { NUMBER_PATTERN, plainText, readNumber } from "../quantity/number.ts";
import { compositionOf, compositionOfFormula } from "./composition.ts";
import { MATERIALS, materialById } from "./materials.ts";
import type { Product } from "./product.ts";
import { type LabelBasis, type LabelMeasure, looksLikeLabel, readLabel } from "./read-label.ts";

/** What may be said about a product beside its name. */
export interface ProductReading {
  /** Products the grower keeps: they are looked up first. */
  readonly shelf?: readonly Product[];
  /** Basis of a grade's P and K; oxide unless the bag says otherwise. */
  readonly basis?: LabelBasis;
  /** Percent by mass (the default) or by volume. */
  readonly measure?: LabelMeasure;
  readonly densityKilogramsPerLitre?: number;
  /** Whether a label by volume may go without a density; see `massUnknown`. */
  readonly byMillilitre?: boolean;
}

/**
 * Reads what a grower calls a product: an id from the shelf, a generic material's id, a grade or a chemical formula.
 *
 * @param text `leafy-feed`, `potassium-nitrate`, `5-10-10`, `15.5-0-0 + 19 Ca`, `KNO3` or `KNO3 98%`.
 * @returns The product with its composition by mass of each element.
 * @example
 * readProduct("KNO3")  // => { composition: { K: 0.3867... } }
 */
export function readProduct(text: string, reading: ProductReading = {}): Outcome<Product> {
  const written = text.trim();
  const kept = reading.shelf?.find((product) => product.id === written);
  // What the shelf file says of a density stands; see `fitsProduct`.
  if (kept) return answer(kept.densityKilogramsPerLitre === undefined ? withDensity(kept, reading) : kept);
  const material = materialById(written);
  if (material) return answer(withDensity(material, reading));
  if (looksLikeLabel(written) && !isPureWithPurity(written)) return productFromLabel(written, reading);
  const formula = readFormulaProduct(written);
  if (formula?.ok) return answer(withDensity(formula.value, reading));
  // Set out like a formula: then what is wrong with it as a formula is the better answer.
  if (formula && /^[A-Z0-9](?=.*[A-Z0-9])[A-Za-z0-9()[\]·.*•]*(\s+[\d.,]+\s*%)?$/.test(written)) return formula;
  return unusable(unknownProduct(written, reading.shelf ?? []));
}

function withDensity(product: Product, reading: ProductReading): Product {
  const density = reading.densityKilogramsPerLitre;
  return density === undefined
    ? product
    : { ...product, densityKilogramsPerLitre: density, densityRange: [density, density] };
}

/** A product from its printed analysis alone. */
export function productFromLabel(text: string, reading: ProductReading = {}): Outcome<Product> {
  const { basis = "oxide", measure = "mass", byMillilitre = false } = reading;
  const massUnknown = byMillilitre && measure === "volume" && reading.densityKilogramsPerLitre === undefined;
  const densityKilogramsPerLitre = massUnknown ? STAND_IN_DENSITY : reading.densityKilogramsPerLitre;
  const contents = readLabel(text, {
    basis,
    measure,
    ...(densityKilogramsPerLitre === undefined ? {} : { densityKilogramsPerLitre }),
  });
  if (!contents.ok) return contents;
  const product: Product = {
    id: text,
    name: text,
    origin: "grade",
    state: measure === "volume" ? "liquid" : "solid",
    composition: compositionOf(contents.value),
    printed: contents.value,
    hazards: [],
    source: null,
  };
  if (massUnknown) return answer({ ...product, densityKilogramsPerLitre: STAND_IN_DENSITY, massUnknown });
  return answer(withDensity(product, reading));
}

/** Leaves percent by volume as it is printed: grams in a millilitre. */
const STAND_IN_DENSITY = 1;

const PURE = new RegExp(`^(\\S.*?)(?:\\s+(${NUMBER_PATTERN})\\s*%)?$`);

/** `KNO3 98%` is a salt and its purity; `K2O 50%` and `Fe 6%` are lines of a label. */
function isPureWithPurity(text: string): boolean {
  const [, name = ""] = /^(\S+)\s+[\d.,]+\s*%$/.exec(plainText(text)) ?? [];
  return name !== "" && !isLabelForm(name) && readFormula(name).ok;
}

/** A pure substance, or a technical one with its purity: `KNO3 98%`. Undefined for an empty text. */
export function readFormulaProduct(text: string): Outcome<Product> | undefined {
  const match = PURE.exec(plainText(text));
  if (!match) return undefined;
  const [, formula, digits] = match as unknown as [string, string, string | undefined];
  const atoms = readFormula(formula);
  if (!atoms.ok) return atoms;
  const purity = digits === undefined ? answer(100) : readNumber(digits);
  if (!purity.ok) return purity;
  if (!(purity.value > 0 && purity.value <= 100)) {
    return unusable({
      code: "purity-out-of-range",
      path: "",
      message: `A purity of ${digits} % is not possible.`,
      expected: "more than 0 and at most 100 percent",
      received: text,
      hint: 'write the purity from the label, such as "KNO3 98%"',
    });
  }
  const composition = compositionOfFormula(formula, atoms.value, purity.value / 100);
  return answer({
    id: text,
    name: text,
    origin: "formula",
    // Acids are liquids: they are neither spooned nor kept dry.
    state: materialOfFormula(formula)?.state ?? "solid",
    composition,
    printed: Object.entries(composition).map(([form, share]) =>
      percentOf(form as keyof typeof composition, share * 100),
    ),
    formula,
    hazards: hazardsOf(formula),
    ...solubilityOf(formula),
    source: "ciaaw-2021",
  });
}

const bare = (formula: string): string => formula.replace(/\s+/g, "").replace(/[.*•∙⋅]/g, "·");

/** The generic material that is this pure substance, for what a formula alone does not tell: hazards and solubility. */
function materialOfFormula(formula: string): Product | undefined {
  return MATERIALS.find((material) => material.formula !== undefined && bare(material.formula) === bare(formula));
}

/** Those of the same salt with other water, too: a formula without its water is no safer. */
function hazardsOf(formula: string): Product["hazards"] {
  const anhydrous = (written: string) => bare(written).replace(/·\d*H2O$/, "");
  const same = MATERIALS.filter(
    (material) => material.formula !== undefined && anhydrous(material.formula) === anhydrous(formula),
  );
  return [
    ...new Set((materialOfFormula(formula) ? [materialOfFormula(formula)!] : same).flatMap(({ hazards }) => hazards)),
  ];
}

function solubilityOf(formula: string): Pick<Product, "solubilityGramsPerLitre"> {
  const grams = materialOfFormula(formula)?.solubilityGramsPerLitre;
  return grams === undefined ? {} : { solubilityGramsPerLitre: grams };
}

function unknownProduct(text: string, shelf: readonly Product[]) {
  const formula = MATERIALS.find((material) => material.formula?.toLowerCase() === text.toLowerCase())?.formula;
  const ids = [...shelf, ...MATERIALS].map(({ id }) => id);
  const slug = text.toLowerCase().replace(/\s+/g, "-").replaceAll("sulph", "sulf");
  // "zinc-sulfate" is never guessed: which hydrate it is makes 36 or 22 % of zinc.
  const near = ids
    .map((id) => ({ id, edits: slug.length >= 4 && id.includes(slug) ? 0 : distance(slug, id) }))
    .filter(({ id, edits }) => edits <= Math.max(2, id.length / 4))
    .sort((a, b) => a.edits - b.edits)
    .slice(0, 3);
  const guesses = formula ? [formula] : near.map(({ id }) => id);
  return {
    code: "product-unknown",
    path: "",
    message: `"${text}" is not a product that is known here.`,
    expected:
      "a grade (5-10-10), a formula (KNO3), a generic material (potassium-nitrate) or an id from the shelf file",
    received: text === "" ? "nothing" : text,
    hint:
      guesses.length > 0
        ? `did you mean ${guesses.join(" or ")}?`
        : shelf.length > 0
          ? `the shelf holds ${shelf.map(({ id }) => id).join(", ")}; "trug label" alone lists the generic materials`
          : 'write its grade from the bag; "trug label" alone lists the generic materials',
  };
}
