import type { Caution } from "./caution.ts";
import { type Problem, underPath } from "./problem.ts";
import type { WorkingLine } from "./working.ts";

/** An answer that stands, with what to heed and how it was reached. */
export interface Answer<T> {
  readonly ok: true;
  readonly value: T;
  readonly cautions: readonly Caution[];
  readonly working: readonly WorkingLine[];
}

/** The input could not be used. */
export interface Unusable {
  readonly ok: false;
  readonly problems: readonly Problem[];
}

/** Everything that reads or calculates returns one of these two; a bug throws instead. */
export type Outcome<T> = Answer<T> | Unusable;

/** An answer with its cautions and working. */
export function answer<T>(
  value: T,
  cautions: readonly Caution[] = [],
  working: readonly WorkingLine[] = [],
): Answer<T> {
  return { ok: true, value, cautions, working };
}

/** The input cannot be used, for these reasons. */
export function unusable(...problems: readonly Problem[]): Unusable {
  return { ok: false, problems };
}

/** The same outcome with the problems' paths put below `prefix`. */
export function at<T>(prefix: string, outcome: Outcome<T>): Outcome<T> {
  return outcome.ok ? outcome : { ok: false, problems: underPath(prefix, outcome.problems) };
}

/**
 * Goes on with an answer's value, keeping its cautions and working; a problem passes through.
 * (Not named `then`: a module with that export would be taken for a promise.)
 */
export function andThen<A, B>(outcome: Outcome<A>, next: (value: A) => Outcome<B>): Outcome<B> {
  if (!outcome.ok) return outcome;
  const following = next(outcome.value);
  if (!following.ok) return following;
  return answer(
    following.value,
    [...outcome.cautions, ...following.cautions],
    [...outcome.working, ...following.working],
  );
}

/**
 * Gathers several outcomes into one: all values, or all problems at once
 * (a person wants to hear of every mistake in the first go).
 */
export function gather<T extends Record<string, unknown>>(
  parts: {
    readonly [K in keyof T]: Outcome<T[K]>;
  },
): Outcome<T> {
  const problems: Problem[] = [];
  const cautions: Caution[] = [];
  const working: WorkingLine[] = [];
  const value: Partial<T> = {};
  for (const key of Object.keys(parts) as (keyof T)[]) {
    const part: Outcome<T[keyof T]> = parts[key];
    if (part.ok) {
      value[key] = part.value;
      cautions.push(...part.cautions);
      working.push(...part.working);
    } else problems.push(...part.problems);
  }
  return problems.length > 0 ? unusable(...problems) : answer(value as T, cautions, working);
}

/** As {@link gather}, for a list. */
export function gatherList<T>(parts: readonly Outcome<T>[]): Outcome<readonly T[]> {
  const problems = parts.flatMap((part) => (part.ok ? [] : part.problems));
  if (problems.length > 0) return unusable(...problems);
  const answers = parts as readonly Answer<T>[];
  return answer(
    answers.map((part) => part.value),
    answers.flatMap((part) => part.cautions),
    answers.flatMap((part) => part.working),
  );
}
