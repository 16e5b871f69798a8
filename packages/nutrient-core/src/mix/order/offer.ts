/**
 * One way of buying an ingredient: a sack, a brick that swells, a bale, or a step of bulk.
 *
 * A bulk load is so many equal steps (half a cubic metre, say), at least `minimumCount` of them if any.
 */
export interface Offer {
  /** As it is asked for in the shop: "50 L". */
  readonly label: string;
  /** Loose litres that one of them gives; for bricks and bales, expanded. */
  readonly litres: number;
  /** Of one, in the grower's money. */
  readonly price?: number;
  /** If any are taken, at least so many. */
  readonly minimumCount?: number;
  /** From so many on, each costs the lower price, the first ones too. */
  readonly priceBreaks?: readonly PriceBreak[];
  /** Brought by a lorry whose charge is paid once, whatever else it brings. */
  readonly delivery?: Delivery;
  /** As it is carried, kilograms. */
  readonly massKilograms?: number;
  /** Loaded by the shop as loose material, not in packs that a car could carry. */
  readonly isBulk: boolean;
}

export interface PriceBreak {
  readonly fromCount: number;
  readonly price: number;
}

export interface Delivery {
  /** Offers with the same name come together. */
  readonly name: string;
  readonly charge: number;
}

/** What is needed of one ingredient and how it can be bought. */
export interface Need {
  readonly name: string;
  /** Loose litres to buy, what is at hand taken off; more than 0. */
  readonly litres: number;
  readonly offers: readonly Offer[];
}

/** What is wanted of an order: spend least (and of those, leave least over), or leave least over (and spend least). */
export type OrderAim = "least-cost" | "least-left-over";

/**
 * Money is counted in hundredths and volume in millionths of a litre, as whole numbers: sums are then exact, and two
 * orders that cost the same are seen to.
 */
const HUNDREDTHS = 100;
export const MICROLITRES = 1e6;

/** A tenth of a millilitre short is not short: it is the rounding of a cubic foot to whole microlitres. */
const SLACK_MICROLITRES = 100;

/** An offer in whole numbers. */
export interface CountedOffer {
  readonly microlitres: number;
  /** At least so many if any, each at so many hundredths of money; the cheapest tier that the count reaches holds. */
  readonly tiers: readonly Tier[];
  /** Hundredths that come with the first one: a delivery that nothing else shares. */
  readonly charge: number;
}

export interface Tier {
  readonly from: number;
  readonly each: number;
}

/** The need in whole microlitres. */
export function needInMicrolitres(litres: number): number {
  return Math.max(1, Math.ceil(litres * MICROLITRES) - SLACK_MICROLITRES);
}

/** An offer in whole numbers; without a price each counts one, so that the fewest packs are wanted. */
export function counted(offer: Offer, ownCharge: number): CountedOffer {
  const least = Math.max(1, offer.minimumCount ?? 1);
  const hundredths = (money: number): number => Math.round(money * HUNDREDTHS);
  const tiers: Tier[] = [{ from: least, each: offer.price === undefined ? 1 : hundredths(offer.price) }];
  for (const { fromCount, price } of offer.priceBreaks ?? []) {
    tiers.push({ from: Math.max(least, fromCount), each: hundredths(price) });
  }
  return { microlitres: Math.round(offer.litres * MICROLITRES), tiers, charge: hundredths(ownCharge) };
}

/** The price of `count` (more than 0) in hundredths, its own charge included; infinite below the least count. */
export function costOf({ tiers, charge }: CountedOffer, count: number): number {
  let each = Number.POSITIVE_INFINITY;
  for (const tier of tiers) if (count >= tier.from && tier.each < each) each = tier.each;
  return each * count + charge;
}

/** The fewest that cover this much alone. */
export function countToCover({ microlitres, tiers }: CountedOffer, need: number): number {
  return Math.max(tiers[0]!.from, Math.ceil(need / microlitres));
}

export function greatestCommonDivisor(numbers: readonly number[]): number {
  return numbers.reduce((a, b) => {
    let [x, y] = [a, b];
    while (y > 0) [x, y] = [y, x % y];
    return x;
  }, 0);
}
