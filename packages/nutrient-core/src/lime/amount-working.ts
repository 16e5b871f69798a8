import { term, type WorkingLine } from "../outcome/working.ts";
import { equivalentWorking } from "../product/calcium-carbonate-equivalent.ts";
import { massWorking } from "../supply/supply.ts";
import type { LimeInput } from "./lime-input.ts";
import type { Need } from "./need.ts";

/** Six inches are not always the same number, by the way they were written. */
const FLOATING = 1e-12;

/** From what the soil asks for to what is weighed out: the depth, the material, the bed, each square metre. */
export function amountWorking(
  input: LimeInput,
  need: Need,
  found: { readonly depthMetres: number; readonly needed: number; readonly massGrams: number },
): WorkingLine[] {
  const { depthMetres, needed, massGrams } = found;
  return [
    ...(Math.abs(depthMetres / need.depthMetres - 1) < FLOATING ? [] : [depthLine(need, depthMetres, needed)]),
    ...materialLines(input),
    massLine(input, needed, massGrams),
    perSquareMetreLine(massGrams, input.area.squareMetres),
  ];
}

function massLine({ amendment, product, area }: LimeInput, needed: number, massGrams: number): WorkingLine {
  if (amendment.kind === "sulfur")
    return massWorking(product, "S", needed, { basis: "squareMetre", amount: area.squareMetres }, massGrams);
  const counts = [amendment.equivalent, ...(amendment.fineness ? [amendment.fineness.value] : [])]
    .map(term)
    .join(" * ");
  return {
    label: `${product.name} for the whole bed`,
    expression: `${term(area.squareMetres)} m^2 * ${term(needed)} g/m^2 / (${counts})`,
    value: massGrams,
    unit: "g",
    // The correction by calcium carbonate equivalent.
    source: "psu-home-garden-lime",
  };
}

function materialLines({ amendment, product }: LimeInput): WorkingLine[] {
  if (amendment.kind === "sulfur") return [];
  const { equivalent, equivalentFrom, fineness } = amendment;
  return [
    ...(equivalentFrom === "composition" ? [equivalentWorking(product, equivalent)] : []),
    ...(fineness?.source
      ? [
          {
            label: "what is fine enough to work in the first year",
            expression: fineness.expression,
            value: fineness.value,
            unit: "",
            source: fineness.source,
          },
        ]
      : []),
  ];
}

function depthLine(
  { gramsPerSquareMetre, depthMetres: printed }: Need,
  depthMetres: number,
  value: number,
): WorkingLine {
  return {
    label: "for the depth it is mixed through",
    expression: `${term(gramsPerSquareMetre)} g/m^2 * ${term(depthMetres)} m / (${term(printed)} m)`,
    value,
    unit: "g/m^2",
    source: null,
  };
}

function perSquareMetreLine(massGrams: number, squareMetres: number): WorkingLine {
  return {
    label: "on each square metre",
    expression: `${term(massGrams)} g / (${term(squareMetres)} m^2)`,
    value: massGrams / squareMetres,
    unit: "g/m^2",
    source: null,
  };
}
