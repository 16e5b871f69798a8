/**
 * The input cannot be used. Nothing was computed and nothing was written.
 *
 * Every problem says what part is wrong, what was expected, what came, and what would work,
 * so that a person can mend it without reading any documentation.
 */
export interface Problem {
  /** Stable, kebab-case: programs may rely on it. */
  readonly code: string;
  /** Which part of the input, such as `--water`, `products[2].label` or `shelf.yaml:12:5`. */
  readonly path: string;
  /** One plain sentence. */
  readonly message: string;
  /** What would have been usable here. */
  readonly expected: string;
  /** What came, as text. */
  readonly received: string;
  /** The remedy: what to write instead. */
  readonly hint: string;
}

/** Puts a problem's path below another one: `wants[1]` under `--target` is `--target wants[1]`. */
export function underPath(prefix: string, problems: readonly Problem[]): Problem[] {
  return problems.map((problem) => ({ ...problem, path: problem.path === "" ? prefix : `${prefix} ${problem.path}` }));
}
