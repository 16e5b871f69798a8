import { expect, test } from "vitest";
import type { BlendProblem } from "./problem.ts";
import { solveBlend } from "./solve.ts";
import { assertUsable } from "./usable.ts";

const GOOD: BlendProblem = { supply: [[1, 2]], targets: [{ wanted: 3 }] };
const one = (target: object): BlendProblem => ({ ...GOOD, targets: [{ wanted: 3, ...target }] });

const bad: [string, BlendProblem][] = [
  ["at least one nutrient and one product", { supply: [], targets: [] }],
  ["at least one nutrient and one product", { supply: [[]], targets: [{ wanted: 3 }] }],
  ["one target per row of supply", { ...GOOD, targets: [] }],
  ["finite supply in every place", { supply: [[1, Number.NaN]], targets: [{ wanted: 3 }] }],
  ["finite supply in every place", { supply: [[1, 2], [1]], targets: [{ wanted: 3 }, { wanted: 3 }] }],
  ["finite wanted amounts", one({ wanted: Number.POSITIVE_INFINITY })],
  ...[-1, Number.NaN, Number.POSITIVE_INFINITY].flatMap((width): [string, BlendProblem][] => [
    ["bands from 0 up", one({ bandBelow: width })],
    ["bands from 0 up", one({ bandAbove: width })],
  ]),
  ...[0, -1, Number.NaN, Number.POSITIVE_INFINITY].flatMap((size): [string, BlendProblem][] => [
    ["weights and scales above 0", one({ weight: size })],
    ["weights and scales above 0", one({ scale: size })],
  ]),
  ["finite offsets, one per row", { ...GOOD, offsets: [] }],
  ["finite offsets, one per row", { ...GOOD, offsets: [Number.NaN] }],
  ["one finite coefficient per product", { ...GOOD, ceilings: [{ coefficients: [1], limit: 1 }] }],
  ["one finite coefficient per product", { ...GOOD, ceilings: [{ coefficients: [1, Number.NaN], limit: 1 }] }],
  ["finite limits", { ...GOOD, ceilings: [{ coefficients: [1, 1], limit: Number.POSITIVE_INFINITY }] }],
  ...(["lower", "upper", "smallestIfUsed", "prices"] as const).map((list): [string, BlendProblem] => [
    "one bound or price per product",
    { ...GOOD, [list]: [1] },
  ]),
  ["0 <= lower <= upper, lower finite", { ...GOOD, lower: [-1, 0] }],
  ["0 <= lower <= upper, lower finite", { ...GOOD, lower: [Number.POSITIVE_INFINITY, 0] }],
  ["0 <= lower <= upper, lower finite", { ...GOOD, lower: [0, 2], upper: [1, 1] }],
  ...[-1, Number.NaN, Number.POSITIVE_INFINITY].flatMap((amount): [string, BlendProblem][] => [
    ["finite prices and smallest amounts from 0 up", { ...GOOD, smallestIfUsed: [0, amount] }],
    ["finite prices and smallest amounts from 0 up", { ...GOOD, prices: [0, amount] }],
  ]),
  ["a finite total from 0 up", { ...GOOD, total: -1 }],
  ["a finite total from 0 up", { ...GOOD, total: Number.POSITIVE_INFINITY }],
  ["prices for the aim of least cost", { ...GOOD, aim: { miss: "squares", next: "cost" } }],
];

for (const [need, problem] of bad) {
  test(`stops without ${need}: ${JSON.stringify(problem, (_, x) => (Number.isFinite(x) || typeof x !== "number" ? x : String(x)))}`, () => {
    expect(() => solveBlend(problem)).toThrow(new RangeError(`blend engine: needs ${need}`));
  });
}

test("lets through what is at the edge", () => {
  const edge: BlendProblem = {
    ...one({ bandBelow: 0, bandAbove: 0, wanted: 0 }),
    offsets: [0],
    lower: [0, 1],
    upper: [0, 1],
    smallestIfUsed: [0, 0],
    prices: [0, 0],
    total: 0,
    ceilings: [{ coefficients: [0, -1], limit: 0 }],
    aim: { miss: "largest", next: "cost" },
  };
  expect(() => assertUsable(edge)).not.toThrow();
});
