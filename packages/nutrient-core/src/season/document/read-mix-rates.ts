import { answer, gather, type Outcome, unusable } from "../../outcome/outcome.ts";
import { ofDimension, type QuantityReader } from "../../quantity/quantity.ts";
import type { Delivered } from "../../supply/supply.ts";
import type { MixOffset } from "../season.ts";
import type { SeasonDocument } from "./document.ts";
import { readSeasonRates, type SeasonRates } from "./read-rates.ts";

/** What the mix brings, by its volume or for each plant. */
export interface MixRates {
  readonly rates: SeasonRates;
  readonly overDays: number;
}

/** Reads what the mix brings; undefined where nothing is said of it. */
export function readMixRates({ mix }: SeasonDocument, quantity: QuantityReader): Outcome<MixRates | undefined> {
  if (mix === undefined) return answer(undefined);
  const at = <T>(name: string, outcome: Outcome<T>): Outcome<T> =>
    outcome.ok ? outcome : unusable(...outcome.problems.map((one) => ({ ...one, path: `mix.${name}` })));
  const read = gather<{ rates: SeasonRates; overDays: number }>({
    rates: at("brings", readSeasonRates(mix.brings)),
    overDays: at("over", ofDimension(quantity(mix.over), "time", mix.over)),
  });
  if (!read.ok) return read;
  const { basis } = read.value.rates;
  if (basis === "cubicMetre" || basis === "plant") return read;
  return unusable({
    code: "target-basis-mismatch",
    path: "mix.brings",
    message: `"${mix.brings}" does not say what the mix brings.`,
    expected: "grams per volume of mix or per plant",
    received: mix.brings,
    hint: 'write for example "N 100 g/m3" or "N 1 g/plant"',
  });
}

/** What the mix brings to one plant. */
export function mixOffset({ rates, overDays }: MixRates, litresPerPlant: number): MixOffset {
  // Grams per cubic metre on a plant's share of the mix.
  const factor = rates.basis === "cubicMetre" ? litresPerPlant / 1000 : 1;
  const gramsPerPlant: Delivered = Object.fromEntries(
    rates.wanted.map(({ nutrient, rate }) => [nutrient, rate * factor]),
  );
  return { gramsPerPlant, overDays };
}
