import { all, create } from "mathjs";
import type { WorkingLine } from "../../outcome/working.ts";

const math = create(all!, {});

/** Evaluates an expression with an outside, unit-aware evaluator, as a number of `unit`. */
export function evaluate(expression: string, unit: string): number {
  const value = math.evaluate(expression);
  return unit === "" ? Number(value) : value.toNumber(unit);
}

/** How far a working line's value is from its expression's, relative to it. */
export function gapOf({ expression, value, unit }: WorkingLine): number {
  const evaluated = evaluate(expression, unit);
  return evaluated === value ? 0 : Math.abs(evaluated - value) / Math.max(Math.abs(value), Math.abs(evaluated));
}
