import { type Caution, raise } from "../outcome/caution.ts";
import { hazardCautions } from "../product/hazard-cautions.ts";
import { materialById } from "../product/materials.ts";
import {
  brickYield,
  compostShare,
  drainageLayer,
  HAZARD_CAUTIONS,
  limeWithCompost,
  peatNeedsLime,
  roofLoadOver,
  roofLoadUnstated,
  roofLoadWithin,
  tradePot,
  volumeLossAssumed,
  weightUnknown,
} from "./cautions.ts";
import { type IngredientHazard, ingredientFacts } from "./ingredient/facts.ts";
import type { MixInput } from "./mix-input.ts";
import type { MixResult } from "./mix-result.ts";

/** Up to a third in pots (quoted second-hand), up to half in raised beds (umd-raised-beds); experts differ. */
const MOST_COMPOST = { pot: 1 / 3, bed: 1 / 2 } as const;
/** The lightest place in the tables that were read, a flat roof (delft-variable-loads); below it nothing is said unasked. */
const LIGHT_LOAD_KILOPASCALS = 1;
const LIME = /\blime|limestone|chalk|calcium carbonate|dolomi/;

/** What to heed about a mix. */
export function mixCautions(input: MixInput, result: MixResult, unweighed: readonly string[]): Caution[] {
  return [
    ...loadCautions(input, result),
    ...ingredientCautions(input),
    // What is mixed in by mass, where it is a material that is known.
    ...hazardCautions(input.recipe.additions.flatMap(({ name }) => materialById(name) ?? [])),
    ...compostCautions(input),
    ...(unweighed.length > 0 ? [raise(weightUnknown, { ingredients: unweighed })] : []),
    ...lossCautions(input, result),
    ...potCautions(input),
    ...brickCautions(input, result),
  ];
}

function loadCautions({ floorLimitKilopascals: limit }: MixInput, { fills }: MixResult): Caution[] {
  const heaviest = fills
    .filter((fill) => fill.load !== undefined)
    .sort((a, b) => b.load!.kilopascals - a.load!.kilopascals)[0];
  if (!heaviest?.load) return [];
  const facts = { ...heaviest.load, limitKilopascals: limit ?? 0, of: heaviest.written };
  if (limit === undefined)
    return heaviest.load.kilopascals < LIGHT_LOAD_KILOPASCALS ? [] : [raise(roofLoadUnstated, facts)];
  return [raise(heaviest.load.kilopascals > limit ? roofLoadOver : roofLoadWithin, facts)];
}

function ingredientCautions({ recipe }: MixInput): Caution[] {
  const byHazard = new Map<IngredientHazard, string[]>();
  for (const { name } of recipe.components) {
    for (const hazard of ingredientFacts(name)?.hazards ?? [])
      byHazard.set(hazard, [...(byHazard.get(hazard) ?? []), name]);
  }
  return [...byHazard].map(([hazard, ingredients]) => raise(HAZARD_CAUTIONS[hazard], { ingredients }));
}

function compostCautions({ recipe, fills }: MixInput): Caution[] {
  const share = (test: (name: string) => boolean): number =>
    recipe.components.reduce((sum, one) => sum + (test(one.name) ? one.share : 0), 0);
  const compost = share((name) => ingredientFacts(name)?.isCompost ?? false);
  const peat = share((name) => ingredientFacts(name)?.kind === "peat");
  const limes = recipe.additions.filter(({ name }) => LIME.test(name)).map(({ name }) => name);
  const hasPots = fills.some(({ kind }) => kind === "pot");
  const most = hasPots ? MOST_COMPOST.pot : MOST_COMPOST.bed;
  const cautions: Caution[] = [];
  // A recipe by whole percents (34 %) means a third.
  if (compost > most + 0.01) {
    const where = hasPots ? "pots" : "beds";
    cautions.push(raise(compostShare, { sharePercent: 100 * compost, where, upToPercent: Math.round(100 * most) }));
  }
  if (limes.length > 0 && compost > 0) {
    cautions.push(raise(limeWithCompost, { additions: limes, compostPercent: 100 * compost }));
  }
  if (peat >= 0.4 && compost === 0 && limes.length === 0)
    cautions.push(raise(peatNeedsLime, { sharePercent: 100 * peat }));
  return cautions;
}

function lossCautions(
  { losses, lossSources }: MixInput,
  { orderVolumeRangeLitres: [low, high] }: MixResult,
): Caution[] {
  const assumed = [
    ...(lossSources.loss !== null ? ["loss"] : []),
    ...(lossSources.settling !== null ? ["settling"] : []),
  ];
  if (assumed.length === 0) return [];
  return [
    raise(volumeLossAssumed, {
      lossPercent: 100 * losses.lossShare,
      settlingPercent: 100 * losses.settlingShare,
      assumed,
      lowLitres: low,
      highLitres: high,
    }),
  ];
}

function potCautions({ fills }: MixInput): Caution[] {
  const trade = fills.filter(({ notes }) => notes?.includes("trade-pot")).map(({ label }) => label);
  return [
    ...(trade.length > 0 ? [raise(tradePot, { pots: trade })] : []),
    ...(fills.some(({ notes }) => notes?.includes("drainage-layer")) ? [raise(drainageLayer, {})] : []),
  ];
}

/** Something compressed that is bought, and whose label promises more or less than its dry density can make. */
function brickCautions({ supplies }: MixInput, { components }: MixResult): Caution[] {
  return components.flatMap(({ name, order }) => {
    const dry = ingredientFacts(name)?.dryKilogramsPerLitre;
    const offers = supplies.find((supply) => supply.name === name)?.offers ?? [];
    if (!dry) return [];
    return order.flatMap(({ pack, litres }) => {
      const kilograms = offers.find(({ label }) => label === pack)?.massKilograms;
      if (kilograms === undefined || !pack.includes("makes")) return [];
      const [each, low, high] = [litres / kilograms, 1 / dry.high, 1 / dry.low];
      // Bricks are nearly dry; a tenth beside the range is within the rounding of a label.
      if (each >= 0.9 * low && each <= 1.1 * high) return [];
      const packs = [`${name} ${pack}`];
      return [
        raise(brickYield, { packs, litresPerKilogram: each, lowLitresPerKilogram: low, highLitresPerKilogram: high }),
      ];
    });
  });
}
