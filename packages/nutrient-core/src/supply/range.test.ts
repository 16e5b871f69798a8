import fc from "fast-check";
import { expect, test } from "vitest";
import type { Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
import type { Extent } from "./basis.ts";
import { deliveredRanges, type MeasuredAmount, rangeCautions } from "./range.ts";
import { METRIC_SPOONS } from "./spoons.ts";
import { deliver } from "./supply.ts";
import { measuresFor } from "./weigh-measures.ts";

const product = (text: string, density?: number): Product => {
  const read = readProduct(text, density === undefined ? {} : { densityKilogramsPerLitre: density });
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.value;
};
const CAN: Extent = { basis: "litre", amount: 10 };
const US = { labelRule: "us" } as const;
/** A handful of multiplications. */
const FLOATING = 1e-12;
const near = (value: number, expected: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(FLOATING * Math.abs(expected));

test("by hand: 10 g of 20-10-20 on a 1 g scale in 10 L, filled to 2 %", () => {
  const measure = { kind: "scale", stepGrams: 1 } as const;
  const { N } = deliveredRanges([{ product: product("20-10-20"), massGrams: 10, measure }], CAN, US);
  // 9.5 g of 19.27 % in 10.2 L, and 10.5 g of 20 % in 9.8 L (allowance 0.73 points at 20 % N).
  near(N!.low, (9.5 * 192.7) / 10.2);
  near(N!.high, (10.5 * 200) / 9.8);
  // Alone: half a gram of ten is 10 ppm, the label 7.3, the can 4.08.
  expect(N!.mainCause).toBe("scale");
  expect(N!.mainProduct).toBe("20-10-20");
  near(N!.mainEffect!, 10);
});

test("by hand: a spoon is a tenth more or less, and then matters most", () => {
  const feed = product("20-10-20", 1);
  const measures = measuresFor([feed], { spoons: METRIC_SPOONS, scaleStepGrams: 1 });
  if (!measures.ok) throw new Error("no measure");
  const amounts = [{ product: feed, massGrams: 10, measure: measures.value[0]! }];
  const { K, N } = deliveredRanges(amounts, { basis: "squareMetre", amount: 1 }, US);
  near(N!.low, 9 * 0.1927);
  near(N!.high, 11 * 0.2);
  expect(N!.mainCause).toBe("spoons");
  expect(K!.mainCause).toBe("spoons");
});

test("the published range of a density widens what a spoon holds", () => {
  const feed: Product = { ...product("20-10-20", 1), densityRange: [0.8, 1.3] };
  const measure = { kind: "spoons", stepGrams: 0.625, stepMillilitres: 0.625 } as const;
  const { N } = deliveredRanges([{ product: feed, massGrams: 10, measure }], { basis: "squareMetre", amount: 1 }, US);
  near(N!.low, 9 * 0.8 * 0.1927);
  near(N!.high, 11 * 1.3 * 0.2);
  expect(N!.mainCause).toBe("density");
});

test("a pure salt from nowhere but the can's filling", () => {
  const { K } = deliveredRanges([{ product: product("KNO3"), massGrams: 10 }], CAN, US);
  const exact = deliver([{ product: product("KNO3"), massGrams: 10 }], CAN).K!;
  near(K!.low, exact / 1.02);
  near(K!.high, exact / 0.98);
  expect(K!.mainCause).toBe("filling");
});

test("what is there already is taken as known, and a bed has no filling", () => {
  const amounts = [{ product: product("KNO3"), massGrams: 10 }];
  const bed: Extent = { basis: "squareMetre", amount: 2 };
  const { K } = deliveredRanges(amounts, bed, US, { K: 3 });
  expect(K!.low).toBe(K!.high);
  near(K!.low, 3 + deliver(amounts, bed).K!);
  expect(K!.mainCause).toBeUndefined();
});

test("a heap of manure has no range, and a caution says why", () => {
  const amounts = ["cattle-manure-fresh", "urea"].map((id) => ({ product: product(id), massGrams: 100 }));
  const bed: Extent = { basis: "squareMetre", amount: 1 };
  const ranges = deliveredRanges(amounts, bed, US);
  expect(ranges.N).toBeUndefined();
  expect(ranges["urea-N"]).toBeDefined();
  expect(rangeCautions(amounts.map((one) => one.product)).map(({ code }) => code)).toEqual(["analysis-varies"]);
  expect(rangeCautions([product("urea")])).toEqual([]);
});

test("property: the range holds the exact delivery, scales with it, and no single cause moves it further", () => {
  const amounts: fc.Arbitrary<MeasuredAmount[]> = fc.array(
    fc.record({
      product: fc.constantFrom(
        ...["20-10-20", "calcium-nitrate", "magnesium-sulfate", "13-0-44"].map((id) => product(id)),
      ),
      massGrams: fc.double({ min: 1, max: 50, noNaN: true }),
      measure: fc.constantFrom({ kind: "scale", stepGrams: 1 } as const, { kind: "scale", stepGrams: 0.1 } as const),
    }),
    { minLength: 1, maxLength: 4 },
  );
  fc.assert(
    fc.property(amounts, fc.constantFrom("us" as const, "eu" as const), (list, labelRule) => {
      const exact = deliver(list, CAN);
      const ranges = deliveredRanges(list, CAN, { labelRule });
      for (const [nutrient, { low, high, mainEffect }] of Object.entries(ranges)) {
        const rate = exact[nutrient as keyof typeof exact]!;
        expect(low).toBeLessThanOrEqual(rate * (1 + FLOATING));
        expect(high).toBeGreaterThanOrEqual(rate * (1 - FLOATING));
        expect(mainEffect!).toBeLessThanOrEqual(Math.max(rate - low, high - rate) * (1 + FLOATING));
      }
    }),
  );
});
