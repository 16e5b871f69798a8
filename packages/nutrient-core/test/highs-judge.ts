import loader, { type Highs } from "highs";
import { type BlendProblem, bandHigh, bandLow, missOf, missScales } from "../src/blend/engine/problem.ts";
import type { BlendSolution, ReachedBlend } from "../src/blend/engine/solution.ts";

/*
 * The outside judge: HiGHS (University of Edinburgh, MIT licence) solves the same blend, written down here from the
 * problem alone. Least squares go to its active-set method for convex quadratic programs, everything else to its
 * simplex method.
 *
 * The quadratic method regularises (by 1e-7; smaller values make it circle more often) and stops at tolerances of its own, so it cannot
 * always tell 1e-7 relative. Where it ends above the engine's value, the simplex method decides instead: it makes the
 * tangent of the aim at the engine's answer small over all allowed blends. A convex function lies nowhere below its
 * tangent, so the least value of the tangent is a lower bound of the aim, computed without a number of the engine's
 * certificate. Both ways are counted and printed by the test.
 */

/** How an aim was judged: value of the engine, value (or lower bound) of the judge, and the way. */
export interface Judgement {
  readonly aim: "feasible" | "squares" | "largest" | "cost";
  readonly way: "simplex" | "quadratic" | "tangent";
  readonly ours: number;
  readonly theirs: number;
  /** Below this a difference is rounding of the terms that the value is made from. */
  readonly floor: number;
}

// The package's types call its module a CommonJS one; it is not.
const load = loader as unknown as () => Promise<Highs>;

export const startJudge = (): Promise<Highs> => load();

interface Model {
  readonly cost: number[];
  /** Diagonal of the quadratic part. */
  readonly square: number[];
  readonly low: number[];
  readonly high: number[];
  readonly rows: {
    readonly entries: readonly (readonly [column: number, value: number])[];
    low: number;
    high: number;
  }[];
}

type Range = readonly [low: number, high: number];

/** Judges feasibility, the first aim, and the cost where that is the second. */
export function judge(highs: Highs, problem: BlendProblem, ours: BlendSolution): Judgement[] {
  const feasible = solve(highs, baseModel(problem)).isOptimal;
  const verdict: Judgement = {
    aim: "feasible",
    way: "simplex",
    ours: ours.status === "infeasible" ? 0 : 1,
    theirs: feasible ? 1 : 0,
    floor: 0,
  };
  if (!feasible || ours.status === "infeasible") return [verdict];
  const judgements = [verdict];
  judgements.push(
    ours.aim.miss === "largest" ? judgeLargest(highs, problem, ours) : judgeSquares(highs, problem, ours),
  );
  if (ours.aim.next === "cost") judgements.push(judgeCost(highs, problem, ours));
  return judgements;
}

/** Agreement to 1e-7 relative, as the issue of this engine asks for. */
export function agrees({ ours, theirs, floor }: Judgement): boolean {
  return Math.abs(ours - theirs) <= 1e-7 * Math.max(Math.abs(ours), Math.abs(theirs)) + floor;
}

/** Grams per column of the model: columns of like size are easier for any solver. */
function columnUnits({ supply, targets }: BlendProblem): number[] {
  const scales = missScales(targets);
  return supply[0]!.map((_, j) => 1 / (Math.hypot(...supply.map((row, i) => row[j]! / scales[i]!)) || 1));
}

/** The hard limits; products are the first columns. */
function baseModel(problem: BlendProblem): Model {
  const units = columnUnits(problem);
  const model: Model = { cost: [], square: [], low: [], high: [], rows: [] };
  units.forEach((unit, j) => {
    addColumn(model, (problem.lower?.[j] ?? 0) / unit, (problem.upper?.[j] ?? Infinity) / unit);
  });
  const addHardRow = (coefficients: readonly number[], low: number, high: number): void => {
    const scaled = coefficients.map((c, j) => c * units[j]!);
    const largest = Math.max(...scaled.map(Math.abs)) || 1;
    model.rows.push({
      entries: scaled.map((c, j) => [j, c / largest] as const),
      low: low / largest,
      high: high / largest,
    });
  };
  for (const { coefficients, limit } of problem.ceilings ?? []) addHardRow(coefficients, -Infinity, limit);
  if (problem.total !== undefined)
    addHardRow(
      units.map(() => 1),
      problem.total,
      problem.total,
    );
  return model;
}

function addColumn(model: Model, low: number, high: number, square = 0): number {
  model.low.push(low);
  model.high.push(high);
  model.cost.push(0);
  model.square.push(square);
  return model.low.length - 1;
}

/** Row i in relative units, within a range, with further columns. */
function addRow(model: Model, problem: BlendProblem, i: number, [low, high]: Range, more: [number, number][]): void {
  const units = columnUnits(problem);
  const scale = missScales(problem.targets)[i]!;
  const offset = problem.offsets?.[i] ?? 0;
  const entries = problem.supply[i]!.map((s, j) => [j, (s * units[j]!) / scale] as const);
  model.rows.push({ entries: [...entries, ...more], low: (low - offset) / scale, high: (high - offset) / scale });
}

const weightOf = (problem: BlendProblem, i: number): number => problem.targets[i]!.weight ?? 1;

function judgeSquares(highs: Highs, problem: BlendProblem, ours: ReachedBlend): Judgement {
  const model = baseModel(problem);
  problem.targets.forEach((target, i) => {
    const square = 2 * weightOf(problem, i);
    const under = addColumn(model, 0, Infinity, square);
    const over = addColumn(model, 0, Infinity, square);
    addRow(
      model,
      problem,
      i,
      [bandLow(target), bandHigh(target)],
      [
        [under, 1],
        [over, -1],
      ],
    );
  });
  const floor = 1e-16 * problem.targets.reduce((sum, _, i) => sum + weightOf(problem, i), 0);
  const { x, isOptimal } = solve(highs, model);
  const quadratic: Judgement = {
    aim: "squares",
    way: "quadratic",
    ours: ours.objective,
    theirs: valueAt(problem, x),
    floor,
  };
  if (isOptimal && agrees(quadratic)) return quadratic;
  // The engine ended above the judge's value by more than can be: no second opinion.
  if (isOptimal && quadratic.theirs < quadratic.ours && isAllowed(problem, x)) return quadratic;

  const tangent = baseModel(problem);
  const units = columnUnits(problem);
  const scales = missScales(problem.targets);
  const slope = units.map((unit, j) =>
    problem.targets.reduce(
      (sum, _, i) =>
        sum + ((2 * weightOf(problem, i) * ours.misses[i]!) / scales[i]! ** 2) * problem.supply[i]![j]! * unit,
      0,
    ),
  );
  slope.forEach((c, j) => {
    tangent.cost[j] = c;
  });
  const answer = solve(highs, tangent);
  const drop = slope.reduce((sum, c, j) => sum + c * (answer.x[j]! - ours.masses[j]! / units[j]!), 0);
  return {
    aim: "squares",
    way: "tangent",
    ours: ours.objective,
    theirs: answer.isOptimal ? ours.objective + Math.min(0, drop) : Number.NaN,
    floor,
  };
}

/** The sum of weighted squared relative misses of the judge's answer. */
function valueAt(problem: BlendProblem, x: Float64Array): number {
  const units = columnUnits(problem);
  const scales = missScales(problem.targets);
  return problem.targets.reduce((sum, target, i) => {
    const delivered = problem.supply[i]!.reduce((d, s, j) => d + s * units[j]! * x[j]!, problem.offsets?.[i] ?? 0);
    return sum + weightOf(problem, i) * (missOf(delivered, bandLow(target), bandHigh(target)) / scales[i]!) ** 2;
  }, 0);
}

/** Whether an answer keeps the hard limits to within rounding, so that its value may be compared. */
function isAllowed(problem: BlendProblem, x: Float64Array): boolean {
  const { low, high, rows } = baseModel(problem);
  const isWithin = (value: number, from: number, to: number): boolean => value >= from - 1e-12 && value <= to + 1e-12;
  return (
    low.every((from, j) => isWithin(x[j]!, from, high[j]!)) &&
    rows.every((row) =>
      isWithin(
        row.entries.reduce((sum, [j, c]) => sum + c * x[j]!, 0),
        row.low,
        row.high,
      ),
    )
  );
}

function largestModel(problem: BlendProblem): Model {
  const model = baseModel(problem);
  const t = addColumn(model, 0, Infinity);
  problem.targets.forEach((target, i) => {
    const low = bandLow(target);
    const high = bandHigh(target);
    const share = 1 / weightOf(problem, i);
    if (low > -Infinity) addRow(model, problem, i, [low, Infinity], [[t, share]]);
    if (high < Infinity) addRow(model, problem, i, [-Infinity, high], [[t, -share]]);
  });
  return model;
}

function judgeLargest(highs: Highs, problem: BlendProblem, ours: ReachedBlend): Judgement {
  const model = largestModel(problem);
  const t = problem.supply[0]!.length;
  model.cost[t] = 1;
  const { x, isOptimal } = solve(highs, model);
  return { aim: "largest", way: "simplex", ours: ours.objective, theirs: isOptimal ? x[t]! : Number.NaN, floor: 2e-9 };
}

/**
 * The least money among the blends that miss no more than the engine's does. Rows that are missed are fixed at what the
 * engine delivers; where rounding leaves the judge no point at all among them, they get a slack of 2e-10 of their scale,
 * and the comparison allows what that slack can save.
 */
function judgeCost(highs: Highs, problem: BlendProblem, ours: ReachedBlend): Judgement {
  const units = columnUnits(problem);
  const scales = missScales(problem.targets);
  const costs = units.map((unit, j) => problem.prices![j]! * unit);
  let answer: Answer | undefined;
  let given = 0;
  for (const slack of [0, 2e-10]) {
    if (answer?.isOptimal) break;
    given = slack;
    const model = ours.aim.miss === "largest" ? largestModel(problem) : baseModel(problem);
    if (ours.aim.miss === "largest") model.high[units.length] = ours.objective + slack;
    else {
      problem.targets.forEach((target, i) => {
        const isFree = ours.misses[i] === 0;
        const low = isFree ? bandLow(target) : ours.delivered[i]!;
        const high = isFree ? bandHigh(target) : ours.delivered[i]!;
        addRow(model, problem, i, [low - slack * scales[i]!, high + slack * scales[i]!], []);
      });
    }
    costs.forEach((cost, j) => {
      model.cost[j] = cost;
    });
    answer = solve(highs, model);
  }
  const { isOptimal, x, duals } = answer!;
  const theirs = isOptimal ? costs.reduce((sum, cost, j) => sum + cost * x[j]!, 0) : Number.NaN;
  // What the slack may have saved, by the judge's own multipliers.
  const saved = given * duals.reduce((sum, dual) => sum + Math.abs(dual), 0);
  return { aim: "cost", way: "simplex", ours: ours.cost!, theirs, floor: 1e-9 * Math.max(...costs) + saved };
}

interface Answer {
  readonly isOptimal: boolean;
  readonly x: Float64Array;
  /** Multipliers of the rows. */
  readonly duals: Float64Array;
}

function solve(highs: Highs, model: Model): Answer {
  const { cost, square, low, high, rows } = model;
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const { entries } of rows) {
    for (const [j, value] of entries) {
      if (value === 0) continue;
      indices.push(j);
      values.push(value);
    }
    starts.push(indices.length);
  }
  const squared = square.flatMap((q, j) => (q === 0 ? [] : [j]));
  const hessianStarts = [0];
  for (const q of square) hessianStarts.push(hessianStarts.at(-1)! + (q === 0 ? 0 : 1));
  const hessian = {
    format: "triangular" as const,
    dimension: cost.length,
    starts: Int32Array.from(hessianStarts),
    indices: Int32Array.from(squared),
    values: Float64Array.from(squared, (j) => square[j]!),
  };
  const data = {
    numCols: cost.length,
    numRows: rows.length,
    colCost: Float64Array.from(cost),
    colLower: Float64Array.from(low),
    colUpper: Float64Array.from(high),
    rowLower: Float64Array.from(rows, (row) => row.low),
    rowUpper: Float64Array.from(rows, (row) => row.high),
    matrix: {
      format: "csr" as const,
      numRows: rows.length,
      numCols: cost.length,
      starts: Int32Array.from(starts),
      indices: Int32Array.from(indices),
      values: Float64Array.from(values),
    },
    ...(squared.length > 0 ? { hessian } : {}),
  };
  return highs.withModel(data, (solver) => {
    solver.options.set({
      output_flag: false,
      primal_feasibility_tolerance: 1e-10,
      dual_feasibility_tolerance: 1e-10,
      small_matrix_value: 1e-12,
      // Some of these programs send the quadratic method round in circles; then the tangent decides.
      qp_iteration_limit: 2_000,
      time_limit: 2,
    });
    try {
      solver.run();
    } catch {
      return { isOptimal: false, x: new Float64Array(cost.length), duals: new Float64Array(rows.length) };
    }
    const isOptimal = solver.getModelStatus() === highs.constants.modelStatus.optimal;
    const { colValue, rowDual } = solver.getSolution();
    return { isOptimal, x: Float64Array.from(colValue), duals: Float64Array.from(rowDual) };
  });
}
