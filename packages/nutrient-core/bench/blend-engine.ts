import loader, { type Highs } from "highs";
import * as quadprog from "quadprog";
import { Bench } from "tinybench";
import { type Coefficients, type Constraint, solve as solveYalps } from "yalps";
import { checkCertificate } from "../src/blend/engine/certificate.ts";
import { startMemory } from "../src/blend/engine/memory.ts";
import { type BlendProblem, missScales } from "../src/blend/engine/problem.ts";
import { reportBlend } from "../src/blend/engine/report.ts";
import { scaleProblem } from "../src/blend/engine/scaling.ts";
import type { ReachedBlend } from "../src/blend/engine/solution.ts";
import { solveBlend } from "../src/blend/engine/solve.ts";
import { ATTEMPTS } from "../src/blend/engine/solve-continuous.ts";
import { findFeasible, leastLargestMiss } from "../src/blend/engine/stages.ts";
import { randomSupply, randomWanted, seeded } from "../src/blend/engine/testing/random-blends.ts";

/*
 * The blend engine beside three libraries, on the same problems in one run: realistic materials, every nutrient wanted at
 * an amount. The engine's time includes scaling, certificate, checking and report; the libraries' time includes writing
 * the problem down in their form, which anyone who used them would have to do, and no certificate.
 *
 * quadprog solves the least squares (it needs a positive definite matrix, so 1e-9 is added to the diagonal); yalps has
 * linear programs only and gets the smallest largest miss; HiGHS gets both. Where the largest miss is made small, the
 * engine goes on to the nearest blend within it. `both` does the same job with the libraries: yalps, then quadprog with
 * each row held within that miss. `rest` is what the engine would take if solving took nothing: writing the report and
 * checking its proof. `first` is scaling and the largest miss alone, where yalps and HiGHS stop. Ratios matter, not
 * microseconds.
 */

const PRODUCTS = [3, 6, 10, 30];
const NUTRIENTS = [2, 6, 12, 20];
const PROBLEMS = 16;
const SEED = 20260314;
const MILLISECONDS = Number(process.env["BENCH_MS"] ?? 120);

function problems(products: number, nutrients: number): BlendProblem[] {
  const random = seeded(SEED);
  return Array.from({ length: PROBLEMS }, () => {
    const supply = randomSupply(random, products, nutrients);
    const targets = supply.map((_, i) => ({ wanted: randomWanted(random, i), ...(i === 17 ? { scale: 100 } : {}) }));
    return { supply, targets };
  });
}

/** Least squares; with a largest miss, each row is kept within it, as the engine's second aim does. */
function byQuadprog({ supply, targets }: BlendProblem, largest?: number): quadprog.Result {
  const scales = missScales(targets);
  const products = supply[0]!.length;
  // Its arrays count from 1.
  const matrix: number[][] = [[]];
  const linear: number[] = [0];
  const identity: number[][] = [[]];
  for (let j = 0; j < products; j++) {
    const row = [0];
    const unit = [0];
    for (let k = 0; k < products; k++) {
      let sum = j === k ? 1e-9 : 0;
      for (let i = 0; i < targets.length; i++) sum += (supply[i]![j]! * supply[i]![k]!) / (scales[i]! * scales[i]!);
      row.push(sum);
      unit.push(j === k ? 1 : 0);
    }
    matrix.push(row);
    identity.push(unit);
    let d = 0;
    for (let i = 0; i < targets.length; i++) d += (supply[i]![j]! * targets[i]!.wanted) / (scales[i]! * scales[i]!);
    linear.push(d);
  }
  const bounds = new Array<number>(products + 1).fill(0);
  if (largest !== undefined) {
    targets.forEach(({ wanted }, i) => {
      const allowed = largest * scales[i]! * (1 + SLACK);
      for (let j = 0; j < products; j++) identity[j + 1]!.push(supply[i]![j]!, -supply[i]![j]!);
      bounds.push(wanted - allowed, -wanted - allowed);
    });
  }
  return quadprog.solveQP(matrix, linear, identity, bounds);
}

/** yalps keeps its answers to about eight digits; a row held within the last of them would leave quadprog no blend. */
const SLACK = 1e-7;

function byBoth(problem: BlendProblem): quadprog.Result {
  return byQuadprog(problem, byYalps(problem).result);
}

/** The answer's masses and multipliers are there; what is left is what they come to, and the proof of it. */
function reportAndCheck(problem: BlendProblem, { aim, masses, certificate }: ReachedBlend): boolean {
  return checkCertificate(problem, reportBlend(problem, aim, masses, certificate.proofs)).valid;
}

/** The largest miss, and nothing after it. */
function firstAim(problem: BlendProblem): unknown {
  startMemory();
  const scaled = scaleProblem(problem, ATTEMPTS[0]!);
  const feasible = findFeasible(scaled);
  return "point" in feasible ? leastLargestMiss(scaled, feasible.point) : undefined;
}

/** In how many answers the sum of squares is off by more than 1e-9 of it, the engine's own promise. */
function worseThanOurs(list: readonly BlendProblem[]): number {
  return list.filter((problem) => {
    const ours = solveBlend(problem);
    if (ours.status !== "closest") return false;
    const { solution } = byQuadprog(problem);
    const scales = missScales(problem.targets);
    const theirs = problem.targets.reduce((sum, { wanted }, i) => {
      const delivered = problem.supply[i]!.reduce((d, perGram, j) => d + perGram * solution[j + 1]!, 0);
      return sum + ((delivered - wanted) / scales[i]!) ** 2;
    }, 0);
    return !(theirs - ours.objective <= 1e-9 * ours.objective);
  }).length;
}

function byYalps({ supply, targets }: BlendProblem): { result: number } {
  const constraints: Record<string, Constraint> = {};
  const variables: Record<string, Coefficients> = { t: { miss: 1 } as Record<string, number> };
  const t = variables["t"] as Record<string, number>;
  const scales = missScales(targets);
  targets.forEach(({ wanted }, i) => {
    constraints[`u${i}`] = { min: wanted };
    constraints[`o${i}`] = { max: wanted };
    t[`u${i}`] = scales[i]!;
    t[`o${i}`] = -scales[i]!;
  });
  supply[0]!.forEach((_, j) => {
    const column: Record<string, number> = {};
    supply.forEach((row, i) => {
      if (row[j] === 0) return;
      column[`u${i}`] = row[j]!;
      column[`o${i}`] = row[j]!;
    });
    variables[`x${j}`] = column;
  });
  return solveYalps({ direction: "minimize", objective: "miss", constraints, variables });
}

/** Columns: products, then one free residual per row (squares), or t (largest). */
function byHighs(highs: Highs, { supply, targets }: BlendProblem, isSquares: boolean): unknown {
  const scales = missScales(targets);
  const products = supply[0]!.length;
  const extra = isSquares ? targets.length : 1;
  const columns = products + extra;
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  const low: number[] = [];
  const high: number[] = [];
  const addRow = (i: number, column: number, factor: number, from: number, to: number): void => {
    for (let j = 0; j < products; j++) {
      if (supply[i]![j] === 0) continue;
      indices.push(j);
      values.push(supply[i]![j]! / scales[i]!);
    }
    indices.push(column);
    values.push(factor);
    starts.push(indices.length);
    low.push(from);
    high.push(to);
  };
  targets.forEach(({ wanted }, i) => {
    const level = wanted / scales[i]!;
    if (isSquares) addRow(i, products + i, -1, level, level);
    else {
      addRow(i, products, 1, level, Number.POSITIVE_INFINITY);
      addRow(i, products, -1, Number.NEGATIVE_INFINITY, level);
    }
  });
  const hessianStarts = Int32Array.from({ length: columns + 1 }, (_, j) => Math.max(0, j - products));
  return highs.withModel(
    {
      numCols: columns,
      numRows: low.length,
      colCost: Float64Array.from({ length: columns }, (_, j) => (!isSquares && j === products ? 1 : 0)),
      colLower: Float64Array.from({ length: columns }, (_, j) =>
        isSquares && j >= products ? Number.NEGATIVE_INFINITY : 0,
      ),
      colUpper: new Float64Array(columns).fill(Number.POSITIVE_INFINITY),
      rowLower: Float64Array.from(low),
      rowUpper: Float64Array.from(high),
      matrix: {
        format: "csr" as const,
        numRows: low.length,
        numCols: columns,
        starts: Int32Array.from(starts),
        indices: Int32Array.from(indices),
        values: Float64Array.from(values),
      },
      ...(isSquares
        ? {
            hessian: {
              format: "triangular" as const,
              dimension: columns,
              starts: hessianStarts,
              indices: Int32Array.from({ length: extra }, (_, k) => products + k),
              values: new Float64Array(extra).fill(2),
            },
          }
        : {}),
    },
    (model) => {
      model.options.set({ output_flag: false, time_limit: 1, qp_iteration_limit: 2000 });
      model.run();
      return model.getSolution().colValue;
    },
  );
}

async function main(): Promise<void> {
  // The package's types call its module a CommonJS one; it is not.
  const highs = await (loader as unknown as () => Promise<Highs>)();
  const heading = [
    "size",
    "ours us",
    "+-%",
    "rest us",
    "quadprog",
    "HiGHS QP",
    "| ours us",
    "+-%",
    "first us",
    "yalps",
    "both",
    "HiGHS LP",
  ];
  process.stdout.write(
    `seed ${SEED}, ${PROBLEMS} problems a size; peers as multiples of our time (squares | largest)\n`,
  );
  process.stdout.write(`${heading.map((h) => h.padStart(9)).join(" ")}\n`);
  // The first table would otherwise also show how the engine is compiled.
  for (const products of PRODUCTS) {
    for (const problem of NUTRIENTS.flatMap((nutrients) => problems(products, nutrients))) {
      for (let round = 0; round < 20; round++) {
        for (const miss of ["squares", "largest"] as const) solveBlend({ ...problem, aim: { miss, next: "nearest" } });
      }
    }
  }
  let compared = 0;
  let worse = 0;
  for (const products of PRODUCTS) {
    for (const nutrients of NUTRIENTS) {
      const list = problems(products, nutrients);
      compared += list.length;
      worse += worseThanOurs(list);
      const bench = new Bench({ time: MILLISECONDS, warmupTime: MILLISECONDS / 2 });
      const cycle = (run: (problem: BlendProblem) => unknown) => (): void => {
        for (const problem of list) run(problem);
      };
      bench.add("squares", cycle(solveBlend));
      const solved = new Map(list.map((problem) => [problem, solveBlend(problem) as ReachedBlend]));
      bench.add(
        "rest",
        cycle((p) => reportAndCheck(p, solved.get(p)!)),
      );
      bench.add(
        "quadprog",
        cycle((p) => byQuadprog(p)),
      );
      bench.add(
        "highs-qp",
        cycle((p) => byHighs(highs, p, true)),
      );
      bench.add(
        "largest",
        cycle((p) => solveBlend({ ...p, aim: { miss: "largest", next: "nearest" } })),
      );
      bench.add("first", cycle(firstAim));
      bench.add("yalps", cycle(byYalps));
      bench.add("both", cycle(byBoth));
      bench.add(
        "highs-lp",
        cycle((p) => byHighs(highs, p, false)),
      );
      await bench.run();
      const median = (name: string): number => (resultOf(bench, name).latency.p50 * 1000) / PROBLEMS;
      const noise = (name: string): string => resultOf(bench, name).latency.rme.toFixed(0);
      const times = (peer: string, own: string): string => (median(peer) / median(own)).toFixed(1);
      const cells = [
        `${products}x${nutrients}`,
        median("squares").toFixed(1),
        noise("squares"),
        median("rest").toFixed(1),
        times("quadprog", "squares"),
        times("highs-qp", "squares"),
        median("largest").toFixed(1),
        noise("largest"),
        median("first").toFixed(1),
        times("yalps", "largest"),
        times("both", "largest"),
        times("highs-lp", "largest"),
      ];
      process.stdout.write(`${cells.map((c) => c.padStart(9)).join(" ")}\n`);
    }
  }
  process.stdout.write(`quadprog is off by more than 1e-9 of the sum of squares in ${worse} of ${compared} problems\n`);
}

function resultOf(bench: Bench, name: string): { latency: { p50: number; rme: number } } {
  const result = bench.getTask(name)?.result;
  if (!result || !("latency" in result)) throw new Error(`${name}: ${JSON.stringify(result)}`);
  return result as { latency: { p50: number; rme: number } };
}

await main();
