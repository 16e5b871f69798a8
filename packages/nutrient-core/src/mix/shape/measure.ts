import { term } from "../../outcome/working.ts";

/**
 * A calculated size with the arithmetic that made it, so that a shape carries its own working.
 * Lengths are in metres, areas in square metres, volumes in litres; the expression says its units.
 */
export interface Measure {
  readonly value: number;
  readonly expression: string;
}

export const LITRES_PER_CUBIC_METRE = 1000;

/** A length as it stands in an expression: `0.3 m`. */
export function metres(length: number): string {
  return `${term(length)} m`;
}

/** Square metres of a circle of this diameter in metres. */
export function circleArea(diameter: number): Measure {
  return { value: (Math.PI * diameter ** 2) / 4, expression: `pi * (${metres(diameter)})^2 / 4` };
}
