/**
 * Amounts that can be weighed: whole steps of a scale, a spoon or a syringe, chosen together.
 *
 * Rounding each product alone lets its errors add up; another set of whole steps often meets the targets better.
 * The set is found by exact search (branch and bound): docs/decisions/weighing.md says how and why it is exact.
 */

/** What one nutrient should come to, and how much a miss of it matters. */
export interface WeighRow {
  /** What one gram of each product delivers. */
  readonly supply: readonly number[];
  /** The range that counts as met, by the products alone (what is there already is taken off). May be open. */
  readonly low: number;
  readonly high: number;
  /** What the exact blend delivers: among sets equally good for the range, the nearest to it is chosen. */
  readonly ideal: number;
  /** The amount that makes a relative miss of 1, > 0. */
  readonly scale: number;
  /** > 0. */
  readonly weight: number;
}

export interface WeighProblem {
  readonly rows: readonly WeighRow[];
  /** Grams of one step, for each product. */
  readonly steps: readonly number[];
  /** The exact blend. A product that it leaves out stays out. */
  readonly idealGrams: readonly number[];
  /** Most grams of each product; Infinity where there is no limit. */
  readonly most: readonly number[];
  /** Least grams of each product; all may be left out where it is missing. */
  readonly least?: readonly number[];
  /** A product is left out, or at least this much of it is used; 0 for any amount. */
  readonly leastIfUsed: readonly number[];
  /** Sums of coefficient times grams that must stay at or below their limit. */
  readonly ceilings: readonly { readonly coefficients: readonly number[]; readonly limit: number }[];
}

/** A set of whole steps. */
export interface WeighedSet {
  /** Steps of each product. */
  readonly counts: readonly number[];
  readonly massGrams: readonly number[];
  /** Root of the sum of weighted squared relative misses of the ranges: 0 when every one is met. */
  readonly miss: number;
  /** The same for the distances from the exact blend. */
  readonly distance: number;
}

export interface Weighed {
  /** Undefined when no set near the exact blend keeps the ceilings. */
  readonly best: WeighedSet | undefined;
  /** Each product rounded by itself. */
  readonly roundedEach: WeighedSet;
  /** Whether that rounding keeps the ceilings and the most and least amounts. */
  readonly roundedEachAllowed: boolean;
  /** Sets and parts of sets that were looked at. */
  readonly explored: number;
  /** False when the search was cut off at its limit, so that a better set may exist. */
  readonly complete: boolean;
}

/** Steps looked at on either side of the exact amount. */
export const STEPS_AROUND = 3;
const SEARCH_LIMIT = 400_000;
/** What the distance from the exact blend counts beside the miss of the ranges: it decides among near equals. */
const DISTANCE_SHARE = 1e-3;
/** A set must be better than the best by more than rounding. */
const BETTER = 1e-12;
/** Relative rounding that a sum of squares may have gathered. */
const ROUNDING = 1e-12;
/** Ceilings may be passed by rounding only, relative. */
const CEILING_SLACK = 1e-9;

/**
 * Which whole steps of each product come nearest to the blend?
 *
 * Among all sets within {@link STEPS_AROUND} steps of the exact amounts, the one with the least
 * sum of weight * (miss / scale)^2, the distance from the exact blend counting a thousandth beside it.
 *
 * @param problem Rows, steps and limits; masses in grams, rates in any one unit.
 * @returns The best set, each-by-itself rounding for comparison, and whether the search is complete.
 * @example
 * weigh({ rows: [{ supply: [1], low: 7.4, high: 7.4, ideal: 7.4, scale: 7.4, weight: 1 }], steps: [2], idealGrams: [7.4], most: [Infinity], leastIfUsed: [0], ceilings: [] }).best.massGrams  // => [8]
 */
export function weigh(problem: WeighProblem): Weighed {
  const { steps, idealGrams } = problem;
  const rounded = idealGrams.map((grams, j) => Math.round(grams / steps[j]!));
  const search = prepare(problem);
  const roundedEachAllowed = allowed(problem, rounded);
  if (roundedEachAllowed) keep(search, rounded);
  descend(
    search,
    steps.length - 1,
    0,
    problem.rows.map(() => 0),
    problem.ceilings.map(() => 0),
  );
  return {
    best: search.best && setOf(problem, search.best),
    roundedEach: setOf(problem, rounded),
    roundedEachAllowed,
    explored: search.explored,
    complete: search.complete,
  };
}

interface Search {
  readonly problem: WeighProblem;
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** The part of the measure that is a sum of squares, as |y - R n|^2: R upper triangular, row by row. */
  readonly triangle: readonly (readonly number[])[];
  readonly y: readonly number[];
  /** What the sum of squares leaves out: the same for every set. */
  readonly constant: number;
  /** Per row of the ranges that are not single points, and per ceiling: least and most of products 0..k-1. */
  readonly reach: readonly Reach[];
  readonly ceilingLeast: readonly (readonly number[])[];
  readonly counts: number[];
  best: readonly number[] | undefined;
  bestValue: number;
  explored: number;
  complete: boolean;
}

interface Reach {
  readonly row: number;
  readonly least: readonly number[];
  readonly most: readonly number[];
}

const isPoint = (row: WeighRow): boolean => row.low === row.high;

function prepare(problem: WeighProblem): Search {
  const { rows, steps, idealGrams, most, ceilings } = problem;
  const low = idealGrams.map((grams, j) => (grams > 0 ? Math.max(0, Math.floor(grams / steps[j]!) - STEPS_AROUND) : 0));
  const high = idealGrams.map((grams, j) => {
    const stock = Math.floor((most[j]! / steps[j]!) * (1 + CEILING_SLACK));
    return grams > 0 ? Math.min(stock, Math.ceil(grams / steps[j]!) + STEPS_AROUND) : 0;
  });
  const partSums = (perStep: readonly number[], pick: (a: number, b: number) => number): number[] => {
    const sums = [0];
    perStep.forEach((one, j) => {
      sums.push(sums[j]! + pick(one * low[j]!, one * high[j]!));
    });
    return sums;
  };
  const perStep = (coefficients: readonly number[]): number[] => coefficients.map((one, j) => one * steps[j]!);
  return {
    problem,
    low,
    high,
    ...triangular(rows, steps),
    reach: rows.flatMap((row, index) =>
      isPoint(row)
        ? []
        : [
            {
              row: index,
              least: partSums(perStep(row.supply), Math.min),
              most: partSums(perStep(row.supply), Math.max),
            },
          ],
    ),
    ceilingLeast: ceilings.map(({ coefficients }) => partSums(perStep(coefficients), Math.min)),
    counts: steps.map(() => 0),
    best: undefined,
    bestValue: Number.POSITIVE_INFINITY,
    explored: 0,
    complete: true,
  };
}

/**
 * Where a range is a single point, w (d - p)^2 + e w (d - q)^2 is a square round the weighted mean of p and q plus a
 * constant; where it is not, only the second square belongs here. Cholesky of the normal matrix gives R and y.
 */
function triangular(rows: readonly WeighRow[], steps: readonly number[]): Pick<Search, "triangle" | "y" | "constant"> {
  const size = steps.length;
  const gram = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  let constant = 0;
  let centres = 0;
  for (const row of rows) {
    const total = isPoint(row) ? 1 + DISTANCE_SHARE : DISTANCE_SHARE;
    const centre = isPoint(row) ? (row.low + DISTANCE_SHARE * row.ideal) / total : row.ideal;
    const weight = (row.weight * total) / row.scale ** 2;
    centres += weight * centre ** 2;
    if (isPoint(row)) constant += ((weight * DISTANCE_SHARE) / total ** 2) * (row.low - row.ideal) ** 2;
    for (let a = 0; a < size; a++) {
      const left = weight * row.supply[a]! * steps[a]!;
      right[a]! += left * centre;
      for (let b = 0; b < size; b++) gram[a]![b]! += left * row.supply[b]! * steps[b]!;
    }
  }
  const triangle = gram.map((row) => row.map(() => 0));
  const y = right.map(() => 0);
  for (let k = 0; k < size; k++) {
    let pivot = gram[k]![k]!;
    for (let i = 0; i < k; i++) pivot -= triangle[i]![k]! ** 2;
    // A product that adds nothing new to the products before it has no square of its own.
    if (!(pivot > 1e-11 * gram[k]![k]!)) continue;
    const root = Math.sqrt(pivot);
    for (let j = k; j < size; j++) {
      let sum = gram[k]![j]!;
      for (let i = 0; i < k; i++) sum -= triangle[i]![k]! * triangle[i]![j]!;
      triangle[k]![j] = sum / root;
    }
    let sum = right[k]!;
    for (let i = 0; i < k; i++) sum -= triangle[i]![k]! * y[i]!;
    y[k] = sum / root;
  }
  const fitted = y.reduce((sum, one) => sum + one * one, 0);
  // A little less than it is, so that rounding never cuts off a set that is as good.
  return { triangle, y, constant: constant + Math.max(0, centres - fitted - ROUNDING * centres) };
}

/** Decides product k, then those before it; `squares` is the cost of the squares that the decided ones have settled. */
function descend(
  search: Search,
  k: number,
  squares: number,
  rowSums: readonly number[],
  ceilingSums: readonly number[],
) {
  if (search.explored >= SEARCH_LIMIT) {
    search.complete = false;
    return;
  }
  search.explored++;
  const { problem, counts, triangle, y } = search;
  if (k < 0) {
    if (allowed(problem, counts)) keep(search, counts);
    return;
  }
  const own = triangle[k]![k]!;
  let pull = y[k]!;
  for (let j = k + 1; j < counts.length; j++) pull -= triangle[k]![j]! * counts[j]!;
  const centre = own > 0 ? pull / own : problem.idealGrams[k]! / problem.steps[k]!;
  for (const count of nearestFirst(centre, search.low[k]!, search.high[k]!)) {
    const cost = squares + (own > 0 ? (pull - own * count) ** 2 : 0);
    // Counts come in order of their distance, so every later one costs more still.
    if (cost + search.constant >= search.bestValue) break;
    counts[k] = count;
    const grams = count * problem.steps[k]!;
    const sums = rowSums.map((sum, i) => sum + problem.rows[i]!.supply[k]! * grams);
    const held = ceilingSums.map((sum, r) => sum + problem.ceilings[r]!.coefficients[k]! * grams);
    if (cost + search.constant + unreachable(search, k, sums) >= search.bestValue) continue;
    if (held.some((sum, r) => overCeiling(sum + search.ceilingLeast[r]![k]!, problem.ceilings[r]!.limit))) continue;
    descend(search, k - 1, cost, sums, held);
  }
  counts[k] = 0;
}

/** The least that ranges must be missed by, each by itself, whatever the products before k come to. */
function unreachable(search: Search, k: number, sums: readonly number[]): number {
  let least = 0;
  for (const { row, least: from, most: to } of search.reach) {
    const { low, high, weight, scale } = search.problem.rows[row]!;
    const short = Math.max(0, low - (sums[row]! + to[k]!), sums[row]! + from[k]! - high);
    least += weight * (short / scale) ** 2;
  }
  return least;
}

function* nearestFirst(centre: number, low: number, high: number): Generator<number> {
  let down = Math.min(high, Math.max(low, Math.round(centre)));
  let up = down + 1;
  while (down >= low || up <= high) {
    if (up > high || (down >= low && Math.abs(down - centre) <= Math.abs(up - centre))) yield down--;
    else yield up++;
  }
}

function overCeiling(sum: number, limit: number): boolean {
  return sum > limit + CEILING_SLACK * Math.abs(limit);
}

function allowed({ steps, most, least, leastIfUsed, ceilings }: WeighProblem, counts: readonly number[]): boolean {
  const grams = counts.map((count, j) => count * steps[j]!);
  const withinAmounts = grams.every(
    (mass, j) =>
      mass <= most[j]! * (1 + CEILING_SLACK) &&
      mass >= (least?.[j] ?? 0) * (1 - CEILING_SLACK) &&
      (mass === 0 || mass >= leastIfUsed[j]! * (1 - CEILING_SLACK)),
  );
  return (
    withinAmounts &&
    ceilings.every(
      ({ coefficients, limit }) =>
        !overCeiling(
          coefficients.reduce((sum, one, j) => sum + one * grams[j]!, 0),
          limit,
        ),
    )
  );
}

function keep(search: Search, counts: readonly number[]): void {
  const { miss, distance } = setOf(search.problem, counts);
  const value = miss ** 2 + DISTANCE_SHARE * distance ** 2;
  const isFirst = search.best === undefined;
  if (!isFirst && !(value < search.bestValue * (1 - BETTER))) return;
  search.best = [...counts];
  search.bestValue = value;
}

function setOf({ rows, steps }: WeighProblem, counts: readonly number[]): WeighedSet {
  const massGrams = counts.map((count, j) => count * steps[j]!);
  let miss = 0;
  let distance = 0;
  for (const { supply, low, high, ideal, scale, weight } of rows) {
    const delivered = supply.reduce((sum, perGram, j) => sum + perGram * massGrams[j]!, 0);
    const outside = Math.max(0, low - delivered, delivered - high);
    miss += weight * (outside / scale) ** 2;
    distance += weight * ((delivered - ideal) / scale) ** 2;
  }
  return { counts: [...counts], massGrams, miss: Math.sqrt(miss), distance: Math.sqrt(distance) };
}
