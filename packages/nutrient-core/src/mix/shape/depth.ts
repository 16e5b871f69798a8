import { type Measure, metres } from "./measure.ts";

/** The same depth everywhere. */
export function evenDepth(depthMetres: number): Measure {
  return { value: depthMetres, expression: metres(depthMetres) };
}

/**
 * The mean depth of a sloping or uneven rectangular bed from readings at even steps, both edges included.
 *
 * Between two neighbouring readings the floor is taken as straight, so an edge reading stands for half a step
 * (the trapezoidal rule); two readings are a plain slope.
 *
 * @param rows Readings in metres along the bed; several rows of equal length are side by side across it.
 */
export function depthFromReadings(rows: readonly (readonly number[])[]): Measure {
  return overSteps(rows.map((row) => overSteps(row.map((reading) => evenDepth(reading)))));
}

/** The plain mean of readings spread evenly over a plan that has no straight rows. */
export function meanDepth(readings: readonly number[]): Measure {
  const sum = readings.reduce((total, reading) => total + reading, 0);
  return {
    value: sum / readings.length,
    expression: `(${readings.map(metres).join(" + ")}) / ${readings.length}`,
  };
}

/** The mean over even steps, the two ends counting half. A single measure stands for itself. */
function overSteps(measures: readonly Measure[]): Measure {
  const first = measures[0]!;
  const last = measures.at(-1)!;
  if (measures.length === 1) return first;
  const inner = measures.slice(1, -1);
  const steps = measures.length - 1;
  const innerSum = inner.reduce((sum, { value }) => sum + value, 0);
  const innerText = inner.map(({ expression }) => ` + ${expression}`).join("");
  return {
    value: ((first.value + last.value) / 2 + innerSum) / steps,
    expression: `((${first.expression} + ${last.expression}) / 2${innerText}) / ${steps}`,
  };
}
