import { massFractions } from "../element/formula.ts";
import { NITROGEN_FORMS, NUTRIENT_ELEMENTS, nutrientOf } from "../element/nutrient.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import type { Product } from "../product/product.ts";
import { atomsOf, counted, elementFactor, factorValue, WEIGHTS, weightSum } from "./factor-text.ts";

/** From what is written, a formula or the printed forms of a label, to percent of each element. */
export function elementLines(product: Product): WorkingLine[] {
  return product.origin === "formula" ? elementLinesOfFormula(product) : elementLinesOfLabel(product);
}

function elementLinesOfFormula({ formula, composition }: Product): WorkingLine[] {
  const atoms = atomsOf(formula!);
  const pure = massFractions(atoms);
  return NUTRIENT_ELEMENTS.flatMap((element) => {
    const share = composition[element];
    if (share === undefined) return [];
    // The purity is the same for every element; 12 digits take the noise of the division off.
    const purity = Number((share / pure[element]!).toPrecision(12));
    const times = purity === 1 ? "" : ` * ${term(purity)}`;
    return [
      {
        label: `percent ${element} in ${formula}`,
        expression: `100 * ${counted(element, atoms[element]!)} / (${weightSum(atoms)})${times}`,
        value: 100 * share,
        unit: "",
        source: WEIGHTS,
      },
    ];
  });
}

function elementLinesOfLabel({ printed, composition }: Product): WorkingLine[] {
  const lines = nitrogenIonLines(printed);
  for (const element of NUTRIENT_ELEMENTS) {
    const share = composition[element];
    if (share === undefined || share === 0) continue;
    const parts = printed.filter(({ form, massFraction }) => massFraction > 0 && nutrientOf(form) === element);
    for (const { form, massFraction } of parts) {
      if (form === element) continue;
      const factor = elementFactor(form);
      lines.push({
        label: `percent ${element} from ${form}`,
        expression: `${term(100 * massFraction)} * ${factor}`,
        value: 100 * massFraction * factorValue(form, element),
        unit: "",
        source: WEIGHTS,
      });
    }
    const forms = parts.length === 0 && element === "N" ? NITROGEN_FORMS : [];
    const summed = [
      ...parts.map(({ form, massFraction }) => 100 * massFraction * factorValue(form, element)),
      ...forms.flatMap((form) => (composition[form] === undefined ? [] : [100 * composition[form]])),
    ];
    if (summed.length > 1) {
      lines.push({
        label: `percent ${element} in all`,
        expression: summed.map(term).join(" + "),
        value: 100 * share,
        unit: "",
        source: null,
      });
    }
  }
  return lines;
}

/** Nitrogen that is printed as its ion: NO3 to NO3-N, NH4 to NH4-N. */
function nitrogenIonLines(printed: Product["printed"]): WorkingLine[] {
  return printed.flatMap(({ form, massFraction }) => {
    const nutrient = nutrientOf(form);
    if (!nutrient.endsWith("-N") || form === nutrient) return [];
    return [
      {
        label: `percent ${nutrient} from ${form}`,
        expression: `${term(100 * massFraction)} * ${elementFactor(form)}`,
        value: 100 * massFraction * factorValue(form, "N"),
        unit: "",
        source: WEIGHTS,
      },
    ];
  });
}
