/**
 * One line of the arithmetic behind a result, as data.
 *
 * `expression` can be evaluated by any unit-aware evaluator (the tests use mathjs) and then
 * equals `value` in `unit`: `9 L * 150 mg/L / 0.2` is `6750 mg`, that is 6.75 `g`.
 */
export interface WorkingLine {
  /** What this line finds, in a few words. */
  readonly label: string;
  readonly expression: string;
  /** Full precision, in `unit`. */
  readonly value: number;
  /** Empty for a plain number. */
  readonly unit: string;
  /** Id of the source of a constant that enters here, or null when only the grower's own numbers do. */
  readonly source: string | null;
}

/** A number as it stands in an expression: every digit it has, and never in the form `-3` that would need brackets. */
export function term(value: number): string {
  return value < 0 ? `(${value})` : String(value);
}
