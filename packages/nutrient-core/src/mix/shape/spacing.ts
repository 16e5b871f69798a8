import { term } from "../../outcome/working.ts";
import { type Measure, metres } from "./measure.ts";
import type { Plan } from "./plan.ts";

/** How plants stand. Distances in metres. */
export type Spacing =
  | { readonly pattern: "square"; readonly distanceMetres: number }
  | { readonly pattern: "triangular"; readonly distanceMetres: number }
  | { readonly pattern: "rows"; readonly betweenRowsMetres: number; readonly inRowMetres: number };

/** Binary rounding must not cost a plant: 1.2 m / 0.4 m is 2.9999999999999996 to a computer. */
const SLACK = 1e-9;

/**
 * Whole plants on a bed. Half the distance is kept free to every edge, so each plant has its own share of the bed.
 *
 * On a rectangle they are counted row by row, rows along the bed; triangular rows lie closer (distance times root
 * three over two) and every second one starts half a distance further in. On any other plan the area is divided by
 * the area of one plant, which is right only about: the edge decides.
 */
export function plantCount(plan: Plan, spacing: Spacing): Measure {
  if (!plan.sides) {
    const each = areaPerPlant(spacing);
    return {
      value: Math.floor(plan.area.value / each.value + SLACK),
      expression: `floor((${plan.area.expression}) / (${each.expression}) + ${SLACK})`,
    };
  }
  const { widthMetres: width, lengthMetres: length } = plan.sides;
  if (spacing.pattern === "triangular") return triangularCount(width, length, spacing.distanceMetres);
  const across = spacing.pattern === "rows" ? spacing.betweenRowsMetres : spacing.distanceMetres;
  const along = spacing.pattern === "rows" ? spacing.inRowMetres : spacing.distanceMetres;
  const [rows, inRow] = [fits(width, across), fits(length, along)];
  return { value: rows.value * inRow.value, expression: `${rows.expression} * ${inRow.expression}` };
}

/** How many times `step` fits into `length`. */
function fits(length: number, step: number): Measure {
  return {
    value: Math.floor(length / step + SLACK),
    expression: `floor(${metres(length)} / (${metres(step)}) + ${SLACK})`,
  };
}

function triangularCount(width: number, length: number, distance: number): Measure {
  const full = fits(length, distance);
  if (full.value === 0 || width < distance * (1 - SLACK)) return { value: 0, expression: "0" };
  // Rows lie root three over two of the distance apart, the outer ones half a distance from the edge.
  const rows = Math.floor((width - distance) / ((distance * Math.sqrt(3)) / 2) + SLACK) + 1;
  const rowsText = `floor((${metres(width)} - ${metres(distance)}) / (${metres(distance)} * sqrt(3) / 2) + ${SLACK}) + 1`;
  const shifted = Math.floor((length - distance / 2) / distance + SLACK);
  const shiftedText = `floor((${metres(length)} - ${metres(distance)} / 2) / (${metres(distance)}) + ${SLACK})`;
  return {
    value: Math.ceil(rows / 2) * full.value + Math.floor(rows / 2) * shifted,
    expression: `ceil((${rowsText}) / 2) * ${full.expression} + floor((${rowsText}) / 2) * ${shiftedText}`,
  };
}

function areaPerPlant(spacing: Spacing): Measure {
  switch (spacing.pattern) {
    case "square":
      return { value: spacing.distanceMetres ** 2, expression: `(${metres(spacing.distanceMetres)})^2` };
    case "triangular":
      return {
        value: (spacing.distanceMetres ** 2 * Math.sqrt(3)) / 2,
        expression: `(${metres(spacing.distanceMetres)})^2 * sqrt(${term(3)}) / 2`,
      };
    case "rows":
      return {
        value: spacing.betweenRowsMetres * spacing.inRowMetres,
        expression: `${metres(spacing.betweenRowsMetres)} * ${metres(spacing.inRowMetres)}`,
      };
  }
}
