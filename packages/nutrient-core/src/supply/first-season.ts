import type { Extent } from "./basis.ts";
import { type Amount, type Delivered, deliver } from "./supply.ts";

/**
 * What of a dressing a crop can use in its first season: all of it, less the nitrogen that stays bound in organic
 * products.
 *
 * The highest published share counts as usable, for this is asked to keep out of excess. A product without a published
 * share counts whole.
 *
 * @param delivered On the extent's basis, of the amounts and of what was there already.
 * @param amounts Products and grams; nitrogen that was there already is taken as usable.
 * @example
 * usableInFirstSeason({ N: 10 }, [{ product: materialById("cattle-manure-composted")!, massGrams: 1000 }], { basis: "squareMetre", amount: 1 }).N  // => 1
 */
export function usableInFirstSeason(delivered: Delivered, amounts: readonly Amount[], extent: Extent): Delivered {
  if (delivered.N === undefined) return delivered;
  const bound = amounts.reduce((sum, amount) => {
    const most = amount.product.firstSeasonNitrogenShare?.[1];
    return most === undefined ? sum : sum + (1 - most) * (deliver([amount], extent).N ?? 0);
  }, 0);
  return bound === 0 ? delivered : { ...delivered, N: delivered.N - bound };
}
