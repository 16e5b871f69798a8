import type { Need, Offer } from "../order/offer.ts";

/** A small seeded generator of the linear congruential kind, so that every run sees the same orders. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Litres, US cubic feet, dry quarts and quarters of a cubic yard, as they are sold. */
const SACKS = [8, 9, 10, 20, 25, 40, 50, 60, 70, 75, 80, 100, 28.316846592, 42.475269888, 56.633693184, 8.80976754172];
const STEPS = [100, 250, 500, 191.138714496, 764.554857984];

/** An order as a grower might face it: one to four ingredients, sacks of several sizes, loads by lorries that may be shared. */
export function randomNeeds(random: () => number): Need[] {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const cents = (value: number): number => Math.max(1, Math.round(value * 100)) / 100;
  // One in five orders has nearly equal prices for each litre: the hard kind.
  const spread = random() < 0.2 ? 0.002 : 0.8;
  return Array.from({ length: 1 + Math.floor(random() * 4) }, (_, index): Need => {
    const litrePrice = 0.08 + random() * 0.2;
    const sacks = Array.from({ length: 1 + Math.floor(random() * 5) }, (): Offer => {
      const litres = pick(SACKS);
      return {
        label: `${litres} L`,
        litres,
        price: cents(litres * litrePrice * (1 + spread * (random() - 0.5))),
        isBulk: false,
      };
    });
    const name = `ingredient ${index}`;
    const offers = random() < 0.4 ? [...sacks, bulkOffer(random, pick, cents, litrePrice, name)] : sacks;
    return { name, litres: 20 + random() ** 2 * 3000, offers };
  });
}

function bulkOffer(
  random: () => number,
  pick: <T>(list: readonly T[]) => T,
  cents: (value: number) => number,
  litrePrice: number,
  name: string,
): Offer {
  const litres = pick(STEPS);
  const price = cents(litres * litrePrice * (0.3 + 0.4 * random()));
  const minimumCount = 1 + Math.floor(random() * 4);
  const fromCount = minimumCount + 1 + Math.floor(random() * 5);
  const isShared = random() < 0.5;
  return {
    label: "bulk",
    litres,
    price,
    minimumCount,
    ...(random() < 0.5 ? { priceBreaks: [{ fromCount, price: cents(price * 0.8) }] } : {}),
    delivery: isShared ? { name: "yard", charge: 45 } : { name, charge: cents(random() * 80) },
    isBulk: true,
  };
}
