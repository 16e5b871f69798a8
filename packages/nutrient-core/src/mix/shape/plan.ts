import { circleArea, type Measure, metres } from "./measure.ts";

/** A bed seen from above. */
export interface Plan {
  /** Square metres. */
  readonly area: Measure;
  /** A mound on a round plan is a dome; on any other it runs along the bed, across its width. */
  readonly isRound: boolean;
  /** Set where the plan is a rectangle: the shorter and the longer side. */
  readonly sides?: { readonly widthMetres: number; readonly lengthMetres: number };
}

/** A rectangle, its sides in metres and in any order. */
export function rectangularPlan(sideA: number, sideB: number): Plan {
  return {
    area: { value: sideA * sideB, expression: `${metres(sideA)} * ${metres(sideB)}` },
    isRound: false,
    sides: { widthMetres: Math.min(sideA, sideB), lengthMetres: Math.max(sideA, sideB) },
  };
}

/** A circle by its diameter in metres. */
export function roundPlan(diameter: number): Plan {
  return { area: circleArea(diameter), isRound: true };
}

/**
 * An L of two legs: a leg along outer side A, `widthA` wide, and the rest of the leg along outer side B, `widthB` wide.
 * The corner belongs to the leg along A, so that it is counted once.
 *
 * @param sideA Outer length along A, metres; more than `widthB`.
 * @param sideB Outer length along B, metres; more than `widthA`.
 */
export function lShapedPlan(sideA: number, sideB: number, widthA: number, widthB: number): Plan {
  return {
    area: {
      value: sideA * widthA + (sideB - widthA) * widthB,
      expression: `${metres(sideA)} * ${metres(widthA)} + (${metres(sideB)} - ${metres(widthA)}) * ${metres(widthB)}`,
    },
    isRound: false,
  };
}

/** A trapezoid: its two parallel sides and the distance between them, metres. */
export function trapezoidPlan(parallelA: number, parallelB: number, distance: number): Plan {
  return {
    area: {
      value: ((parallelA + parallelB) / 2) * distance,
      expression: `(${metres(parallelA)} + ${metres(parallelB)}) / 2 * ${metres(distance)}`,
    },
    isRound: false,
  };
}
