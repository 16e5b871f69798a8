import { type Caution, raise } from "../outcome/caution.ts";
import { hazardCautions } from "../product/hazard-cautions.ts";
import { materialById } from "../product/materials.ts";
import { pairCautions } from "../product/pair-cautions.ts";
import {
  coirLime,
  compostSalts,
  compostShare,
  limeWithCompost,
  peatNeedsLime,
  peatWithCompost,
} from "./caution-kinds/compost-and-lime.ts";
import { HAZARD_CAUTIONS } from "./caution-kinds/hazard.ts";
import { brickYield } from "./caution-kinds/order.ts";
import { drainageLayer, tradePot, volumeLossAssumed, weightUnknown } from "./caution-kinds/volume.ts";
import { type IngredientHazard, ingredientFacts } from "./ingredient/facts.ts";
import { loadCautions } from "./load-cautions.ts";
import { LIME, materialPartCautions } from "./material-as-part.ts";
import type { MixInput } from "./mix-input.ts";
import type { MixResult } from "./mix-result.ts";

/** Up to a third in pots (quoted second-hand), up to half in raised beds (umd-raised-beds); experts differ. */
const MOST_COMPOST = { pot: 1 / 3, bed: 1 / 2 } as const;
/** Ground dolomitic lime in peat mixes: 5 lb (horticulture-table-4-11, printed as 3 kg/m3) to 10 lb (rutgers-table-r4) per cubic yard. */
const PEAT_LIME_KILOGRAMS_PER_CUBIC_METRE = [3, 6] as const;
/** So much of a mix decides its pH. Our own judgement. */
const DECIDING_SHARE = 0.4;
/** From so much compost on, its salts are worth a test. Our own judgement. */
const SALTY_SHARE = 0.2;

/** What to heed about a mix. */
export function mixCautions(input: MixInput, result: MixResult, unweighed: readonly string[]): Caution[] {
  const added = input.recipe.additions.flatMap(({ name }) => materialById(name) ?? []);
  return [
    ...loadCautions(input, result),
    ...ingredientCautions(input),
    ...materialPartCautions(input.recipe),
    // What is mixed in by mass, where it is a material that is known.
    ...hazardCautions(added),
    ...pairCautions(added),
    ...compostCautions(input),
    ...acidityCautions(input, result),
    ...(unweighed.length > 0 ? [raise(weightUnknown, { ingredients: unweighed })] : []),
    ...lossCautions(input, result),
    ...potCautions(input),
    ...brickCautions(input, result),
  ];
}

function ingredientCautions({ recipe }: MixInput): Caution[] {
  const byHazard = new Map<IngredientHazard, string[]>();
  for (const { name } of recipe.components) {
    for (const hazard of ingredientFacts(name)?.hazards ?? [])
      byHazard.set(hazard, [...(byHazard.get(hazard) ?? []), name]);
  }
  return [...byHazard].map(([hazard, ingredients]) => raise(HAZARD_CAUTIONS[hazard], { ingredients }));
}

function shareOf({ recipe }: MixInput, test: (name: string) => boolean): number {
  return recipe.components.reduce((sum, one) => sum + (test(one.name) ? one.share : 0), 0);
}
const isCompost = (name: string): boolean => ingredientFacts(name)?.isCompost ?? false;

function compostCautions(input: MixInput): Caution[] {
  const compost = shareOf(input, isCompost);
  const hasPots = input.fills.some(({ kind }) => kind === "pot");
  const most = hasPots ? MOST_COMPOST.pot : MOST_COMPOST.bed;
  const where = hasPots ? "pots" : "beds";
  return [
    // A recipe by whole percents (34 %) means a third.
    ...(compost > most + 0.01
      ? [raise(compostShare, { sharePercent: 100 * compost, where, upToPercent: Math.round(100 * most) })]
      : []),
    ...(compost >= SALTY_SHARE ? [raise(compostSalts, { sharePercent: 100 * compost })] : []),
  ];
}

/** What the ingredients do to the pH, and how much lime was published for such mixes. */
function acidityCautions(input: MixInput, { fillVolumeLitres }: MixResult): Caution[] {
  const compost = shareOf(input, isCompost);
  const peat = shareOf(input, (name) => ingredientFacts(name)?.kind === "peat");
  const coir = shareOf(input, (name) => ingredientFacts(name)?.kind === "coir");
  const limes = input.recipe.additions.filter(({ name }) => LIME.test(name)).map(({ name }) => name);
  const cautions: Caution[] = [];
  if (limes.length > 0 && compost > 0) {
    cautions.push(raise(limeWithCompost, { additions: limes, compostPercent: 100 * compost }));
  }
  if (peat >= DECIDING_SHARE && limes.length === 0) {
    const [low, high] = PEAT_LIME_KILOGRAMS_PER_CUBIC_METRE;
    const facts = {
      sharePercent: 100 * peat,
      lowKilogramsPerCubicMetre: low,
      highKilogramsPerCubicMetre: high,
      lowKilograms: (low * fillVolumeLitres) / 1000,
      highKilograms: (high * fillVolumeLitres) / 1000,
    };
    cautions.push(raise(compost > 0 ? peatWithCompost : peatNeedsLime, facts));
  }
  if (coir >= DECIDING_SHARE) cautions.push(raise(coirLime, { sharePercent: 100 * coir }));
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
