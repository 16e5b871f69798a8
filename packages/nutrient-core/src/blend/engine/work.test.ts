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
      "small: 46050 reads, 13478 writes",
      "large: 322835 reads, 104182 writes",
      "near-alike: 87223 reads, 25422 writes",
      "tied: 106374 reads, 32901 writes",
      "equal columns: 167309 reads, 47747 writes",
      "scaled columns: 173665 reads, 50526 writes",
      "zero targets: 41828 reads, 10664 writes",
      "tied prices: 92300 reads, 27332 writes",
      "infeasible ceilings: 26548 reads, 10698 writes",
      "one product: 70835 reads, 21388 writes",
      "exactly reachable: 72603 reads, 21533 writes",
      "fixed amounts: 49114 reads, 12637 writes",
      "empty columns and rows: 72731 reads, 19371 writes",
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
      "112: 43798 reads, 16867 writes",
      "308: 45349 reads, 18525 writes",
      "1306: 174016 reads, 69111 writes",
      "1472: 162867 reads, 49863 writes",
      "1744: 63148 reads, 23526 writes",
      "2552: 111832 reads, 52789 writes",
      "2990: 2487 reads, 928 writes",
      "3546: 289028 reads, 100807 writes",
      "3550: 1230 reads, 441 writes",
      "3588: 18651 reads, 6020 writes",
      "4488: 42090 reads, 21700 writes",
      "6176: 32449 reads, 14520 writes",
      "6759: 26282 reads, 9673 writes",
      "7404: 108719 reads, 44135 writes",
      "8826: 86302 reads, 31191 writes",
      "9184: 20229 reads, 8237 writes",
      "9328: 30729 reads, 10455 writes",
      "13668: 122651 reads, 42762 writes",
      "13746: 52547 reads, 19189 writes",
      "hard 41: 16591 reads, 5439 writes",
      "hard 161: 890 reads, 308 writes",
      "hard 215: 5090 reads, 1495 writes",
      "hard 401: 10016 reads, 2965 writes",
      "hard 545: 11961 reads, 3963 writes",
      "hard 1587: 2417 reads, 961 writes",
      "hard 2039: 9087 reads, 3052 writes",
      "hard 2067: 1526 reads, 524 writes",
      "hard 2529: 16660 reads, 5492 writes",
      "hard 2723: 8928 reads, 2959 writes",
      "hard 5521: 15400 reads, 4839 writes",
      "hard 5725: 8982 reads, 2789 writes",
      "hard 7537: 10372 reads, 3107 writes",
      "hard 8460: 2201 reads, 755 writes",
      "hard 8471: 7366 reads, 2283 writes",
      "hard 8521: 11508 reads, 3651 writes",
      "hard 14621: 22305 reads, 7594 writes",
      "hard 14633: 7336 reads, 2672 writes",
      "hard 15905: 10031 reads, 3361 writes",
      "hard 1259: 217720 reads, 73876 writes",
      "hard 3223: 25187 reads, 8041 writes",
      "hard 4617: 19008 reads, 6062 writes",
      "hard 6933: 27640 reads, 8634 writes",
      "hard 10967: 8177 reads, 2386 writes",
      "hard 14963: 31189 reads, 9821 writes",
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
      "1: 46954 reads, 13776 writes; hard: 99434 reads, 30377 writes",
      "2: 46050 reads, 13478 writes; hard: 98561 reads, 30635 writes",
      "3: 46954 reads, 13776 writes; hard: 99434 reads, 30377 writes",
      "4: 46999 reads, 13679 writes; hard: 104779 reads, 32807 writes",
      "5: 47982 reads, 14013 writes; hard: 104260 reads, 32112 writes",
      "6: 48753 reads, 14256 writes; hard: 104917 reads, 31781 writes",
      "7: 48702 reads, 14217 writes; hard: 114928 reads, 35868 writes",
      "8: 45122 reads, 13234 writes; hard: 105341 reads, 32996 writes",
      "9: 48782 reads, 14311 writes; hard: 107449 reads, 32579 writes",
    ]
  `);
});
