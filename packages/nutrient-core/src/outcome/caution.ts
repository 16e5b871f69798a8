/** How much a caution matters: good to know, act on it, or someone or something may be hurt. */
export type Severity = "note" | "caution" | "danger";

/** What a caution's sentence is made from. */
export type Facts = Readonly<Record<string, string | number | readonly string[]>>;

/** The result stands, but heed this. */
export interface Caution {
  /** Stable, kebab-case: programs may rely on it. */
  readonly code: string;
  readonly severity: Severity;
  readonly facts: Facts;
  /** The sentence, made from the facts by the kind's own `sentence`. */
  readonly message: string;
  /** Id of the source behind the caution (test-data/sources.json holds its text). */
  readonly source: string;
}

/** A kind of caution: code, severity, source and sentence stand together, once, in its room's cautions file. */
export interface CautionKind<F extends Facts> {
  readonly code: string;
  readonly severity: Severity;
  readonly source: string;
  readonly sentence: (facts: F) => string;
}

/** Makes a caution of its kind from the facts of the case. */
export function raise<F extends Facts>(kind: CautionKind<F>, facts: F): Caution {
  return { code: kind.code, severity: kind.severity, facts, message: kind.sentence(facts), source: kind.source };
}

const URGENCY: Readonly<Record<Severity, number>> = { danger: 0, caution: 1, note: 2 };

/** Most urgent first, each saying once; the order of equals is kept. */
export function inOrderOfUrgency(cautions: readonly Caution[]): Caution[] {
  const seen = new Set<string>();
  const once = cautions.filter((caution) => {
    const key = `${caution.code}\n${caution.message}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  return once.sort((a, b) => URGENCY[a.severity] - URGENCY[b.severity]);
}
