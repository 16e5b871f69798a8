import { type Caution, raise } from "../outcome/caution.ts";
import { carPartly, carTakes, carTooSmall, carUntold } from "./car-cautions.ts";
import { type CarriedPack, carLoads } from "./car-loads.ts";
import { ingredientFacts, type PublishedRange } from "./ingredient/facts.ts";
import type { Car, MixInput } from "./mix-input.ts";
import type { CarLoads, MixComponent } from "./mix-result.ts";

/** Beyond so many packs a car is not how they come. */
const MOST_CARRIED = 10_000;

interface NamedPack extends CarriedPack {
  readonly ingredient: string;
  /** Ingredient and size, as it is asked for. */
  readonly name: string;
  readonly count: number;
  /** Undefined where no weight was printed and none is published. */
  readonly weighs: number | undefined;
}

/** Trips for everything that is bought in packs; where they cannot be counted, a caution says why. */
export function carTrips(
  input: MixInput,
  components: readonly MixComponent[],
  car: Car,
): { readonly loads?: CarLoads; readonly cautions: readonly Caution[] } {
  const packs = components.flatMap((component) => packsOf(input, component));
  const untold = (reason: "no packs" | "weight unknown" | "too many packs", ingredients: readonly string[]) => ({
    cautions: [raise(carUntold, { reason, ingredients, atLeastTrips: leastTrips(components, car) })],
  });
  const carried = new Set(packs.map(({ ingredient }) => ingredient));
  const needed = components.filter((one) => !one.isOwn && one.stockUsedLitres < one.looseVolumeLitres);
  const left = needed
    .filter(({ name, order }) => !carried.has(name) || order.some(({ isBulk }) => isBulk))
    .map(({ name }) => name);
  if (packs.length === 0) return needed.length === 0 ? { cautions: [] } : untold("no packs", left);
  const unweighed = packs.filter(({ weighs }) => weighs === undefined).map(({ ingredient }) => ingredient);
  if (car.kilograms !== undefined && unweighed.length > 0) return untold("weight unknown", [...new Set(unweighed)]);
  if (packs.reduce((sum, { count }) => sum + count, 0) > MOST_CARRIED) return untold("too many packs", []);
  const loads = carLoads(
    packs.flatMap(({ kilograms, litres, count }) => Array.from({ length: count }, () => ({ kilograms, litres }))),
    car,
  );
  if (!loads) {
    const tooLarge = packs.filter((pack) => carLoads([pack], car) === undefined).map(({ name }) => name);
    return {
      cautions: [raise(carTooSmall, { packs: [...new Set(tooLarge)], takes: carTakes(car.kilograms, car.litres) })],
    };
  }
  return { loads, cautions: left.length === 0 ? [] : [raise(carPartly, { ingredients: left })] };
}

const delivered = (name: string): PublishedRange | undefined =>
  ingredientFacts(name)?.deliveredKilogramsPerLitre ?? ingredientFacts(name)?.dryKilogramsPerLitre;

function packsOf({ supplies }: MixInput, { name, order }: MixComponent): NamedPack[] {
  const offers = supplies.find((supply) => supply.name === name)?.offers ?? [];
  return order.flatMap(({ pack, count }) => {
    const offer = offers.find(({ label, isBulk }) => label === pack && !isBulk);
    if (!offer) return [];
    const published = delivered(name);
    const weighs = offer.massKilograms ?? (published && offer.litres * published.high);
    // Of something compressed only the loose volume is known here: its trip is counted by mass.
    const litres = offer.massKilograms !== undefined && /makes/.test(offer.label) ? 0 : offer.litres;
    return [{ ingredient: name, name: `${name} ${pack}`, count, weighs, kilograms: weighs ?? 0, litres }];
  });
}

/** Trips that the lightest published weight of what is to be bought demands; 0 where a weight is not known. */
function leastTrips(components: readonly MixComponent[], { kilograms: most }: Car): number {
  if (most === undefined) return 0;
  const kilograms = components
    .filter(({ isOwn }) => !isOwn)
    .reduce((sum, { name, looseVolumeLitres, stockUsedLitres }) => {
      const lightest = delivered(name)?.low ?? Number.NaN;
      return sum + (looseVolumeLitres - stockUsedLitres) * lightest;
    }, 0);
  return Number.isNaN(kilograms) ? 0 : Math.ceil(kilograms / most - 1e-9);
}
