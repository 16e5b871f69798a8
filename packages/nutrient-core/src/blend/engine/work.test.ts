import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { type BlendProblem, DEFAULT_AIM } from "./problem.ts";
import { EVERYDAY_SEEDS, everydayBlend, HARD_SEEDS, hardBlend } from "./testing/hard-blends.ts";
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
      "small: 36259 reads, 13300 writes",
      "large: 261685 reads, 105238 writes",
      "near-alike: 69874 reads, 25206 writes",
      "tied: 81850 reads, 32563 writes",
      "equal columns: 132518 reads, 47520 writes",
      "scaled columns: 137549 reads, 50269 writes",
      "zero targets: 36343 reads, 10488 writes",
      "tied prices: 72966 reads, 27024 writes",
      "infeasible ceilings: 22004 reads, 10607 writes",
      "one product: 54856 reads, 21122 writes",
      "exactly reachable: 58257 reads, 21310 writes",
      "fixed amounts: 43616 reads, 12550 writes",
      "empty columns and rows: 59610 reads, 19261 writes",
    ]
  `);
});

test("what the blends cost that need the safeguards", () => {
  const costs = [
    ...EVERYDAY_SEEDS.map((seed) => `${seed}: ${workOf([everydayBlend(seed)], 0)}`),
    ...HARD_SEEDS.map((seed) => `hard ${seed}: ${workOf([hardBlend(seed)], 0)}`),
  ];
  expect(costs).toMatchInlineSnapshot(`
    [
      "64: 23796 reads, 12604 writes",
      "112: 34876 reads, 16803 writes",
      "308: 40602 reads, 18497 writes",
      "1306: 151643 reads, 72703 writes",
      "1472: 129718 reads, 49730 writes",
      "1744: 51080 reads, 23458 writes",
      "2552: 94091 reads, 52723 writes",
      "2990: 2101 reads, 921 writes",
      "3546: 236016 reads, 100682 writes",
      "3550: 1026 reads, 436 writes",
      "3588: 15411 reads, 5988 writes",
      "4488: 35656 reads, 21670 writes",
      "6176: 25001 reads, 14492 writes",
      "6759: 20517 reads, 9625 writes",
      "7404: 89303 reads, 44055 writes",
      "8826: 70298 reads, 31111 writes",
      "9184: 15554 reads, 8205 writes",
      "9328: 24431 reads, 10417 writes",
      "13668: 96762 reads, 42502 writes",
      "13746: 43344 reads, 19148 writes",
      "hard 41: 12634 reads, 5392 writes",
      "hard 161: 684 reads, 304 writes",
      "hard 215: 3822 reads, 1478 writes",
      "hard 401: 7453 reads, 2932 writes",
      "hard 545: 9605 reads, 3932 writes",
      "hard 1587: 1941 reads, 955 writes",
      "hard 2039: 6681 reads, 3021 writes",
      "hard 2067: 1260 reads, 518 writes",
      "hard 2529: 12960 reads, 5445 writes",
      "hard 2723: 6828 reads, 2933 writes",
      "hard 5521: 11534 reads, 4796 writes",
      "hard 5725: 7036 reads, 2765 writes",
      "hard 7537: 8162 reads, 3081 writes",
      "hard 8460: 1628 reads, 744 writes",
      "hard 8471: 5881 reads, 2265 writes",
      "hard 8521: 8736 reads, 3619 writes",
      "hard 14621: 16867 reads, 7537 writes",
      "hard 14633: 5621 reads, 2638 writes",
      "hard 15905: 7394 reads, 3316 writes",
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
      "1: 36797 reads, 13594 writes; hard: 77324 reads, 30111 writes",
      "2: 36259 reads, 13300 writes; hard: 76845 reads, 30377 writes",
      "3: 36797 reads, 13594 writes; hard: 77324 reads, 30111 writes",
      "4: 37615 reads, 13499 writes; hard: 82205 reads, 32529 writes",
      "5: 37747 reads, 13829 writes; hard: 81044 reads, 31836 writes",
      "6: 38186 reads, 14068 writes; hard: 81377 reads, 31499 writes",
      "7: 38733 reads, 14031 writes; hard: 89427 reads, 35552 writes",
    ]
  `);
});
