import type { Fill } from "../../mix/fill/fill.ts";
import { readFill } from "../../mix/fill/read-fill.ts";
import { andThen, answer, gather, gatherList, type Outcome, unusable } from "../../outcome/outcome.ts";
import { ofDimension, type QuantityReader } from "../../quantity/quantity.ts";
import type { Delivered } from "../../supply/supply.ts";
import { type CivilDate, readCivilDate } from "../civil-date.ts";
import { type CropFacts, cropFacts, type Expectation } from "../crop.ts";
import type { Programme } from "../programme.ts";
import type { MixOffset, Place, Planting } from "../season.ts";
import type { SeasonDocument } from "./document.ts";
import { milestoneNamed, readExpectation } from "./read-condition.ts";
import { readProgramme } from "./read-programme.ts";
import { readSeasonRates, type SeasonRates } from "./read-rates.ts";

type PlaceTexts = SeasonDocument["places"][number];

interface Dates {
  readonly sown: CivilDate | undefined;
  readonly setOut: CivilDate;
  readonly end: CivilDate;
}

/**
 * The plantings of a season: places that share crop, dates and programme are fed together. A planting is called after
 * the first of its places, so that adding a place does not rename what the record knows.
 */
export function readPlantings(document: SeasonDocument, quantity: QuantityReader): Outcome<readonly Planting[]> {
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
    mix: readMix(document, quantity),
  });
  const places = gatherList(document.places.map((texts, index) => readPlace(texts, index, document, quantity)));
  if (!shared.ok || !places.ok) {
    return unusable(...(shared.ok ? [] : shared.problems), ...(places.ok ? [] : places.problems));
  }
  const groups = new Map<string, ReadPlace[]>();
  for (const place of places.value) {
    const { crop, dates, programme, harvestKilograms } = place;
    // A mix gives by its volume: places whose plants have more or less of it are fed apart.
    const volume = shared.value.mix?.rates.basis === "cubicMetre" ? place.place.volumeLitres / place.place.plants : 0;
    const key = JSON.stringify([crop, dates, programme.id, harvestKilograms, volume]);
    groups.set(key, [...(groups.get(key) ?? []), place]);
  }
  const plantings = [...groups.values()].map((group) => plantingOf(group, shared.value.facts, shared.value.mix));
  return answer(plantings, [...shared.cautions, ...places.cautions], places.working);
}

interface ReadPlace {
  readonly place: Place;
  readonly crop: string;
  readonly dates: Dates;
  readonly programme: Programme;
  readonly harvestKilograms: number | undefined;
}

function readPlace(
  texts: PlaceTexts,
  index: number,
  document: SeasonDocument,
  quantity: QuantityReader,
): Outcome<ReadPlace> {
  const path = `places[${index}]`;
  const within = <T>(name: string, outcome: Outcome<T>): Outcome<T> =>
    outcome.ok ? outcome : unusable(...outcome.problems.map((one) => ({ ...one, path: `${path}.${name}` })));
  const harvest = texts.harvestPerPlant;
  const parts = gather<{
    place: Place;
    dates: Dates;
    programme: Programme;
    harvestKilograms: number | undefined;
  }>({
    place: andThen(within("fill", readFill(texts.fill, quantity)), (fill) => placeOf(texts, fill, path)),
    dates: readDates(texts, document, path),
    programme: readProgramme(document, texts.programme, quantity),
    harvestKilograms:
      harvest === undefined
        ? answer(undefined)
        : // Grams to kilograms.
          andThen(within("harvestPerPlant", ofDimension(quantity(harvest), "mass", harvest)), (grams) =>
            answer(grams / 1000),
          ),
  });
  return parts.ok
    ? answer({ ...parts.value, crop: texts.crop ?? document.crop }, parts.cautions, parts.working)
    : parts;
}

function placeOf({ name, plants }: PlaceTexts, fill: Fill, path: string): Outcome<Place> {
  const counted =
    plants ?? (fill.plants ? fill.plants.value * fill.count : fill.kind === "pot" ? fill.count : undefined);
  if (counted === undefined || !Number.isInteger(counted) || counted < 1) {
    return unusable({
      code: counted === undefined ? "field-missing" : "field-unusable",
      path: `${path}.plants`,
      message: `How many plants grow in "${name}" is not ${counted === undefined ? "said" : "a whole number of at least 1"}.`,
      expected: "the number of plants in all of them together",
      received: counted === undefined ? "nothing" : String(counted),
      hint: "add plants: 12",
    });
  }
  return answer({
    name,
    kind: fill.kind,
    count: fill.count,
    plants: counted,
    volumeLitres: fill.volume.value * fill.count,
    ...(fill.area ? { areaSquareMetres: fill.area.value * fill.count } : {}),
  });
}

function readDates(texts: PlaceTexts, document: SeasonDocument, path: string): Outcome<Dates> {
  const read = (name: "sown" | "setOut" | "end"): Outcome<CivilDate | undefined> => {
    const written = texts[name] ?? document[name];
    if (written === undefined) return answer(undefined);
    const date = readCivilDate(written);
    const at = texts[name] === undefined ? name : `${path}.${name}`;
    return date.ok ? date : unusable(...date.problems.map((one) => ({ ...one, path: at })));
  };
  const dates = gather<{ sown: CivilDate | undefined; setOut: CivilDate | undefined; end: CivilDate | undefined }>({
    sown: read("sown"),
    setOut: read("setOut"),
    end: read("end"),
  });
  if (!dates.ok) return dates;
  const { sown, setOut, end } = dates.value as Dates;
  if (!(setOut < end) || (sown !== undefined && sown > setOut)) {
    return unusable({
      code: "dates-out-of-order",
      path: setOut < end ? "sown" : "end",
      message: "The season's days are not in order.",
      expected: "sown, then set out, then end",
      received: [sown, setOut, end].filter((date) => date !== undefined).join(", "),
      hint: "check the years: a season may run over the turn of the year",
    });
  }
  return answer({ sown, setOut, end });
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

interface MixRates {
  readonly rates: SeasonRates;
  readonly overDays: number;
}

function readMix({ mix }: SeasonDocument, quantity: QuantityReader): Outcome<MixRates | undefined> {
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

function mixOffset({ rates, overDays }: MixRates, litresPerPlant: number): MixOffset {
  // Grams per cubic metre on a plant's share of the mix.
  const factor = rates.basis === "cubicMetre" ? litresPerPlant / 1000 : 1;
  const gramsPerPlant: Delivered = Object.fromEntries(
    rates.wanted.map(({ nutrient, rate }) => [nutrient, rate * factor]),
  );
  return { gramsPerPlant, overDays };
}

/** What is known of the crops, with the grower's own thresholds and expectations in front. */
function readFacts({ expect = {}, thresholdsCelsius }: SeasonDocument): Outcome<(crop: string) => CropFacts> {
  const read = gatherList(
    Object.entries(expect).map(([name, text]): Outcome<readonly [string, Expectation]> => {
      const path = `expect.${name}`;
      const milestone = milestoneNamed(name);
      if (milestone === undefined || milestone === "sown" || milestone === "set-out" || milestone === "end") {
        return unusable({
          code: "milestone-unknown",
          path,
          message: `"${name}" is nothing that can be expected.`,
          expected: "first flower, first fruit set or first harvest",
          received: name,
          hint: "write first flower",
        });
      }
      const expectation = readExpectation(text);
      if (!expectation.ok) return unusable(...expectation.problems.map((one) => ({ ...one, path })));
      return answer([milestone, expectation.value] as const);
    }),
  );
  if (!read.ok) return read;
  const [lower, upper] = thresholdsCelsius ?? [];
  if (lower !== undefined && upper !== undefined && !(lower < upper)) {
    return unusable({
      code: "thresholds-out-of-order",
      path: "thresholdsCelsius",
      message: "The lower threshold is not below the upper one.",
      expected: "the lower temperature first",
      received: `${lower}, ${upper}`,
      hint: "write for example thresholdsCelsius: [10, 30]",
    });
  }
  const own = read.value;
  return answer((crop) => {
    const facts = cropFacts(crop);
    const expected = { ...facts.expected };
    for (const [milestone, expectation] of own) expected[milestone as "first-flower"] = [expectation];
    if (lower === undefined) return { ...facts, expected };
    const thresholds = upper === undefined ? { lowerCelsius: lower } : { lowerCelsius: lower, upperCelsius: upper };
    const { thresholdsSource: _, ...rest } = facts;
    return { ...rest, expected, thresholds };
  });
}
