import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { type BlendProblem, DEFAULT_AIM } from "./problem.ts";
import { EVERYDAY_SEEDS, everydayBlend, HARD_SEEDS, hardBlend, REPAIRED_SEEDS } from "./testing/hard-blends.ts";
import {
  DEGENERATE_KINDS,
  degenerateBlend,
  nearAlikeBlend,
  randomBlend,
  seeded,
  tiedBlend,
} from "./testing/random-blends.ts";
import { type Work, watchedMemory } from "./testing/watched-memory.ts";

/*
 * What an answer costs, counted instead of timed: numbers of working memory that are read and written. Most of the
 * engine's rules change no answer, only the way to it (a row of zeros is passed over, the dial with most to gain goes
 * first, a table is made anew when it is worn), so without this they could be lost unnoticed. On the way, no place
 * outside a vector is touched: watched memory throws.
 *
 * A change of the engine changes these counts. If that is meant and `node packages/nutrient-core/bench/run.mjs` agrees,
 * `npm test -- work.test -u` writes them anew.
 */

const work: Work = { reads: 0, writes: 0 };
let engine: typeof import("./solve-continuous.ts");

beforeAll(async () => {
  vi.resetModules();
  vi.doMock("./memory.ts", () => watchedMemory(work));
  engine = await import("./solve-continuous.ts");
});

afterAll(() => {
  vi.doUnmock("./memory.ts");
  vi.resetModules();
});

type Kind = (random: () => number) => BlendProblem;

const KINDS: Readonly<Record<string, Kind>> = {
  small: (random) => randomBlend(random, { products: 6, nutrients: 6 }),
  large: (random) => randomBlend(random, { products: 20, nutrients: 20 }),
  "near-alike": nearAlikeBlend,
  tied: tiedBlend,
  ...Object.fromEntries(
    DEGENERATE_KINDS.filter((kind) => kind !== "thirty products").map((kind): [string, Kind] => [
      kind,
      (random) => degenerateBlend(random, kind),
    ]),
  ),
};

/** Reads and writes for some blends, or where the engine lost its way. */
function workOf(blends: readonly BlendProblem[], way: number): string {
  work.reads = 0;
  work.writes = 0;
  let lost = 0;
  for (const problem of blends) {
    try {
      engine.solveOnce(problem, problem.aim ?? DEFAULT_AIM, engine.ATTEMPTS[way]!);
    } catch (error) {
      if (!String(error).includes("blend engine")) throw error;
      lost++;
    }
  }
  return `${work.reads} reads, ${work.writes} writes${lost ? `, ${lost} lost` : ""}`;
}

const blends = (kind: Kind, count: number): BlendProblem[] =>
  Array.from({ length: count }, (_, k) => kind(seeded(k + 1)));

test("what thirty blends of each kind cost, the first way", () => {
  const costs = Object.entries(KINDS).map(([name, kind]) => `${name}: ${workOf(blends(kind, 30), 0)}`);
  expect(costs).toMatchInlineSnapshot(`
    [
      "small: 45810 reads, 13470 writes",
      "large: 331332 reads, 105847 writes",
      "near-alike: 87214 reads, 25463 writes",
      "tied: 105616 reads, 32874 writes",
      "equal columns: 166337 reads, 47825 writes",
      "scaled columns: 173027 reads, 50604 writes",
      "zero targets: 41063 reads, 10523 writes",
      "tied prices: 92142 reads, 27332 writes",
      "infeasible ceilings: 26528 reads, 10698 writes",
      "one product: 70369 reads, 21379 writes",
      "exactly reachable: 72459 reads, 21533 writes",
      "fixed amounts: 49023 reads, 12637 writes",
      "empty columns and rows: 72683 reads, 19462 writes",
    ]
  `);
});

test("what the blends cost that need the safeguards", () => {
  const costs = [
    ...EVERYDAY_SEEDS.map((seed) => `${seed}: ${workOf([everydayBlend(seed)], 0)}`),
    ...[...HARD_SEEDS, ...REPAIRED_SEEDS].map((seed) => `hard ${seed}: ${workOf([hardBlend(seed)], 0)}`),
  ];
  expect(costs).toMatchInlineSnapshot(`
    [
      "64: 27315 reads, 12624 writes",
      "112: 43779 reads, 16867 writes",
      "308: 45349 reads, 18525 writes",
      "1306: 180342 reads, 72774 writes",
      "1472: 162782 reads, 49863 writes",
      "1744: 63078 reads, 23526 writes",
      "2552: 111832 reads, 52789 writes",
      "2990: 2487 reads, 928 writes",
      "3546: 288750 reads, 100803 writes",
      "3550: 1230 reads, 441 writes",
      "3588: 18641 reads, 6020 writes",
      "4488: 42090 reads, 21700 writes",
      "6176: 32436 reads, 14520 writes",
      "6759: 26246 reads, 9673 writes",
      "7404: 108578 reads, 44133 writes",
      "8826: 86272 reads, 31191 writes",
      "9184: 20194 reads, 8237 writes",
      "9328: 30677 reads, 10455 writes",
      "13668: 121898 reads, 42608 writes",
      "13746: 52517 reads, 19189 writes",
      "hard 41: 16563 reads, 5439 writes",
      "hard 161: 890 reads, 308 writes",
      "hard 215: 5087 reads, 1495 writes",
      "hard 401: 9970 reads, 2965 writes",
      "hard 545: 11952 reads, 3963 writes",
      "hard 1587: 2417 reads, 961 writes",
      "hard 2039: 9067 reads, 3052 writes",
      "hard 2067: 1514 reads, 522 writes",
      "hard 2529: 16652 reads, 5492 writes",
      "hard 2723: 8827 reads, 2953 writes",
      "hard 5521: 15372 reads, 4839 writes",
      "hard 5725: 8946 reads, 2789 writes",
      "hard 7537: 10362 reads, 3107 writes",
      "hard 8460: 2199 reads, 755 writes",
      "hard 8471: 7358 reads, 2283 writes",
      "hard 8521: 11508 reads, 3651 writes",
      "hard 14621: 22295 reads, 7594 writes",
      "hard 14633: 7233 reads, 2655 writes",
      "hard 15905: 10021 reads, 3361 writes",
      "hard 1259: 217688 reads, 73876 writes",
      "hard 3223: 25169 reads, 8041 writes",
      "hard 4617: 18999 reads, 6062 writes",
      "hard 6933: 24414 reads, 7654 writes",
      "hard 10967: 8171 reads, 2386 writes",
      "hard 14963: 31182 reads, 9821 writes",
      "hard 15149: 13015 reads, 4198 writes",
    ]
  `);
});

test("what thirty small and thirty hard blends cost, each other way", () => {
  const hard = Array.from({ length: 30 }, (_, k) => hardBlend(k + 1));
  const costs = engine.ATTEMPTS.map(
    (_, way) => `${way}: ${workOf(blends(KINDS["small"]!, 30), way)}; hard: ${workOf(hard, way)}`,
  );
  expect(costs.slice(1)).toMatchInlineSnapshot(`
    [
      "1: 46692 reads, 13768 writes; hard: 99014 reads, 30399 writes",
      "2: 45810 reads, 13470 writes; hard: 98310 reads, 30657 writes",
      "3: 46692 reads, 13768 writes; hard: 99014 reads, 30399 writes",
      "4: 46754 reads, 13671 writes; hard: 104548 reads, 32829 writes",
      "5: 47732 reads, 14005 writes; hard: 103859 reads, 32134 writes",
      "6: 48481 reads, 14248 writes; hard: 104347 reads, 31803 writes",
      "7: 48430 reads, 14209 writes; hard: 114398 reads, 35890 writes",
    ]
  `);
});
