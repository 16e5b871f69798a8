import type { Car } from "./mix-input.ts";
import type { CarLoads } from "./mix-result.ts";

/** A pack as it is carried. */
export interface CarriedPack {
  readonly kilograms: number;
  readonly litres: number;
}

/**
 * Trips of a car for these packs: never more than it takes by mass or by volume.
 *
 * `atLeast` is what mass and volume alone demand; `enough` loads whole packs, heaviest first, each into the first trip
 * that takes it. Undefined when a single pack is more than the car takes.
 */
export function carLoads(packs: readonly CarriedPack[], car: Car): CarLoads | undefined {
  const most = { kilograms: car.kilograms ?? Number.POSITIVE_INFINITY, litres: car.litres ?? Number.POSITIVE_INFINITY };
  if (packs.some(({ kilograms, litres }) => kilograms > most.kilograms || litres > most.litres)) return undefined;
  const total = packs.reduce(
    (sum, pack) => ({ kilograms: sum.kilograms + pack.kilograms, litres: sum.litres + pack.litres }),
    { kilograms: 0, litres: 0 },
  );
  // A sum of equal packs that fits exactly must not need another trip by binary rounding.
  const fits = (amount: number, limit: number): boolean => amount <= limit * (1 + 1e-9);
  const trips: { kilograms: number; litres: number }[] = [];
  const fill = (one: CarriedPack): number => Math.max(one.kilograms / most.kilograms, one.litres / most.litres);
  for (const pack of [...packs].sort((a, b) => fill(b) - fill(a))) {
    const trip = trips.find(
      ({ kilograms, litres }) =>
        fits(kilograms + pack.kilograms, most.kilograms) && fits(litres + pack.litres, most.litres),
    );
    if (trip) {
      trip.kilograms += pack.kilograms;
      trip.litres += pack.litres;
    } else trips.push({ ...pack });
  }
  const demanded = Math.max(total.kilograms / most.kilograms, total.litres / most.litres);
  return { atLeast: Math.max(packs.length > 0 ? 1 : 0, Math.ceil(demanded - 1e-9)), enough: trips.length };
}
