import type { BlendAim, BlendProblem, Direction, LinearLimit, NutrientTarget } from "../problem.ts";
import { COMMON_LEVELS, MATERIALS, NUTRIENTS, ppmPerGram } from "./materials.ts";

/** A small seeded generator (mulberry32, public domain): the same seed gives the same blends everywhere. */
export function seeded(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

type Random = () => number;

const integer = (random: Random, from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
const between = (random: Random, from: number, to: number): number => from + random() * (to - from);
function pick<T>(random: Random, list: readonly T[]): T {
  return list[Math.floor(random() * list.length)]!;
}

/** `count` different materials as columns against the first `nutrients` rows. */
export function randomSupply(random: Random, count: number, nutrients: number): number[][] {
  const pool = [...MATERIALS];
  const chosen = Array.from({ length: count }, () => pool.splice(Math.floor(random() * pool.length), 1)[0]!);
  return NUTRIENTS.slice(0, nutrients).map((row) => chosen.map(({ percent }) => ppmPerGram(percent, row)));
}

/** A wanted amount for row i: a common level, more or less. Differences are wanted at 0. */
export function randomWanted(random: Random, i: number): number {
  return i < COMMON_LEVELS.length
    ? Math.round(COMMON_LEVELS[i]! * between(random, 0.4, 1.6) * 100) / 100
    : i === 17
      ? 0
      : 200;
}

function randomTarget(random: Random, i: number, isBanded: boolean): NutrientTarget {
  const wanted = randomWanted(random, i);
  const direction: Direction = random() < 0.75 ? "about" : pick(random, ["at-least", "at-most"]);
  return {
    wanted,
    direction,
    ...(random() < 0.3 ? { weight: between(random, 0.2, 5) } : {}),
    ...(isBanded ? { bandBelow: wanted * between(random, 0, 0.15), bandAbove: wanted * between(random, 0, 0.15) } : {}),
    ...(wanted === 0 ? { scale: 100 } : {}),
  };
}

function randomAim(random: Random): BlendAim {
  return { miss: pick(random, ["squares", "squares", "largest"]), next: pick(random, ["nearest", "cost"]) };
}

/** A blend as growers ask for it: any aim, some with bands, ceilings, stock limits, source water or a batch. */
export function randomBlend(random: Random, most: { products: number; nutrients: number }): BlendProblem {
  const products = integer(random, 1, most.products);
  const nutrients = integer(random, 1, most.nutrients);
  const supply = randomSupply(random, products, nutrients);
  const isBanded = random() < 0.4;
  const perProduct = (value: () => number): number[] => Array.from({ length: products }, value);
  return {
    supply,
    targets: supply.map((_, i) => randomTarget(random, i, isBanded)),
    prices: perProduct(() => Math.round(between(random, 0.1, 8) * 100) / 100),
    aim: randomAim(random),
    ...(random() < 0.3
      ? {
          offsets: supply.map((_, i) =>
            random() < 0.5 ? 0 : Math.abs(randomWanted(random, i)) * between(random, 0, 1.3),
          ),
        }
      : {}),
    ...(random() < 0.35 ? { ceilings: randomCeilings(random, supply) } : {}),
    ...(random() < 0.3
      ? { upper: perProduct(() => (random() < 0.5 ? Number.POSITIVE_INFINITY : between(random, 0.05, 2))) }
      : {}),
    ...(random() < 0.15 ? { lower: perProduct(() => (random() < 0.8 ? 0 : between(random, 0, 0.05))) } : {}),
    ...(random() < 0.1 ? { total: between(random, 0.2, 4) } : {}),
  };
}

/** A ceiling on all salts together, and a share (row 0 against the last row), now and then too tight to keep. */
function randomCeilings(random: Random, supply: readonly (readonly number[])[]): LinearLimit[] {
  const salts = { coefficients: supply[0]!.map(() => between(random, 0.5, 1.5)), limit: between(random, -0.05, 3) };
  const share = supply[0]!.map((n, j) => supply[supply.length - 1]![j]! - between(random, 0.1, 0.9) * n);
  return random() < 0.5 ? [salts] : [salts, { coefficients: share, limit: between(random, -2, 20) }];
}

/** Kinds of degenerate blends, each named in the tests' output. */
export const DEGENERATE_KINDS = [
  "equal columns",
  "scaled columns",
  "zero targets",
  "tied prices",
  "infeasible ceilings",
  "one product",
  "thirty products",
  "exactly reachable",
  "fixed amounts",
  "empty columns and rows",
] as const;

export function degenerateBlend(random: Random, kind: (typeof DEGENERATE_KINDS)[number]): BlendProblem {
  const blend = randomBlend(random, { products: 10, nutrients: 10 });
  const { supply, targets } = blend;
  const products = supply[0]!.length;
  const doubled = (factor: number): BlendProblem => ({
    supply: supply.map((row) => [...row, ...row.map((s) => s * factor)]),
    targets,
    prices: [...blend.prices!, ...blend.prices!.map((price) => price * factor)],
    ...(blend.aim ? { aim: blend.aim } : {}),
  });
  switch (kind) {
    case "equal columns":
      return doubled(1);
    case "scaled columns":
      return doubled(3);
    case "zero targets":
      return { ...blend, targets: targets.map((target) => ({ ...target, wanted: 0, bandBelow: 0, bandAbove: 0 })) };
    case "tied prices":
      return { ...blend, prices: blend.prices!.map(() => 1), aim: { miss: blend.aim!.miss, next: "cost" } };
    case "infeasible ceilings":
      return {
        ...blend,
        lower: blend.prices!.map(() => 0.05),
        upper: blend.prices!.map(() => 1),
        ceilings: [{ coefficients: blend.prices!.map(() => 1), limit: 0.05 * products * between(random, 0.5, 1.1) }],
      };
    case "one product":
      return randomBlend(random, { products: 1, nutrients: 20 });
    case "thirty products": {
      const wide = randomSupply(random, 30, 20);
      return {
        supply: wide,
        targets: wide.map((_, i) => randomTarget(random, i, false)),
        prices: wide[0]!.map(() => between(random, 0.1, 8)),
        aim: randomAim(random),
      };
    }
    case "exactly reachable": {
      // Targets made from a blend: the misses are 0 in truth, and rounding must not turn them into something.
      const masses = blend.prices!.map(() => (random() < 0.4 ? 0 : between(random, 0.05, 1)));
      const wanted = supply.map((row) => row.reduce((sum, s, j) => sum + s * masses[j]!, 0));
      return { supply, targets: wanted.map((w) => ({ wanted: w })), prices: blend.prices!, aim: randomAim(random) };
    }
    case "fixed amounts": {
      const fixed = blend.prices!.map(() => (random() < 0.5 ? between(random, 0, 0.5) : 0));
      return { supply, targets, prices: blend.prices!, aim: blend.aim!, lower: fixed, upper: fixed };
    }
    case "empty columns and rows":
      return {
        ...blend,
        supply: supply.map((row, i) => row.map((s, j) => (i % 3 === 1 || j % 3 === 1 ? 0 : s))),
      };
  }
}
/** A blend whose products are near-alike: some are another one but for a few parts in a million, or a thousand times it. */
export function nearAlikeBlend(random: Random): BlendProblem {
  const blend = randomBlend(random, { products: 10, nutrients: 10 });
  const products = blend.supply[0]!.length;
  const twin = Array.from({ length: products }, (_, j) => (j > 0 && random() < 0.5 ? integer(random, 0, j - 1) : j));
  const off = 10 ** -between(random, 4, 9);
  const size = twin.map(() => pick(random, [1, 1, 0.001, 1000]));
  return {
    ...blend,
    supply: blend.supply.map((row) =>
      row.map((_, j) => (twin[j] === j ? row[j]! : row[twin[j]!]! * size[j]! * (1 + off * (random() - 0.5)))),
    ),
  };
}

/** A blend of small whole numbers: many amounts, limits and prices end in ties. */
export function tiedBlend(random: Random): BlendProblem {
  const products = integer(random, 2, 8);
  const rows = integer(random, 1, 6);
  const list = (count: number, most: number): number[] => Array.from({ length: count }, () => integer(random, 0, most));
  return {
    supply: Array.from({ length: rows }, () => list(products, 2)),
    targets: list(rows, 4).map((wanted) => ({
      wanted,
      direction: pick(random, ["about", "about", "at-least", "at-most"]),
      bandBelow: integer(random, 0, 1),
      bandAbove: integer(random, 0, 1),
      scale: 1,
    })),
    prices: list(products, 2),
    aim: randomAim(random),
    upper: list(products, 3).map((most) => (most === 0 ? Number.POSITIVE_INFINITY : most)),
    ...(random() < 0.5
      ? { ceilings: [0, 1].map(() => ({ coefficients: list(products, 2), limit: integer(random, 0, 6) })) }
      : {}),
    ...(random() < 0.3 ? { total: integer(random, 0, 5) } : {}),
    ...(random() < 0.3 ? { offsets: list(rows, 2) } : {}),
  };
}
