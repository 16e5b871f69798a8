import loader, { type Highs } from "highs";
import { expect, test } from "vitest";
import type { Need } from "../src/mix/order/offer.ts";
import { solveOrder } from "../src/mix/order/solve-order.ts";
import { randomNeeds, seeded } from "../src/mix/testing/random-orders.ts";

// The package's types call its module a CommonJS one; it is not.
const load = loader as unknown as () => Promise<Highs>;

/**
 * Whole orders against HiGHS, an independent solver of mixed-integer programs: the cost must be the same to the cent.
 * The everyday run takes 150 orders; TRUG_FULL=1 takes all 5,000.
 */
const ORDERS = process.env["TRUG_FULL"] ? 5000 : 150;
const SEED = 20_260;

test(`${ORDERS} random orders cost what HiGHS finds (seed ${SEED})`, { timeout: 1_800_000 }, async () => {
  const highs = await load();
  const random = seeded(SEED);
  const differences: string[] = [];
  for (let index = 0; index < ORDERS; index += 1) {
    const needs = randomNeeds(random);
    const order = solveOrder(needs, "least-cost");
    if (!order.ok) throw new Error(order.problems[0]?.message);
    for (const [at, ingredient] of order.value.ingredients.entries()) {
      const bought = ingredient.lines.reduce((sum, { offer, count }) => sum + count * offer.litres, 0);
      expect(bought, `order ${index} covers the need`).toBeGreaterThanOrEqual(needs[at]!.litres - 1e-4);
    }
    const solved = highs.solve(asProgram(needs), { mip_rel_gap: 0, mip_abs_gap: 1e-6, output_flag: false });
    expect(solved.Status, `order ${index}`).toBe("Optimal");
    const gap = order.value.cost! - solved.ObjectiveValue;
    // Prices are whole hundredths: half of one is the same to the cent.
    if (Math.abs(gap) >= 0.005)
      differences.push(`order ${index}: ${order.value.cost} here, ${solved.ObjectiveValue} there`);
  }
  expect(differences).toEqual([]);
});

/** The order as a mixed-integer program in the LP format: a count for each price tier, a switch where a least count or a charge hangs on it. */
function asProgram(needs: readonly Need[]): string {
  const costs: string[] = [];
  const rows: string[] = [];
  const counts: string[] = [];
  const switches = new Set<string>();
  needs.forEach(({ litres, offers }, i) => {
    const cover: string[] = [];
    offers.forEach((offer, j) => {
      const tiers = [{ fromCount: offer.minimumCount ?? 1, price: offer.price! }, ...(offer.priceBreaks ?? [])];
      const most = Math.max(Math.ceil(litres / offer.litres), ...tiers.map(({ fromCount }) => fromCount));
      const plain = !offer.isBulk;
      tiers.forEach(({ fromCount, price }, k) => {
        const x = `x${i}_${j}_${k}`;
        counts.push(x);
        costs.push(`${price} ${x}`);
        cover.push(`${offer.litres} ${x}`);
        if (plain) return;
        const y = `y${i}_${j}_${k}`;
        switches.add(y);
        rows.push(`${x} - ${fromCount} ${y} >= 0`, `${x} - ${most} ${y} <= 0`);
        const lorry = `z${offer.delivery!.name.replace(/\W/g, "")}`;
        if (!switches.has(lorry)) {
          switches.add(lorry);
          costs.push(`${offer.delivery!.charge} ${lorry}`);
        }
        rows.push(`${lorry} - ${y} >= 0`);
      });
      if (!plain) rows.push(`${tiers.map((_, k) => `y${i}_${j}_${k}`).join(" + ")} <= 1`);
    });
    // The tenth of a millilitre that the order allows itself.
    rows.push(`${cover.join(" + ")} >= ${litres - 1e-4}`);
  });
  const bounds = counts.map((x) => `0 <= ${x} <= 100000`);
  return [
    "Minimize",
    ` cost: ${costs.join(" + ")}`,
    "Subject To",
    ...rows.map((row, index) => ` r${index}: ${row}`),
    "Bounds",
    ...bounds.map((bound) => ` ${bound}`),
    "General",
    ` ${counts.join(" ")}`,
    ...(switches.size > 0 ? ["Binary", ` ${[...switches].join(" ")}`] : []),
    "End",
  ].join("\n");
}
