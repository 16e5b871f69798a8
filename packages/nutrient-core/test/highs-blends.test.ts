import { expect, test } from "vitest";
import { type BlendProblem, type BlendSolution, solveBlend } from "../src/blend/engine/index.ts";
import { DEGENERATE_KINDS, degenerateBlend, randomBlend, seeded } from "../src/blend/engine/testing/random-blends.ts";
import { agrees, type Judgement, judge, startJudge } from "./highs-judge.ts";

/*
 * Every blend against HiGHS: the same verdict on feasibility, and values equal to 1e-7 relative. A short run by default;
 * TRUG_FULL=1 runs the 20,000 random blends (the degenerate 300 always run). TRUG_SEED chooses other blends.
 */
const SEED = Number(process.env["TRUG_SEED"] ?? 20260314);
const RANDOM_BLENDS = process.env["TRUG_FULL"] ? 20_000 : 1_000;
const DEGENERATE_BLENDS = 300;
/** HiGHS takes milliseconds for each. */
const TIME_LIMIT = 30 * 60_000;

interface Tally {
  readonly counts: Map<string, number>;
  readonly differences: string[];
}

async function compare(blends: Iterable<[name: string, problem: BlendProblem]>): Promise<Tally> {
  const highs = await startJudge();
  const tally: Tally = { counts: new Map(), differences: [] };
  for (const [name, problem] of blends) {
    let ours: BlendSolution;
    try {
      ours = solveBlend(problem);
    } catch (error) {
      // No answer is a difference like any other: counted, named, and the run goes on.
      tally.differences.push(`${name}: ${error}`);
      continue;
    }
    const judgements: Judgement[] = judge(highs, problem, ours);
    for (const judgement of judgements) {
      const key = `${judgement.aim} by ${judgement.way}`;
      tally.counts.set(key, (tally.counts.get(key) ?? 0) + 1);
      if (!agrees(judgement)) tally.differences.push(`${name}: ${JSON.stringify(judgement)}`);
    }
  }
  return tally;
}

function report(what: string, { counts, differences }: Tally): void {
  const list = [...counts].map(([key, count]) => `${key} ${count}`).join(", ");
  process.stdout.write(`${what}, seed ${SEED}: ${list}; ${differences.length} differences\n`);
}

function* randomBlends(): Generator<[string, BlendProblem]> {
  const random = seeded(SEED);
  for (let k = 0; k < RANDOM_BLENDS; k++) yield [`random ${k}`, randomBlend(random, { products: 30, nutrients: 20 })];
}

/** Blends that once came out dearer than HiGHS's, by what rounding had added to their largest miss. */
function* dearBlends(): Generator<[string, BlendProblem]> {
  const random = seeded(20260314);
  for (let k = 0; k <= 15_208; k++) {
    const problem = randomBlend(random, { products: 30, nutrients: 20 });
    if (k === 5_071 || k === 15_208) yield [`dear ${k}`, problem];
  }
}

function* degenerateBlends(): Generator<[string, BlendProblem]> {
  const random = seeded(SEED + 1);
  for (let k = 0; k < DEGENERATE_BLENDS; k++) {
    const kind = DEGENERATE_KINDS[k % DEGENERATE_KINDS.length]!;
    yield [`${kind} ${k}`, degenerateBlend(random, kind)];
  }
}

test(
  "random blends of realistic materials agree with HiGHS",
  async () => {
    const tally = await compare(randomBlends());
    report(`${RANDOM_BLENDS} random blends`, tally);
    expect(tally.differences).toEqual([]);
  },
  TIME_LIMIT,
);

test("blends that were dear once cost what HiGHS finds", async () => {
  expect((await compare(dearBlends())).differences).toEqual([]);
});

test(
  "degenerate blends agree with HiGHS",
  async () => {
    const tally = await compare(degenerateBlends());
    report(`${DEGENERATE_BLENDS} degenerate blends`, tally);
    expect(tally.differences).toEqual([]);
  },
  TIME_LIMIT,
);
