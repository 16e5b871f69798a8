import type { Fill } from "../../mix/fill/fill.ts";
import { readFill } from "../../mix/fill/read-fill.ts";
import { andThen, answer, gather, type Outcome, unusable } from "../../outcome/outcome.ts";
import { ofDimension, type QuantityReader } from "../../quantity/quantity.ts";
import { type CivilDate, readCivilDate } from "../civil-date.ts";
import type { Programme } from "../programme.ts";
import type { Place } from "../season.ts";
import type { SeasonDocument } from "./document.ts";
import { readProgramme } from "./read-programme.ts";

type PlaceTexts = SeasonDocument["places"][number];

interface Dates {
  readonly sown: CivilDate | undefined;
  readonly setOut: CivilDate;
  readonly end: CivilDate;
}

/** A place with what holds for it: its own words, else those of the season. */
export interface ReadPlace {
  readonly place: Place;
  readonly crop: string;
  readonly dates: Dates;
  readonly programme: Programme;
  readonly harvestKilograms: number | undefined;
}

/** Reads one place of a season. */
export function readPlace(
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
