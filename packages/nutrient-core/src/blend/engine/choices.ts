import { type BlendAim, type BlendProblem, bandHigh, idealHigh, idealLow, missOf, missScales } from "./problem.ts";
import type { BlendSolution, Choice, ReachedBlend } from "./solution.ts";
import { solveContinuous } from "./solve-continuous.ts";

/*
 * "Used at 5 g or more, or left out" and "as few products as possible" are choices, not amounts. They are searched by
 * branch and bound: a problem in which a product may still be anything between 0 and its most (`open`) is no worse than
 * any problem in which it has been decided (`out` or `in`), so a branch whose open problem is already no better than
 * the best full answer holds nothing better and is left.
 */

/** Continuous problems after which the search stops and says that it did. */
const SEARCH_LIMIT = 20_000;
/** Two values of an aim closer than this, relatively, are equal. */
const EQUAL_TOLERANCE = 1e-9;
/** Of a count: how far a sum of shares may fall short of a whole number by rounding. */
const COUNT_TOLERANCE = 1e-7;

/** Values of the aims in their order: the first decides, the second among equals. */
type Values = readonly [first: number, second: number];

interface Branch {
  /** No answer below this branch has better values. */
  readonly bound: Values;
  /** A full answer that was found on the way: its choices, and its values. */
  readonly answer?: { readonly values: Values; readonly choices: Choice[] };
  /** The product to decide next, -1 where the branch is settled. */
  readonly undecided: number;
}

interface Search {
  readonly problem: BlendProblem;
  readonly aim: BlendAim;
  readonly limit: number;
  explored: number;
  complete: boolean;
  best?: { readonly values: Values; readonly choices: readonly Choice[] };
}

/** A product that must be used, at an amount that there is not: nothing to search. */
const NO_SEARCH = { explored: 0, complete: true };

/** True if the problem has choices to make, so that `solveContinuous` alone does not answer it. */
export function hasChoices(problem: BlendProblem, aim: BlendAim): boolean {
  return aim.next === "fewest" || (problem.smallestIfUsed?.some((smallest) => smallest > 0) ?? false);
}

/**
 * The best blend over all choices of products: exact, unless the search had to stop at its limit. Branches are taken in
 * the caller's order of products, `out` before `in`, so the same problem has the same answer every time.
 */
export function solveWithChoices(problem: BlendProblem, aim: BlendAim, limit: number = SEARCH_LIMIT): BlendSolution {
  const search: Search = { problem, aim, limit, explored: 0, complete: true };
  const open = openChoices(problem);
  const { lower, upper } = chosen(problem, open);
  if (lower!.some((least, j) => least > upper![j]!))
    return { status: "infeasible", search: { ...NO_SEARCH, choices: open } };
  explore(search, open);
  const { best, explored, complete } = search;
  if (!best) {
    // Where the limits contradict each other whatever is chosen, their multipliers say so in fewer words.
    const root = solveContinuous(chosen(problem, open), aim);
    if (root.status === "infeasible") return root;
    return { status: "infeasible", search: { choices: open, explored, complete } };
  }
  // The branch has been solved, so there is a blend.
  const solution = solveContinuous(chosen(problem, best.choices), aim) as ReachedBlend;
  return {
    ...solution,
    certificate: { ...solution.certificate, search: { choices: best.choices, explored, complete } },
  };
}

/** A product that must be used is in from the start, one of which there is too little to use is out; others are open. */
function openChoices({ supply, lower, upper, smallestIfUsed }: BlendProblem): Choice[] {
  return supply[0]!.map((_, j) => {
    if ((lower?.[j] ?? 0) > 0) return "in";
    return (smallestIfUsed?.[j] ?? 0) > (upper?.[j] ?? Number.POSITIVE_INFINITY) ? "out" : "open";
  });
}

function explore(search: Search, choices: readonly Choice[]): void {
  if (search.explored >= search.limit) {
    search.complete = false;
    return;
  }
  const branch = search.aim.next === "fewest" ? boundByCount(search, choices) : boundByAims(search, choices);
  if (!branch) return;
  if (branch.answer && (!search.best || isBetter(branch.answer.values, search.best.values))) {
    search.best = branch.answer;
  }
  if (branch.undecided < 0 || (search.best && !isBetter(branch.bound, search.best.values))) return;
  for (const choice of ["out", "in"] as const) {
    explore(
      search,
      choices.map((before, j) => (j === branch.undecided ? choice : before)),
    );
  }
}

/** Smallest amounts only: the open problem's own aims are the bound, a product used too little is decided next. */
function boundByAims(search: Search, choices: readonly Choice[]): Branch | undefined {
  const solution = solveBranch(search, choices, search.aim, search.problem);
  if (!solution) return undefined;
  const second = search.aim.next === "cost" ? solution.cost! : distance(search.problem, solution);
  const values: Values = [solution.objective, second];
  const undecided = tooLittle(search.problem, solution.masses);
  return undecided < 0
    ? { bound: values, answer: { values, choices: [...choices] }, undecided }
    : { bound: values, undecided };
}

/**
 * Fewest products: every product `in` counts 1, and an open one at least its amount divided by the most there can be of
 * it. Making the sum of those shares small, as if it were money, bounds the count from below.
 */
function boundByCount(search: Search, choices: readonly Choice[]): Branch | undefined {
  const { problem, aim } = search;
  const first = solveBranch(search, choices, aim, problem);
  if (!first) return undefined;
  const most = mostOfEach(problem, first);
  const prices = most.map((mass, j) => (choices[j] === "open" && mass > 0 ? 1 / mass : 0));
  // The same limits as for the first, so there is a blend.
  const second = solveBranch(search, choices, { ...aim, next: "cost" }, { ...problem, prices })!;
  const { masses } = second;
  const ins = choices.reduce((count, choice) => count + (choice === "in" ? 1 : 0), 0);
  const bound: Values = [second.objective, ins + Math.ceil(second.cost! - COUNT_TOLERANCE)];
  let undecided = tooLittle(problem, masses);
  if (undecided >= 0) return { bound, undecided };
  const used = masses.map((mass) => mass > 0);
  const values: Values = [second.objective, used.filter(Boolean).length];
  const full = used.map((isUsed): Choice => (isUsed ? "in" : "out"));
  undecided = used.findIndex((isUsed, j) => isUsed && choices[j] === "open");
  return { bound, answer: { values, choices: full }, undecided };
}

function solveBranch(
  search: Search,
  choices: readonly Choice[],
  aim: BlendAim,
  problem: BlendProblem,
): ReachedBlend | undefined {
  search.explored++;
  const solution = solveContinuous(chosen(problem, choices), aim);
  return solution.status === "infeasible" ? undefined : solution;
}

/** The continuous problem that a set of choices leaves. */
export function chosen(problem: BlendProblem, choices: readonly Choice[]): BlendProblem {
  const { smallestIfUsed, ...continuous } = problem;
  const lower = choices.map((choice, j) => {
    const least = problem.lower?.[j] ?? 0;
    return choice === "in" ? Math.max(least, smallestIfUsed?.[j] ?? 0) : least;
  });
  const upper = choices.map((choice, j) => (choice === "out" ? 0 : (problem.upper?.[j] ?? Number.POSITIVE_INFINITY)));
  return { ...continuous, lower, upper };
}

/** The product that falls short of its smallest amount by the largest share, -1 if none does. What is decided does not. */
function tooLittle(problem: BlendProblem, masses: readonly number[]): number {
  let worst = -1;
  let largest = 0;
  masses.forEach((mass, j) => {
    const smallest = problem.smallestIfUsed?.[j] ?? 0;
    // Written so that 0 / 0, where there is no smallest amount, is passed over.
    const short = Math.min(mass, smallest - mass) / smallest;
    if (!(short > largest)) return;
    worst = j;
    largest = short;
  });
  return worst;
}

/** The most of each product that any blend with the same misses can hold; Infinity where nothing says. */
function mostOfEach(problem: BlendProblem, first: ReachedBlend): number[] {
  const { targets, supply, offsets, ceilings, total } = problem;
  const scales = missScales(targets);
  const rows: { coefficients: readonly number[]; limit: number }[] = [...(ceilings ?? [])];
  if (total !== undefined) rows.push({ coefficients: supply[0]!.map(() => 1), limit: total });
  targets.forEach((target, i) => {
    const allowed = first.aim.miss === "largest" ? (first.objective * scales[i]!) / (target.weight ?? 1) : 0;
    const high =
      first.misses[i] !== 0 && first.aim.miss === "squares" ? first.delivered[i]! : bandHigh(target) + allowed;
    rows.push({ coefficients: supply[i]!, limit: high - (offsets?.[i] ?? 0) });
  });
  return supply[0]!.map((_, j) => {
    let most = problem.upper?.[j] ?? Number.POSITIVE_INFINITY;
    for (const { coefficients, limit } of rows) {
      // A row without negative entries bounds each product that it holds.
      if (coefficients[j]! > 0 && coefficients.every((c) => c >= 0)) most = Math.min(most, limit / coefficients[j]!);
    }
    // A little room, so that rounding in the misses cannot make the bound wrong.
    return most * (1 + COUNT_TOLERANCE);
  });
}

/** The sum of weighted squared relative distances from the wanted amounts, the value of the aim `nearest`. */
function distance({ targets }: BlendProblem, { delivered }: ReachedBlend): number {
  const scales = missScales(targets);
  let sum = 0;
  targets.forEach((target, i) => {
    const away = missOf(delivered[i]!, idealLow(target), idealHigh(target));
    sum += (target.weight ?? 1) * (away / scales[i]!) ** 2;
  });
  return sum;
}

function isBetter(a: Values, b: Values): boolean {
  return isLess(a[0], b[0]) || (!isLess(b[0], a[0]) && isLess(a[1], b[1]));
}

function isLess(a: number, b: number): boolean {
  return b - a > EQUAL_TOLERANCE * Math.max(Math.abs(a), Math.abs(b), EQUAL_TOLERANCE);
}
