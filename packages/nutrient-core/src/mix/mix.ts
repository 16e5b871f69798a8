import { type Caution, inOrderOfUrgency } from "../outcome/caution.ts";
import { answer, type Outcome } from "../outcome/outcome.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { airAndWater, airAndWaterWorking } from "./air-and-water.ts";
import { coirSoak } from "./coir-soak.ts";
import { mixFirstSeason } from "./first-season.ts";
import { carTrips } from "./mix-car.ts";
import { mixCautions } from "./mix-cautions.ts";
import { fillSpaces } from "./mix-fills.ts";
import type { MixInput } from "./mix-input.ts";
import { orderComponents } from "./mix-order.ts";
import type { MixResult } from "./mix-result.ts";
import { mixedIngredients } from "./mixed-ingredients.ts";
import { LOSS_SHARE_RANGE, SETTLING_SHARE_RANGE } from "./usual-losses.ts";
import { mixVolumes, volumesWorking } from "./volumes.ts";
import { floorLoad, floorLoadWorking, mixMass } from "./weight.ts";

/**
 * How much of everything fills these beds and pots, what to buy, what it weighs and what it brings.
 *
 * order volume = space / ((1 - settling) (1 - loss on mixing)); each ingredient's loose volume is its share of it.
 * Additions are dosed on the final volume, the space that is filled.
 *
 * @param input See {@link MixInput}; losses are shares from 0 to less than 1.
 * @returns Volumes in litres, masses in kilograms and grams, areas in square metres, money as it was given.
 * @example
 * const asked = readMix({ recipe: "bark 3, peat 1, sand 1", fill: ["1 pot 400 L"], loss: "20%", settling: "0" }, { quantity: readPlainQuantity });
 * mix(asked.value).value.components[0].looseVolumeLitres  // => 300
 */
export function mix(input: MixInput): Outcome<MixResult> {
  const { recipe, fills, losses, lossSources } = input;
  const spaces = fillSpaces(fills);
  const volumes = mixVolumes(spaces.volumeLitres, losses);
  const working: WorkingLine[] = [...spaces.working, ...volumesWorking(volumes, losses, lossSources)];
  const ingredients = mixedIngredients(input, volumes);
  for (const [index, { name, looseVolumeLitres }] of ingredients.entries()) {
    working.push({
      label: `${name}, loose`,
      expression: `${term(volumes.orderVolumeLitres)} L * ${term(recipe.components[index]!.share)}`,
      value: looseVolumeLitres,
      unit: "L",
      source: recipe.source,
    });
  }
  const ordered = orderComponents(input, ingredients, volumes);
  if (!ordered.ok) return ordered;
  working.push(...ordered.working);
  const additions = recipe.additions.map(({ name, gramsPerCubicMetre }) => {
    const massGrams = (gramsPerCubicMetre * volumes.fillVolumeLitres) / 1000;
    working.push({
      label: `${name}, on the final volume`,
      expression: `${term(volumes.fillVolumeLitres)} L * ${term(gramsPerCubicMetre)} g/m^3`,
      value: massGrams,
      unit: "g",
      source: recipe.source,
    });
    return { name, massGrams, gramsPerCubicMetre };
  });
  const weight = mixMass(ingredients);
  working.push(...weight.working);
  const wettest = weight.mass ? weight.mass.wetRange[1] / volumes.fillVolumeLitres : undefined;
  const spacesWithLoad = spaces.fills.map((space) => {
    if (wettest === undefined || space.areaSquareMetres === undefined) return space;
    const kilograms = space.volumeLitres * wettest;
    const load = floorLoad(kilograms / space.areaSquareMetres);
    working.push(floorLoadWorking(space.label, kilograms, space.areaSquareMetres, load));
    return { ...space, load };
  });
  const air = airAndWater(
    recipe.components,
    fills.filter(({ kind }) => kind === "pot").map(({ heightMetres }) => heightMetres),
  );
  working.push(...airAndWaterWorking(air));
  const season = mixFirstSeason(ingredients, volumes.fillVolumeLitres);
  working.push(...(season?.working ?? []));
  const soak = coirSoak(ingredients);
  working.push(...(soak?.working ?? []));
  const trips = input.car ? carTrips(input, ordered.value.components, input.car) : undefined;
  const result: MixResult = {
    ...volumes,
    orderVolumeRangeLitres: orderRange(input),
    fills: spacesWithLoad,
    ...spaces.totals,
    ...ordered.value,
    additions,
    ...(weight.mass === undefined ? {} : { massKilograms: weight.mass }),
    ...(trips?.loads === undefined ? {} : { carLoads: trips.loads }),
    airAndWater: air,
    ...(season === undefined ? {} : { firstSeason: season.value }),
    ...(soak === undefined ? {} : { coirSoak: soak.value }),
    recipeSource: recipe.source,
  };
  const cautions: Caution[] = [
    ...ordered.cautions,
    ...(trips?.cautions ?? []),
    ...mixCautions(input, result, weight.unknown),
  ];
  return answer(result, inOrderOfUrgency(cautions), working);
}

/** The order volume by the lowest and highest published losses; a loss that the grower stated stands. */
function orderRange({ fills, losses, lossSources }: MixInput): readonly [number, number] {
  const fill = fills.reduce((sum, { count, volume }) => sum + count * volume.value, 0);
  const end = (index: 0 | 1): number =>
    mixVolumes(fill, {
      lossShare: lossSources.loss === null ? losses.lossShare : LOSS_SHARE_RANGE[index],
      settlingShare: lossSources.settling === null ? losses.settlingShare : SETTLING_SHARE_RANGE[index],
    }).orderVolumeLitres;
  return [end(0), end(1)];
}
