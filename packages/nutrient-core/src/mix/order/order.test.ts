import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readPlainQuantity } from "../../quantity/quantity.ts";
import { usable } from "../testing/read.ts";
import type { Need, Offer, OrderAim } from "./offer.ts";
import { readBulk, readPack } from "./read-offer.ts";
import { solveOrder } from "./solve-order.ts";

const pack = (text: string): Offer => usable(readPack(text, readPlainQuantity)).value;
const bulk = (text: string, of = "compost"): Offer => usable(readBulk(text, of, readPlainQuantity)).value;
const solve = (needs: readonly Need[], aim: OrderAim = "least-cost") => usable(solveOrder(needs, aim)).value;
const one = (litres: number, offers: readonly Offer[], aim: OrderAim = "least-cost") =>
  solve([{ name: "compost", litres, offers }], aim);
const bought = (order: ReturnType<typeof solve>): string[] =>
  order.ingredients.flatMap(({ lines }) => lines.map(({ offer, count }) => `${count} x ${offer.label}`));

describe("orders worked by hand", () => {
  test("the best value first is not the best order", () => {
    // Two 50 L, the cheaper litre, would be 12.00, and three 20 L 10.50.
    const order = one(60, [pack("50 L 6"), pack("20 L 3.50")]);
    expect(bought(order)).toEqual(["1 x 50 L", "1 x 20 L"]);
    expect(order.cost).toBe(9.5);
    expect(bought(one(60, [pack("50 L 6"), pack("20 L 3")]))).toEqual(["3 x 20 L"]);
  });

  test("of orders that cost the same, the one with least left over, then the fewest packs; the others are choices", () => {
    const order = one(100, [pack("50 L 6"), pack("100 L 12"), pack("20 L 2.40")]);
    expect(bought(order)).toEqual(["1 x 100 L"]);
    expect(
      order.ingredients[0]!.choices.map((lines) => lines.map(({ offer, count }) => `${count} x ${offer.label}`)),
    ).toEqual([["2 x 50 L"], ["5 x 20 L"]]);
  });

  test("three bags of 2 cu ft are exactly 6 cu ft, whatever the binary rounding", () => {
    expect(bought(one(6 * 28.316846592, [pack("2 cu ft 10")]))).toEqual(["3 x 2 cu ft"]);
    expect(bought(one(0.1 + 0.2, [pack("0.1 L 1")]))).toEqual(["3 x 0.1 L"]);
  });

  test("a brick counts by the litres its label promises", () => {
    const order = one(30, [pack("650 g makes 9 L 3.20"), pack("5 kg makes 65 L 14")]);
    expect(bought(order)).toEqual(["4 x 650 g (makes 9 L)"]);
    expect(order.ingredients[0]!.leftoverLitres).toBe(6);
  });

  test("bulk: least, step, delivery and a lower price for the whole load", () => {
    const load = bulk("45 per m3, least 2 m3, step 0.5 m3, delivery 60, from 5 m3 40");
    expect(load).toMatchObject({
      litres: 500,
      price: 22.5,
      minimumCount: 4,
      priceBreaks: [{ fromCount: 10, price: 20 }],
    });
    // 1 m3 wanted, 2 m3 is the least: 90 + 60. In sacks it would be 200.
    expect(one(1000, [load, pack("50 L 10")]).cost).toBe(150);
    // 4.6 m3: nine steps at 22.50 would be 202.50 (and only cover 4.5); ten at 20 are 200.
    expect(one(4600, [load]).cost).toBe(260);
    expect(one(4500, [load]).cost).toBe(260);
  });

  test("the least that a lorry brings holds for every aim", () => {
    const load = bulk("45 per m3, least 2 m3, step 0.5 m3");
    for (const aim of ["least-cost", "least-left-over"] as const) {
      expect(one(1000, [load], aim).ingredients[0]).toMatchObject({
        boughtLitres: 2000,
        leftoverLitres: 1000,
        cost: 90,
      });
    }
  });

  test("one lorry for two things is paid once", () => {
    const compost = bulk("30 per m3, delivery 80 with yard");
    const bark = bulk("40 per m3, delivery 80 with yard", "bark");
    const needs: Need[] = [
      { name: "compost", litres: 1000, offers: [compost, pack("50 L 5")] },
      { name: "bark", litres: 1000, offers: [bark, pack("50 L 5")] },
    ];
    // Together 30 + 40 + 80 = 150; in sacks 200; one by lorry and one in sacks 210 or 220.
    expect(solve(needs)).toMatchObject({ cost: 150, deliveries: [{ name: "yard", charge: 80 }] });
  });

  test("without prices: the least left over in the fewest packs, and no cost", () => {
    const order = one(100, [pack("40 L"), pack("60 L"), pack("20 L")]);
    expect(bought(order)).toEqual(["1 x 40 L", "1 x 60 L"]);
    expect(order.cost).toBeUndefined();
  });

  test("least left over, and of those the cheapest", () => {
    const order = one(100, [pack("70 L 5"), pack("50 L 9"), pack("25 L 4")], "least-left-over");
    expect(bought(order)).toEqual(["4 x 25 L"]);
    expect(order.ingredients[0]!.leftoverLitres).toBe(0);
  });
});

/** Every combination of counts, up to what one offer alone needs: no cleverness at all. */
function bruteForce(need: number, offers: readonly Offer[], aim: OrderAim): { cost: number; left: number } {
  let best = { cost: Number.POSITIVE_INFINITY, left: Number.POSITIVE_INFINITY };
  const go = (index: number, litres: number, cost: number): void => {
    if (index === offers.length) {
      const left = litres - need;
      if (left < -1e-4) return;
      const better =
        aim === "least-cost"
          ? cost < best.cost - 1e-9 || (cost < best.cost + 1e-9 && left < best.left - 1e-6)
          : left < best.left - 1e-6 || (left < best.left + 1e-6 && cost < best.cost - 1e-9);
      if (better) best = { cost, left };
      return;
    }
    const offer = offers[index]!;
    const most = Math.max(
      Math.ceil(need / offer.litres),
      offer.minimumCount ?? 0,
      ...(offer.priceBreaks ?? []).map((b) => b.fromCount),
    );
    for (let count = 0; count <= most; count += 1) {
      if (count > 0 && count < (offer.minimumCount ?? 1)) continue;
      const reached = (offer.priceBreaks ?? []).filter(({ fromCount }) => count >= fromCount).map(({ price }) => price);
      const each = Math.min(offer.price!, ...reached);
      go(
        index + 1,
        litres + count * offer.litres,
        cost + count * each + (count > 0 ? (offer.delivery?.charge ?? 0) : 0),
      );
    }
  };
  go(0, 0, 0);
  return best;
}

const money = (min: number, max: number) => fc.integer({ min, max }).map((hundredths) => hundredths / 100);
const sack = fc.record({
  label: fc.string(),
  litres: fc.constantFrom(8, 10, 20, 25, 40, 50, 28.316846592, 56.633693184, 8.80976754172),
  price: money(50, 2500),
  isBulk: fc.constant(false),
});
const load = fc
  .record({
    litres: fc.constantFrom(100, 250, 764.554857984 / 4),
    price: money(200, 4000),
    minimumCount: fc.integer({ min: 1, max: 4 }),
    charge: money(0, 6000),
    fromCount: fc.integer({ min: 2, max: 6 }),
  })
  .map(
    ({ litres, price, minimumCount, charge, fromCount }): Offer => ({
      label: "bulk",
      litres,
      price,
      minimumCount,
      priceBreaks: [{ fromCount, price: Math.round(price * 80) / 100 }],
      delivery: { name: "lorry", charge },
      isBulk: true,
    }),
  );
const offers = fc
  .tuple(
    fc.uniqueArray(sack, { minLength: 1, maxLength: 3, selector: ({ litres }) => litres }),
    fc.option(load, { nil: undefined }),
  )
  .map(([sacks, bulkLoad]): Offer[] => [...sacks, ...(bulkLoad ? [bulkLoad] : [])]);

describe("properties", () => {
  test.each(["least-cost", "least-left-over"] as const)("%s is what trying everything finds", (aim) => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 250 }), offers, (need, list) => {
        const order = one(need, list, aim);
        const best = bruteForce(need, list, aim);
        const found = order.ingredients[0]!;
        // Sizes without a common measure are counted in hundredths of a litre: half of one for each pack of the order.
        const packs = found.lines.reduce((sum, { count }) => sum + count, 0);
        const mixed = list.some(({ litres }) => !Number.isInteger(litres)) && list.length > 1;
        if (aim === "least-cost") expect(Math.abs(order.cost! - best.cost)).toBeLessThanOrEqual(1e-9);
        expect(found.leftoverLitres - best.left).toBeLessThanOrEqual(
          aim === "least-left-over" && mixed ? 0.01 * (packs + 30) : 2e-4,
        );
      }),
      { numRuns: 150 },
    );
  });

  test("the order of the offers changes neither cost nor leftover", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3000 }), offers, (need, list) => {
        const [a, b] = [one(need, list), one(need, [...list].reverse())];
        expect(a.cost).toBe(b.cost);
        expect(a.ingredients[0]!.leftoverLitres).toBe(b.ingredients[0]!.leftoverLitres);
      }),
      { numRuns: 100 },
    );
  });

  test("a dearer shop never makes the order cheaper, another offer never dearer", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1500 }), offers, sack, (need, list, more) => {
        const cost = one(need, list).cost!;
        expect(one(need, [...list, more]).cost!).toBeLessThanOrEqual(cost);
        const dearer = list.map((offer) => ({
          ...offer,
          price: offer.price! + 0.5,
          priceBreaks: offer.priceBreaks?.map((b) => ({ ...b, price: b.price + 0.5 })) ?? [],
        }));
        expect(one(need, dearer).cost!).toBeGreaterThan(cost);
      }),
      { numRuns: 100 },
    );
  });

  test("every choice covers the need for the same money", () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 800 }), fc.integer({ min: 5, max: 30 }), (need, perLitre) => {
        const list = [10, 20, 25, 50].map(
          (litres): Offer => ({ label: `${litres} L`, litres, price: (litres * perLitre) / 100, isBulk: false }),
        );
        const order = one(need, list);
        for (const lines of order.ingredients[0]!.choices) {
          expect(Math.round(100 * lines.reduce((sum, { offer, count }) => sum + count * offer.price!, 0))).toBe(
            Math.round(100 * order.cost!),
          );
          expect(lines.reduce((sum, { offer, count }) => sum + count * offer.litres, 0)).toBeGreaterThanOrEqual(need);
        }
      }),
    );
  });
});

describe("orders that cannot be searched", () => {
  test("prices finer than such an order needs", () => {
    const order = solveOrder([{ name: "compost", litres: 1e6, offers: [pack("50 L 123.45")] }], "least-cost");
    expect(order.ok ? [] : order.problems.map(({ code }) => code)).toEqual([]);
    const huge = solveOrder(
      [{ name: "compost", litres: 1e6, offers: [pack("50 L 123.45"), pack("20 L 61.23")] }],
      "least-cost",
    );
    expect(huge.ok ? [] : huge.problems.map(({ code }) => code)).toEqual(["prices-too-fine"]);
  });
  test("more than anybody buys in packs", () => {
    for (const aim of ["least-cost", "least-left-over"] as const) {
      const order = solveOrder([{ name: "compost", litres: 1e9, offers: [pack("50 L 10")] }], aim);
      expect(order.ok ? [] : order.problems.map(({ code }) => code)).toEqual(["order-too-large"]);
    }
  });
  test("nine lorries that each bring several things", () => {
    const needs = Array.from({ length: 9 }, (_, i) => bulk(`30 per m3, delivery 80 with yard ${i}`)).flatMap(
      (offer, i): Need[] => [0, 1].map((j) => ({ name: `${i}-${j}`, litres: 100, offers: [offer] })),
    );
    const order = solveOrder(needs, "least-cost");
    expect(order.ok ? [] : order.problems.map(({ code }) => code)).toEqual(["deliveries-too-many"]);
  });
});
