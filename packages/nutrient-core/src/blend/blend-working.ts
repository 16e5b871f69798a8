import { term, type WorkingLine } from "../outcome/working.ts";
import { fractionOf } from "../product/product.ts";
import type { Extent } from "../supply/basis.ts";
import { type Amount, deliver, deliveredWorking } from "../supply/supply.ts";
import type { BlendInput } from "./blend-input.ts";
import type { Row } from "./pose.ts";
import { squareMethod } from "./square-method.ts";

/** The arithmetic that shows what the amounts deliver, and the classical square where it finds the amounts too. */
export function blendWorking(
  input: BlendInput,
  amounts: readonly Amount[],
  rows: readonly Row[],
  batch: number,
): WorkingLine[] {
  if (input.purpose.kind === "target") return targetWorking(input.purpose.extent, amounts, rows);
  const square = squareMethod(
    input,
    amounts.map(({ massGrams }) => massGrams),
    batch,
  );
  return [...square, ...batchWorking(amounts, rows, batch)];
}

function targetWorking(extent: Extent, amounts: readonly Amount[], rows: readonly Row[]): WorkingLine[] {
  const added = deliver(amounts, extent);
  return rows.flatMap(({ nutrient }) =>
    amounts.some(({ product }) => fractionOf(product, nutrient) > 0)
      ? [deliveredWorking(amounts, nutrient, extent, added[nutrient]!)]
      : [],
  );
}

function batchWorking(amounts: readonly Amount[], rows: readonly Row[], batch: number): WorkingLine[] {
  const shares = deliver(amounts, { basis: "squareMetre", amount: batch });
  return rows.flatMap(({ nutrient, name, perElement }) => {
    const holders = amounts.filter(({ product, massGrams }) => fractionOf(product, nutrient) > 0 && massGrams > 0);
    if (holders.length === 0) return [];
    const terms = holders.map(
      ({ product, massGrams }) => `${term(massGrams)} g * ${term(fractionOf(product, nutrient))}`,
    );
    return [
      {
        label: `${name} in the batch`,
        expression: `100 * (${terms.join(" + ")}) * ${term(perElement)} / (${term(batch)} g)`,
        value: 100 * shares[nutrient]! * perElement,
        unit: "",
        source: perElement === 1 ? null : "ciaaw-2021",
      },
    ];
  });
}
