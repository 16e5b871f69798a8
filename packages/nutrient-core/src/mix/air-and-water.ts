import { term, type WorkingLine } from "../outcome/working.ts";
import { ingredientFacts } from "./ingredient/facts.ts";
import { MEASURED_HEIGHT_METRES, MEASURED_MIXES, type MeasuredMix } from "./measured-mixes.ts";
import type { RecipeComponent } from "./recipe/recipe.ts";

/** Air and water in a drained pot of this mix, in percent of its volume; or why nothing can be said. */
export type AirAndWater =
  | {
      readonly isKnown: true;
      readonly airPercent: readonly [number, number];
      readonly waterPercent: readonly [number, number];
      readonly heightMetres: number;
      /** The measured mix that stands for this one. */
      readonly like: string;
      readonly source: string;
    }
  | { readonly isKnown: false; readonly reason: string };

/** A recipe counts as a measured mix when every share is within five parts in a hundred of it. */
const NEAR_ENOUGH = 0.05 + 1e-9;
/** Within these heights the measurement, with its range for taller pots, is taken to say something. Our own judgement. */
const LOWEST_METRES = MEASURED_HEIGHT_METRES * 0.9;
const HIGHEST_METRES = 0.4;
/** Table values repeat to some points between laboratories; common practice, no source. */
const SPREAD_PERCENT = 3;
/** Douglas-fir bark held 20 % (medium) to 42 % (fine) less water at 15.2 cm than at 3.8 cm of height. Source: douglas-fir-bark-height-2008. */
const HEIGHTS_METRES = [0.038, 0.152] as const;
const LESS_WATER = [0.2, 0.42] as const;

/**
 * What a drained pot holds of air and water, only where a mix like it was measured.
 *
 * Nothing is averaged from the ingredients: 30 instead of 20 % perlite in peat moved air from 10 to 11 % only. The
 * pores are the same at every height; a taller pot drains more of them. Between 10 cm, where the mixes were
 * measured, and 15.2 cm, the water is lowered by the range measured on bark; beyond, the taller pot holds less water
 * and more air than that, and how much was not measured.
 *
 * @param potHeightsMetres Of the mix in each kind of pot, unknown where only the litres are; empty when only beds are filled.
 */
export function airAndWater(
  components: readonly RecipeComponent[],
  potHeightsMetres: readonly (number | undefined)[],
): AirAndWater {
  const unknown = (reason: string): AirAndWater => ({ isKnown: false, reason });
  const like = measuredLike(components);
  if (!like) return unknown("no mix like it was measured");
  const [heightMetres, ...others] = potHeightsMetres;
  if (potHeightsMetres.length === 0) return unknown("such mixes were measured in pots; a bed drains into the ground");
  if (heightMetres === undefined) return unknown("it depends on the pot's height, which was not given");
  if (others.some((other) => other !== heightMetres))
    return unknown("it depends on the pot's height: ask for one kind of pot");
  if (heightMetres < LOWEST_METRES || heightMetres > HIGHEST_METRES) {
    return unknown("such mixes were measured in pots 10 cm high, too far from this height");
  }
  const [low, high] = waterRange(like, heightMetres);
  const clipped = (percent: number): number => Math.min(like.totalPoresPercent, Math.max(0, percent));
  return {
    isKnown: true,
    waterPercent: [low, high],
    airPercent: [clipped(like.totalPoresPercent - high), clipped(like.totalPoresPercent - low)],
    heightMetres,
    like: Object.entries(like.shares)
      .map(([name, share]) => `${Math.round(share * 100)} % ${name}`)
      .join(", "),
    source: "arkansas-unit-7-tables",
  };
}

/** Lowest and highest water for a height: measured, less what a taller column loses, with the table's own spread. */
function waterRange(like: MeasuredMix, heightMetres: number): readonly [number, number] {
  const [short, tall] = HEIGHTS_METRES;
  const step = Math.max(0, Math.min(heightMetres, tall) - MEASURED_HEIGHT_METRES) / (tall - short);
  const low = like.waterPercent * (1 - LESS_WATER[1] * step) - SPREAD_PERCENT;
  const high = like.waterPercent * (1 - LESS_WATER[0] * step) + SPREAD_PERCENT;
  return [Math.max(0, low), Math.min(like.totalPoresPercent, high)];
}

function measuredLike(components: readonly RecipeComponent[]): MeasuredMix | undefined {
  const shares = new Map<string, number>();
  for (const { name, share } of components) {
    const kind = /rice hull/.test(name) ? "rice hulls" : ingredientFacts(name)?.kind;
    if (kind === undefined) return undefined;
    shares.set(kind, (shares.get(kind) ?? 0) + share);
  }
  const distance = (mix: MeasuredMix): number => {
    const names = new Set([...shares.keys(), ...Object.keys(mix.shares)]);
    return Math.max(...[...names].map((name) => Math.abs((shares.get(name) ?? 0) - (mix.shares[name] ?? 0))));
  };
  const [nearest] = [...MEASURED_MIXES].sort((a, b) => distance(a) - distance(b));
  return nearest && distance(nearest) <= NEAR_ENOUGH ? nearest : undefined;
}

/** The working of {@link airAndWater}: the upper air value from the pores and the lower water value. */
export function airAndWaterWorking(result: AirAndWater): WorkingLine[] {
  if (!result.isKnown) return [];
  const [air, water] = [result.airPercent[1], result.waterPercent[0]];
  return [
    {
      label: "most air, percent of the pot: pores less water",
      expression: `${term(air + water)} - ${term(water)}`,
      value: air,
      unit: "",
      source: result.source,
    },
  ];
}
