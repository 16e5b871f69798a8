import { ATOMIC_WEIGHT, type ElementSymbol } from "../element/atomic-weight.ts";
import { type AtomCounts, massFractions, readFormula } from "../element/formula.ts";
import {
  type ContentForm,
  NITROGEN_FORMS,
  NUTRIENT_ELEMENTS,
  type NutrientElement,
  nutrientOf,
  OXIDES,
  type OxideName,
} from "../element/nutrient.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import type { Product } from "../product/product.ts";
import type { LabelResult } from "./label-result.ts";

/** Atomic weights stand behind every factor between element and oxide. */
const WEIGHTS = "ciaaw-2021";

/** The arithmetic behind a label's answer: from the printed forms to elements, to oxides, to the contents of a mass. */
export function labelWorking(product: Product, result: LabelResult): WorkingLine[] {
  return [
    ...molarMassLines(result),
    ...(product.origin === "formula" ? elementLinesOfFormula(product) : elementLinesOfLabel(product)),
    ...oxideLines(product, result),
    ...ratioLines(result),
    ...litreLines(product, result),
    ...contentLines(product, result),
  ];
}

function molarMassLines({ formula, molarMassGramsPerMole }: LabelResult): WorkingLine[] {
  if (formula === undefined || molarMassGramsPerMole === undefined) return [];
  return [
    {
      label: `molar mass of ${formula}`,
      expression: `(${weightSum(atomsOf(formula))}) g/mol`,
      value: molarMassGramsPerMole,
      unit: "g/mol",
      source: WEIGHTS,
    },
  ];
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
      const factor = elementFactor(form as OxideName);
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

function oxideLines({ printed }: Product, { elementPercent, oxidePercent }: LabelResult): WorkingLine[] {
  return shownOxides(oxidePercent).flatMap((oxide) => {
    const percent = oxidePercent[oxide]!;
    const element = OXIDES[oxide].element;
    // What is printed as this oxide needs no way back to it.
    if (percent === 0 || printed.some(({ form, massFraction }) => form === oxide && massFraction > 0)) return [];
    return [
      {
        label: `percent ${oxide} for ${element}`,
        expression: `${term(elementPercent[element]!)} / (${elementFactor(oxide)})`,
        value: percent,
        unit: "",
        source: WEIGHTS,
      },
    ];
  });
}

function ratioLines({ oxidePercent, ratio }: LabelResult): WorkingLine[] {
  const names = ["N", "P2O5", "K2O"] as const;
  const least = Math.min(...names.flatMap((name) => (oxidePercent[name]! > 0 ? [oxidePercent[name]!] : [])));
  return names.flatMap((name, index) =>
    ratio[index]! > 0
      ? [
          {
            label: `part of ${name} in the ratio`,
            expression: `${term(oxidePercent[name]!)} / ${term(least)}`,
            value: ratio[index]!,
            unit: "",
            source: null,
          },
        ]
      : [],
  );
}

function litreLines(product: Product, { densityKilogramsPerLitre, gramsPerLitre }: LabelResult): WorkingLine[] {
  if (!gramsPerLitre) return [];
  return heldElements(product).map((element) => ({
    label: `${element} in a litre`,
    expression: `${term(densityKilogramsPerLitre!)} kg/L * ${term(product.composition[element]!)}`,
    value: gramsPerLitre[element]!,
    unit: "g/L",
    source: product.source,
  }));
}

function contentLines(product: Product, { massGrams, contents, oxidePercent }: LabelResult): WorkingLine[] {
  if (massGrams === undefined || !contents) return [];
  const elements = heldElements(product).map((element) => ({
    label: `${element} in it`,
    expression: `${term(massGrams)} g * ${term(product.composition[element]!)}`,
    value: contents[element]!.massGrams,
    unit: "g",
    source: product.source,
  }));
  const oxides = shownOxides(oxidePercent).flatMap((oxide) => {
    const held = contents[oxide]?.massGrams ?? 0;
    if (held === 0) return [];
    return [
      {
        label: `${oxide} in it`,
        expression: `${term(contents[OXIDES[oxide].element]!.massGrams)} g / (${elementFactor(oxide)})`,
        value: held,
        unit: "g",
        source: WEIGHTS,
      },
    ];
  });
  return [...elements, ...oxides];
}

const heldElements = ({ composition }: Product): NutrientElement[] =>
  NUTRIENT_ELEMENTS.filter((element) => (composition[element] ?? 0) > 0);

const shownOxides = (percent: LabelResult["oxidePercent"]): OxideName[] =>
  (Object.keys(OXIDES) as OxideName[]).filter((oxide) => percent[oxide] !== undefined);

/** A form's name is its formula: `2 * 30.974 / (2 * 30.974 + 5 * 15.999)` for P2O5. */
function elementFactor(form: ContentForm): string {
  const atoms = atomsOf(form);
  const element = elementOf(form);
  return `${counted(element, atoms[element]!)} / (${weightSum(atoms)})`;
}

function factorValue(form: ContentForm, element: NutrientElement): number {
  return form === element ? 1 : massFractions(atomsOf(form))[element]!;
}

/** NO3 and NH4 are nitrogen too. */
const elementOf = (form: ContentForm): NutrientElement => {
  const nutrient = nutrientOf(form);
  return nutrient.endsWith("-N") ? "N" : (nutrient as NutrientElement);
};

function atomsOf(formula: string): AtomCounts {
  const atoms = readFormula(formula);
  if (!atoms.ok) throw new Error(`not a formula: ${formula}`);
  return atoms.value;
}

const counted = (symbol: ElementSymbol, count: number): string =>
  count === 1 ? String(ATOMIC_WEIGHT[symbol]) : `${count} * ${ATOMIC_WEIGHT[symbol]}`;

/** The atoms of a formula as a sum of weights: `39.098 + 14.007 + 3 * 15.999`. */
function weightSum(atoms: AtomCounts): string {
  return (Object.entries(atoms) as [ElementSymbol, number][])
    .map(([symbol, count]) => counted(symbol, count))
    .join(" + ");
}
