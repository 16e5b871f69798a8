import { type Outcome, type Problem, unusable } from "nutrient-core";

/** Problems of a document's form: where there is one, nothing of the document was read further. */
const OF_FORM: ReadonlySet<string> = new Set(["field-unknown", "field-unusable", "field-missing"]);
/** What is found beside a place that was left out, and may come of that: without a density a volume is no mass. */
const OF_A_GAP: ReadonlySet<string> = new Set(["field-missing", "density-missing", "dimension-mismatch"]);
/** A text where one has to stand: a name and an id, but no quantity, date, grade or product. */
const STAND_IN = "stand-in";
/** What is left out, and what a stand-in is put for, needs two; a third is for what they bring to light. */
const MOST_ROUNDS = 4;

/**
 * Reads a document; where its form is wrong in places, reads the rest of it too, so that a person hears of every
 * mistake in the first go.
 *
 * The places that are wrong are left out, or filled by a stand-in where something has to be there, and the document is
 * read again. What is found then counts, unless it is about those places or may come of their being left out.
 *
 * @param document The parsed file; it is not changed.
 * @param read Reads it, with problems at dotted paths. Never asked to calculate: what was left out would be missing.
 */
export function everyProblem<T>(document: unknown, read: (document: unknown) => Outcome<T>): Outcome<T> {
  const first = read(document);
  if (first.ok) return first;
  // Two parts of a document may trip over the same place: it is told once.
  const problems = first.problems.filter((problem, index) => !isKnown(problem, first.problems.slice(0, index)));
  const rest = structuredClone(document);
  const mended = new Map<string, number>();
  let latest: readonly Problem[] = first.problems;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const wrong = latest.filter(({ code }) => OF_FORM.has(code));
    const tried = wrong.map(({ path }) => mend(rest, path, mended));
    if (!tried.includes(true)) break;
    const again = read(rest);
    if (again.ok) break;
    latest = again.problems;
    for (const problem of latest) if (isNews(problem, problems, [...mended.keys()])) problems.push(problem);
  }
  return unusable(...problems);
}

/** Leaves a place out, and fills it when it is still wrong. Says whether there was anything left to try. */
function mend(document: unknown, path: string, mended: Map<string, number>): boolean {
  const keys = keysOf(path);
  const key = keys.at(-1);
  const holder = keys.slice(0, -1).reduce<unknown>(childOf, document);
  const tries = mended.get(path) ?? 0;
  if (key === undefined || holder === null || typeof holder !== "object" || tries > 1) return false;
  mended.set(path, tries + 1);
  const fields = holder as Record<string, unknown>;
  // Left out of a list, an entry leaves a gap: those behind it keep their places.
  if (tries === 0 && key in fields) delete fields[key];
  else fields[key] = STAND_IN;
  return true;
}

const childOf = (value: unknown, key: string): unknown =>
  value !== null && typeof value === "object" ? (value as Record<string, unknown>)[key] : undefined;

/** The names and numbers of a dotted path: `products[2].label`. */
const keysOf = (path: string): string[] => [...path.matchAll(/[^.[\]]+/g)].map(([key]) => key);

const isKnown = ({ path, message }: Problem, known: readonly Problem[]): boolean =>
  known.some((one) => one.path === path && one.message === message);

function isNews(problem: Problem, known: readonly Problem[], mended: readonly string[]): boolean {
  const { path, code } = problem;
  if (isKnown(problem, known)) return false;
  if (mended.some((place) => isWithin(path, place) || isWithin(place, path))) return false;
  return !OF_A_GAP.has(code) || !mended.some((place) => holderOf(place) === holderOf(path));
}

function isWithin(path: string, place: string): boolean {
  return path === place || place === "" || (path.startsWith(place) && /^[.[ ]/.test(path.slice(place.length)));
}

const holderOf = (path: string): string => keysOf(path).slice(0, -1).join(".");
