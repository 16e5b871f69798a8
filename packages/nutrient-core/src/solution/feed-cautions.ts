import { type Caution, raise } from "../outcome/caution.ts";
import { shown } from "../outcome/sentence.ts";
import type { Extent } from "../supply/basis.ts";
import type { Amount, Delivered } from "../supply/supply.ts";
import type { Conductivity } from "./conductivity.ts";
import { dressingCautions } from "./dressing-cautions.ts";
import { excesses, gathered } from "./excess.ts";
import {
  AMMONIUM,
  BORON,
  BURNING_FEED,
  MUCH_CHLORIDE,
  MUCH_SODIUM,
  RUNOFF_FEED,
  SOME_CHLORIDE,
  STRONG_FEED,
  TRACE,
} from "./feed-caution-kinds.ts";
import {
  AMMONIUM_PPM,
  AMMONIUM_SHARE,
  AMMONIUM_SOURCES,
  BORON_FEED_PPM,
  CHLORIDE_NOTE_PPM,
  CHLORIDE_SEVERE_PPM,
  DRINKING_WATER_NITROGEN_PPM,
  EC_HIGH,
  EC_SEVERE,
  FAR_OVER,
  SODIUM_PPM,
  STRONGEST_FEED,
  STRONGEST_TRACE_FEED,
  TRACE_FAR_OVER,
  WAY_OVER,
} from "./feed-limits.ts";
import { undissolvedCautions } from "./undissolved.ts";

/**
 * What to heed when this much is given: a feed or dressing far over published strengths, trace elements and salts with
 * little room, what does not dissolve, and where it must not run off to.
 *
 * @param delivered mg/L or g/m2 of each element. In a can, nitrogen that soil life has yet to release burns nothing:
 *   `organic-N` is taken off. On a bed, what a crop can use in the first season counts.
 * @param extent Its basis; a starter charge per cubic metre of mix is not judged here.
 * @param ec Conductivity at 25 °C, where there is one.
 * @param amounts The products behind it and their grams: without them nothing is said of dissolving, lime and sulfur,
 *   and all nitrogen counts on a bed.
 * @returns `feed-strength`, `boron-narrow`, `micronutrient-narrow`, `chloride`, `sodium`, `does-not-dissolve`, `runoff`;
 *   on a bed also `lime-heavy` and `sulfur-heavy`.
 * @example
 * feedCautions({ N: 900 }, { basis: "litre", amount: 10 })[0]?.severity  // => "danger"
 */
export function feedCautions(
  delivered: Delivered,
  extent: Extent,
  ec?: Pick<Conductivity, "milliSiemensPerCm">,
  amounts: readonly Amount[] = [],
): Caution[] {
  if (extent.basis === "litre") {
    return [...wateredCautions(delivered, ec?.milliSiemensPerCm), ...undissolvedCautions(amounts, extent.amount)];
  }
  return extent.basis === "squareMetre" ? dressingCautions(delivered, extent, amounts) : [];
}

/** Nitrogen and the rest of what acts at once in a can: organic nitrogen is released later. */
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
  cautions.push(...saltCautions(delivered));
  const nitrogenPpm = delivered.N ?? 0;
  if (nitrogenPpm > DRINKING_WATER_NITROGEN_PPM) {
    cautions.push(
      raise(RUNOFF_FEED, { nitrogenPpm, timesDrinkingWaterLimit: nitrogenPpm / DRINKING_WATER_NITROGEN_PPM }),
    );
  }
  return cautions;
}

function saltCautions({ Cl = 0, Na = 0 }: Delivered): Caution[] {
  const cautions: Caution[] = [];
  if (Cl > CHLORIDE_SEVERE_PPM) cautions.push(raise(MUCH_CHLORIDE, { amount: Cl, limit: CHLORIDE_SEVERE_PPM }));
  else if (Cl > CHLORIDE_NOTE_PPM) cautions.push(raise(SOME_CHLORIDE, { amount: Cl, limit: CHLORIDE_NOTE_PPM }));
  if (Na > SODIUM_PPM) cautions.push(raise(MUCH_SODIUM, { amount: Na, limit: SODIUM_PPM }));
  return cautions;
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
