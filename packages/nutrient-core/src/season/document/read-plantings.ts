import { answer, gather, gatherList, type Outcome, unusable } from "../../outcome/outcome.ts";
import type { CropFacts } from "../crop.ts";
import { MOST_SHOWN } from "../plan-working.ts";
import type { Place, Planting } from "../season.ts";
import type { SeasonDocument } from "./document.ts";
import { mixOffset, mixOffsetWorking } from "./mix-offset.ts";
import { readFacts } from "./read-facts.ts";
import { type MixContext, type MixRates, readSeasonMix } from "./read-mix.ts";
import { type ReadPlace, readPlace } from "./read-place.ts";

/**
 * The plantings of a season: places that share crop, dates and programme are fed together. A planting is called after
 * the first of its places, so that adding a place does not rename what the record knows.
 */
export function readPlantings(document: SeasonDocument, context: MixContext): Outcome<readonly Planting[]> {
  const { quantity } = context;
  const names = document.places.map(({ name }) => name);
  const twice = names.find((name, index) => names.indexOf(name) < index);
  if (twice !== undefined) {
    return unusable({
      code: "id-twice",
      path: "places",
      message: `Two places are called "${twice}".`,
      expected: "a name of its own for each place",
      received: twice,
      hint: "rename one of the two",
    });
  }
  const shared = gather<{ facts: (crop: string) => CropFacts; mix: MixRates | undefined }>({
    facts: readFacts(document),
    mix: readSeasonMix(document, context),
  });
  const places = gatherList(document.places.map((texts, index) => readPlace(texts, index, document, quantity)));
  if (!shared.ok || !places.ok) {
    return unusable(...(shared.ok ? [] : shared.problems), ...(places.ok ? [] : places.problems));
  }
  const { facts, mix } = shared.value;
  // A mix gives by its volume: places whose plants have more or less of it are fed apart.
  const isByVolume = mix?.rates.basis === "cubicMetre" && mix.rates.wanted.length > 0;
  const groups = new Map<string, ReadPlace[]>();
  for (const place of places.value) {
    const { crop, dates, programme, harvestKilograms } = place;
    const volume = isByVolume ? place.place.volumeLitres / place.place.plants : 0;
    const key = JSON.stringify([crop, dates, programme.id, harvestKilograms, volume]);
    groups.set(key, [...(groups.get(key) ?? []), place]);
  }
  const plantings = [...groups.values()].map((group) => plantingOf(group, facts, mix));
  const ofMix = mix ? plantings.slice(0, MOST_SHOWN).flatMap((planting) => mixOffsetWorking(mix, planting)) : [];
  return answer(plantings, [...shared.cautions, ...places.cautions], [...places.working, ...shared.working, ...ofMix]);
}

function plantingOf(
  group: readonly ReadPlace[],
  facts: (crop: string) => CropFacts,
  mix: MixRates | undefined,
): Planting {
  const [first] = group;
  const { crop, dates, programme, harvestKilograms } = first!;
  const places = group.map(({ place }) => place);
  const sum = (of: (place: Place) => number): number => places.reduce((total, place) => total + of(place), 0);
  const plants = sum((place) => place.plants);
  const hasAreas = places.every(({ areaSquareMetres }) => areaSquareMetres !== undefined);
  return {
    name: places[0]!.name,
    crop,
    facts: facts(crop),
    places,
    plants,
    ...(hasAreas ? { areaSquareMetres: sum(({ areaSquareMetres }) => areaSquareMetres!) } : {}),
    ...(dates.sown === undefined ? {} : { sown: dates.sown }),
    setOut: dates.setOut,
    end: dates.end,
    programme,
    ...(mix ? { fromMix: mixOffset(mix, sum(({ volumeLitres }) => volumeLitres) / plants) } : {}),
    ...(harvestKilograms === undefined ? {} : { harvestKilogramsPerPlant: harvestKilograms }),
  };
}
