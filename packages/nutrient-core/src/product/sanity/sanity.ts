import { massFractions } from "../../element/formula.ts";
import { type ContentForm, elementPerForm, NITROGEN_FORMS } from "../../element/nutrient.ts";
import { type Caution, raise } from "../../outcome/caution.ts";
import { materialById } from "../materials.ts";
import type { Product } from "../product.ts";
import { asTriple, type Triple } from "../triple.ts";
import { gradeFitting, type TripleBasis } from "./known-grades.ts";
import {
  labelElementBasis,
  labelFormsDoNotSum,
  labelFromMemory,
  labelOver100,
  labelUnlikeItsSalt,
} from "./label-cautions.ts";
import { leastMassShare } from "./least-mass.ts";
import { misfitOf } from "./salt-of-name.ts";

/**
 * What is suspicious about a label: contents that cannot be together, forms that do not make the total, more than
 * any salt holds, an analysis unlike the salt of its name, and numbers that only make sense on the other basis.
 *
 * Formulas cannot be wrong in these ways; of a generic material only a remembered analysis is told.
 */
export function sanityCautions(product: Product): Caution[] {
  if (product.source === "from-memory") return [raise(labelFromMemory, { product: product.name })];
  if (!comesAsLabel(product)) return [];
  return [overWhole, formsUnlikeTotal, unlikeSalt, otherBasis].flatMap((suspicion) => suspicion(product));
}

/**
 * Of these products the labels that cannot be as they were read: whoever weighs by them weighs a wrong amount.
 *
 * What only asks for a second look at the bag (forms that do not make the total, an analysis from memory) is left to
 * the label itself.
 *
 * @param products Whatever is about to be weighed; order and repeats do not matter.
 * @returns `label-over-100`, `label-unlike-its-salt`, `label-element-basis`.
 * @example
 * impossibleLabelCautions([materialById("potassium-chloride")!])  // => []
 */
export function impossibleLabelCautions(products: readonly Product[]): Caution[] {
  const labels = [...new Set(products)].filter((product) => comesAsLabel(product) && product.source !== "from-memory");
  return labels.flatMap((product) => [overWhole, unlikeSalt, otherBasis].flatMap((suspicion) => suspicion(product)));
}

/** A formula cannot be wrong in these ways, and a generic material has been looked at. */
const comesAsLabel = ({ origin }: Product): boolean => origin === "grade" || origin === "shelf";

function overWhole({ name, composition }: Product): Caution[] {
  const least = leastMassShare(composition);
  // Half a percent point for numbers that are printed whole.
  return least > 1.005 ? [raise(labelOver100, { product: name, leastPercent: 100 * least })] : [];
}

function formsUnlikeTotal({ name, composition, printed }: Product): Caution[] {
  const forms = NITROGEN_FORMS.filter((form) => composition[form] !== undefined);
  if (forms.length === 0 || !printed.some(({ form }) => form === "N")) return [];
  const formsPercent = 100 * forms.reduce((sum, form) => sum + composition[form]!, 0);
  const totalPercent = 100 * composition.N!;
  // Each figure is printed to a tenth of a percent at best. One form alone may be all that a label has to name.
  const rounding = 0.05 * (forms.length + 1) + 1e-9;
  const short = totalPercent - formsPercent > rounding && forms.length > 1;
  if (formsPercent - totalPercent <= rounding && !short) return [];
  return [raise(labelFormsDoNotSum, { product: name, totalPercent, formsPercent, forms })];
}

/** The richest solids of the trade, and what labels round them up to. */
const RICHEST = [
  { form: "N", salt: "urea", pure: massFractions({ C: 1, O: 1, N: 2, H: 4 }).N!, most: 0.467 },
  {
    form: "P2O5",
    salt: "monoammonium phosphate",
    pure: massFractions({ N: 1, H: 6, P: 1, O: 4 }).P! / elementPerForm("P2O5"),
    most: 0.62,
  },
  {
    form: "K2O",
    salt: "potassium chloride",
    pure: massFractions({ K: 1, Cl: 1 }).K! / elementPerForm("K2O"),
    most: 0.632,
  },
] as const;

function aboveAnySalt({ name, composition, state }: Product): Caution[] {
  if (state === "liquid") return [];
  const triple = asTriple(composition);
  return RICHEST.flatMap(({ form, salt, pure, most }, index) => {
    const share = triple[index]!;
    // What is just at the line passes: 0.62 * 100 / 100 is not 0.62 to the last digit.
    if (share <= most + 1e-9) return [];
    return [
      raise(labelUnlikeItsSalt, {
        product: name,
        salt: `${salt}, the richest of the usual solids`,
        form,
        percent: 100 * share,
        lowPercent: 0,
        highPercent: 100 * pure,
      }),
    ];
  });
}

/** The salt of the name says more than the bounds of all salts. */
function unlikeSalt(product: Product): Caution[] {
  const misfit = misfitOf(product);
  if (!misfit) return aboveAnySalt(product);
  const { element, ...facts } = misfit;
  return [raise(labelUnlikeItsSalt, { product: product.name, form: element, ...facts })];
}

function otherBasis(product: Product): Caution[] {
  const readAs = basisOf(product);
  if (!readAs) return [];
  const numbers = printedTriple(product, readAs);
  if (gradeFitting(numbers, readAs, product)) return [];
  const fitsAs: TripleBasis = readAs === "oxide" ? "element" : "oxide";
  const grade = gradeFitting(numbers, fitsAs, product);
  if (!grade || grade.onlyExcuses) return [];
  const salt = materialById(grade.id)!.name;
  return [raise(labelElementBasis, { product: product.name, salt, readAs, fitsAs })];
}

/** The basis on which P and K were read, where both are on the same. */
function basisOf({ printed }: Product): TripleBasis | undefined {
  const holds = (...forms: ContentForm[]) =>
    printed.some(({ form, massFraction }) => massFraction > 0 && forms.includes(form));
  const [oxide, element] = [holds("P2O5", "K2O"), holds("P", "K")];
  if (oxide === element) return undefined;
  return oxide ? "oxide" : "element";
}

function printedTriple({ printed }: Product, basis: TripleBasis): Triple {
  const percent = (wanted: ContentForm) =>
    100 * printed.reduce((sum, { form, massFraction }) => (form === wanted ? sum + massFraction : sum), 0);
  return basis === "oxide"
    ? [percent("N"), percent("P2O5"), percent("K2O")]
    : [percent("N"), percent("P"), percent("K")];
}
