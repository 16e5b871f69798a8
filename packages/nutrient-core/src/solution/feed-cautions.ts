import type { Nutrient } from "../element/nutrient.ts";
import { type Caution, raise } from "../outcome/caution.ts";
import { shown } from "../outcome/sentence.ts";
import type { Extent } from "../supply/basis.ts";
import type { Delivered } from "../supply/supply.ts";
import type { Conductivity } from "./conductivity.ts";
import {
  AMMONIUM,
  BORON,
  BURNING_DRESSING,
  BURNING_FEED,
  type Excess,
  RUNOFF_DRESSING,
  RUNOFF_FEED,
  STRONG_DRESSING,
  STRONG_FEED,
  TRACE,
} from "./feed-caution-kinds.ts";
import {
  AMMONIUM_PPM,
  AMMONIUM_SHARE,
  AMMONIUM_SOURCES,
  BORON_DRESSING_GRAMS_PER_SQUARE_METRE,
  BORON_FEED_PPM,
  DRINKING_WATER_NITROGEN_PPM,
  EC_HIGH,
  EC_SEVERE,
  FAR_OVER,
  STRONGEST_FEED,
  STRONGEST_TRACE_FEED,
  TRACE_DRESSING,
  TRACE_FAR_OVER,
  WAY_OVER,
  WHOLE_SEASON,
} from "./feed-limits.ts";

/**
 * What to heed when this much is given: a feed or dressing far over published strengths, trace elements with little
 * room, and where it must not run off to.
 *
 * @param delivered mg/L or g/m2 of each element. Nitrogen that soil life has yet to release burns nothing: `organic-N`
 *   is taken off.
 * @param extent Its basis; a starter charge per cubic metre of mix is not judged here.
 * @param ec Conductivity at 25 °C, where there is one.
 * @returns `feed-strength`, `boron-narrow`, `micronutrient-narrow`, `runoff`.
 * @example
 * feedCautions({ N: 900 }, { basis: "litre", amount: 10 })[0]?.severity  // => "danger"
 */
export function feedCautions(
  delivered: Delivered,
  extent: Extent,
  ec?: Pick<Conductivity, "milliSiemensPerCm">,
): Caution[] {
  if (extent.basis === "litre") return wateredCautions(delivered, ec?.milliSiemensPerCm);
  return extent.basis === "squareMetre" ? spreadCautions(delivered) : [];
}

/** Nitrogen and the rest of what acts at once. */
function quick(delivered: Delivered): Delivered {
  return delivered.N === undefined ? delivered : { ...delivered, N: delivered.N - (delivered["organic-N"] ?? 0) };
}

function wateredCautions(delivered: Delivered, ec: number | undefined): Caution[] {
  const acting = quick(delivered);
  const cautions: Caution[] = [];
  const strong = excesses(acting, STRONGEST_FEED, FAR_OVER, "mg/L", "strongest published");
  const burns = (acting.N ?? 0) > WAY_OVER * STRONGEST_FEED.N!.amount || (ec ?? 0) > EC_SEVERE.amount;
  if (ec !== undefined && ec > EC_HIGH.amount) {
    const limit = ec > EC_SEVERE.amount ? EC_SEVERE : EC_HIGH;
    strong.push([`EC ${shown(ec)} mS/cm (limit ${shown(limit.amount)})`, limit.source]);
  }
  if (strong.length > 0) cautions.push(raise(burns ? BURNING_FEED : STRONG_FEED, gathered(strong)));
  if ((delivered.B ?? 0) > BORON_FEED_PPM)
    cautions.push(raise(BORON, { amount: delivered.B!, unit: "mg/L", limit: BORON_FEED_PPM }));
  const trace = excesses(delivered, STRONGEST_TRACE_FEED, TRACE_FAR_OVER, "mg/L", "strongest published");
  if (trace.length > 0) cautions.push(raise(TRACE, gathered(trace)));
  const nitrogenPpm = delivered.N ?? 0;
  if (nitrogenPpm > DRINKING_WATER_NITROGEN_PPM) {
    cautions.push(
      raise(RUNOFF_FEED, { nitrogenPpm, timesDrinkingWaterLimit: nitrogenPpm / DRINKING_WATER_NITROGEN_PPM }),
    );
  }
  return cautions;
}

function spreadCautions(delivered: Delivered): Caution[] {
  const acting = quick(delivered);
  const cautions: Caution[] = [];
  const strong = excesses(acting, WHOLE_SEASON, 1, "g/m2", "a whole season");
  const burns = (acting.N ?? 0) > 2 * WHOLE_SEASON.N!.amount;
  if (strong.length > 0) cautions.push(raise(burns ? BURNING_DRESSING : STRONG_DRESSING, gathered(strong)));
  const boron = delivered.B ?? 0;
  if (boron > BORON_DRESSING_GRAMS_PER_SQUARE_METRE)
    cautions.push(raise(BORON, { amount: boron, unit: "g/m2", limit: BORON_DRESSING_GRAMS_PER_SQUARE_METRE }));
  const trace = excesses(delivered, TRACE_DRESSING, 1, "g/m2", "usual at most");
  if (trace.length > 0) cautions.push(raise(TRACE, gathered(trace)));
  if ((delivered.N ?? 0) > 0 || (delivered.P ?? 0) > 0) cautions.push(raise(RUNOFF_DRESSING, {}));
  return cautions;
}

type Said = readonly [sentence: string, source: string];

function excesses(
  delivered: Delivered,
  limits: typeof STRONGEST_FEED,
  times: number,
  unit: string,
  compared: string,
): Said[] {
  return (Object.keys(limits) as Nutrient[]).flatMap((nutrient) => {
    const { amount, source } = limits[nutrient]!;
    const given = delivered[nutrient] ?? 0;
    return given > times * amount
      ? [[`${nutrient} ${shown(given)} ${unit} (${compared} ${shown(amount)})`, source] as const]
      : [];
  });
}

function gathered(said: readonly Said[]): Excess {
  return { excesses: said.map(([words]) => words), sources: [...new Set(said.map(([, source]) => source))] };
}

/**
 * Whether the form of the nitrogen in a feed suits peppers in pots and substrates. In beds soil life turns ammonium
 * into nitrate, so a dressing has none of these cautions.
 *
 * Urea counts as ammonium, which it becomes within days in a warm mix (common practice, no source).
 *
 * @param delivered mg/L of each element and nitrogen form; where no form is known, nothing is said.
 * @param extent Left out for a feed; anything but litres is not judged.
 * @returns `ammonium-share`.
 * @example
 * nitrogenFormCautions({ N: 150, "NH4-N": 150 }).map(({ code }) => code)  // => ["ammonium-share"]
 */
export function nitrogenFormCautions(delivered: Delivered, extent?: Extent): Caution[] {
  if (extent && extent.basis !== "litre") return [];
  const ammoniumPpm = delivered["NH4-N"] ?? 0;
  const ureaPpm = delivered["urea-N"] ?? 0;
  const nitrogen = delivered.N ?? 0;
  const reduced = ammoniumPpm + ureaPpm;
  const shareOfNitrogen = nitrogen > 0 ? reduced / nitrogen : 0;
  // A share alone says nothing in a feed with next to no nitrogen: 7 mg/L is what Dutch guides allow at the root.
  const tooMuch = reduced > AMMONIUM_PPM || (shareOfNitrogen > AMMONIUM_SHARE && reduced > 7);
  return tooMuch ? [raise(AMMONIUM, { ammoniumPpm, ureaPpm, shareOfNitrogen, sources: AMMONIUM_SOURCES })] : [];
}
