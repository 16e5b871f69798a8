import { term, type WorkingLine } from "../../outcome/working.ts";
import type { Delivered } from "../../supply/supply.ts";
import { plantingLabel } from "../planting-label.ts";
import type { MixOffset, Planting } from "../season.ts";
import type { MixRates } from "./read-mix.ts";

/** What the mix brings to one plant. */
export function mixOffset({ rates, overDays }: MixRates, litresPerPlant: number): MixOffset {
  // Grams per cubic metre on a plant's share of the mix.
  const factor = rates.basis === "cubicMetre" ? litresPerPlant / 1000 : 1;
  const gramsPerPlant: Delivered = Object.fromEntries(
    rates.wanted.map(({ nutrient, rate }) => [nutrient, rate * factor]),
  );
  return { gramsPerPlant, overDays };
}

/** The working of {@link mixOffset} for a planting; none where the mix is given for each plant as it is. */
export function mixOffsetWorking({ rates }: MixRates, planting: Planting): WorkingLine[] {
  const { places, plants, fromMix } = planting;
  if (rates.basis !== "cubicMetre" || !fromMix) return [];
  const litres = places.map(({ volumeLitres }) => term(volumeLitres)).join(" + ");
  return rates.wanted.map(({ nutrient, rate }) => ({
    label: `${plantingLabel(planting)}: ${nutrient} from the mix for each plant`,
    expression: `${term(rate)} g/m^3 * (${litres}) L / ${plants}`,
    value: fromMix.gramsPerPlant[nutrient]!,
    unit: "g",
    source: null,
  }));
}
