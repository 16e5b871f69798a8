import { NUTRIENT_ELEMENTS, type NutrientElement, OXIDES, type OxideName } from "../element/nutrient.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import type { Product } from "../product/product.ts";
import { elementLines } from "./element-working.ts";
import { atomsOf, elementFactor, WEIGHTS, weightSum } from "./factor-text.ts";
import type { LabelResult } from "./label-result.ts";

/** The arithmetic behind a label's answer: from the printed forms to elements, to oxides, to the contents of a mass. */
export function labelWorking(product: Product, result: LabelResult): WorkingLine[] {
  return [
    ...molarMassLines(result),
    ...elementLines(product),
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
