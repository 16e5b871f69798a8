import { molarMass, readFormula } from "../element/formula.ts";
import { NITROGEN_FORMS, type NitrogenForm, NUTRIENTS, type Nutrient } from "../element/nutrient.ts";
import { inOrderOfUrgency } from "../outcome/caution.ts";
import { answer, type Outcome } from "../outcome/outcome.ts";
import { hazardCautions } from "../product/hazard-cautions.ts";
import type { Product } from "../product/product.ts";
import { sanityCautions } from "../product/sanity/sanity.ts";
import { unitExtent } from "../supply/basis.ts";
import { type BothForms, inBothForms } from "../supply/both-forms.ts";
import { asRatio, asTriple } from "../supply/ratio.ts";
import { deliver } from "../supply/supply.ts";
import type { HeldMass, LabelInput, LabelPercent, LabelResult } from "./label-result.ts";
import { labelWorking } from "./label-working.ts";

/**
 * What does this label or formula contain?
 *
 * Every printed share becomes the element by the atomic weights, and again the oxide of the labels. A label that
 * cannot be, or that looks as if it were on the other basis, is answered as it was read, with a caution.
 *
 * @param input The product as it was read, and the mass to take apart where one is asked for.
 * @returns Percent by element and by label form, the ratio, and the contents of the mass.
 * @example
 * label({ product: materialById("potassium-chloride")! })  // => { ratio: [0, 0, 1], elementPercent: { K: 49.8090... } }
 */
export function label(input: LabelInput): Outcome<LabelResult> {
  const { product, massGrams } = input;
  const elementPercent = elementPercentOf(product);
  const ratio = asRatio(asTriple(product.composition));
  const forms = NITROGEN_FORMS.filter((form) => product.composition[form] !== undefined);
  const result: LabelResult = {
    product: product.id,
    name: product.name,
    elementPercent,
    oxidePercent: inLabelForms(inBothForms(elementPercent)),
    ratio,
    ...(forms.length > 0
      ? { nitrogenFormsPercent: Object.fromEntries(forms.map((form) => [form, 100 * product.composition[form]!])) }
      : {}),
    ...molarMassOf(product),
    ...gramsPerLitreOf(product),
    ...(product.solubilityGramsPerLitre === undefined
      ? {}
      : { solubilityGramsPerLitre: product.solubilityGramsPerLitre }),
    ...(product.firstSeasonNitrogenShare === undefined
      ? {}
      : { firstSeasonNitrogenShare: product.firstSeasonNitrogenShare }),
    ...(massGrams === undefined ? {} : { massGrams, contents: contentsOf(product, massGrams) }),
    source: product.source,
  };
  const cautions = [...sanityCautions(product), ...hazardCautions([product])];
  return answer(result, inOrderOfUrgency(cautions), labelWorking(product, result));
}

function elementPercentOf({ composition }: Product): Partial<Record<Nutrient, number>> {
  const percent: Partial<Record<Nutrient, number>> = {};
  for (const nutrient of NUTRIENTS) {
    const share = composition[nutrient];
    if (isForm(nutrient)) continue;
    if (share !== undefined) percent[nutrient] = 100 * share;
    else if (nutrient === "N" || nutrient === "P" || nutrient === "K") percent[nutrient] = 0;
  }
  return percent;
}

const isForm = (nutrient: Nutrient): nutrient is NitrogenForm => NITROGEN_FORMS.some((form) => form === nutrient);

/** The elements that labels print as their oxide are left out, the others stay. */
function inLabelForms(both: BothForms): LabelPercent {
  const { P: _p, K: _k, Ca: _ca, Mg: _mg, S: _s, ...labelled } = both;
  return labelled;
}

function molarMassOf({ formula }: Product): { formula?: string; molarMassGramsPerMole?: number } {
  if (formula === undefined) return {};
  const atoms = readFormula(formula);
  return atoms.ok ? { formula, molarMassGramsPerMole: molarMass(atoms.value) } : { formula };
}

function gramsPerLitreOf(product: Product): Pick<LabelResult, "densityKilogramsPerLitre" | "gramsPerLitre"> {
  const density = product.densityKilogramsPerLitre;
  if (density === undefined) return {};
  if (product.state === "solid") return { densityKilogramsPerLitre: density };
  const litre = [{ product, massGrams: density * 1000 }];
  return { densityKilogramsPerLitre: density, gramsPerLitre: inBothForms(deliver(litre, unitExtent)) };
}

function contentsOf(product: Product, massGrams: number): Record<string, HeldMass> {
  const held = inBothForms(deliver([{ product, massGrams }], unitExtent));
  return Object.fromEntries(Object.entries(held).map(([form, grams]) => [form, { massGrams: grams }]));
}
