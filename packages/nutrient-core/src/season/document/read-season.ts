import { throughDoor } from "../../outcome/door.ts";
import { answer, at, gather, gatherList, type Outcome, unusable } from "../../outcome/outcome.ts";
import type { Product } from "../../product/product.ts";
import { readProduct } from "../../product/read-product.ts";
import { readNumber } from "../../quantity/number.ts";
import { ofDimension } from "../../quantity/quantity.ts";
import { readAlready } from "../../supply/read-rates.ts";
import type { ReadingContext } from "../../supply/reading-context.ts";
import type { Delivered } from "../../supply/supply.ts";
import type { Measures } from "../../supply/weigh-measures.ts";
import { readMeasures } from "../../supply/weigh-read.ts";
import { type CivilDate, readCivilDate } from "../civil-date.ts";
import type { DailyTemperature } from "../degree-days.ts";
import type { Ceiling, Planting, SeasonInput } from "../season.ts";
import { type SeasonDocument, seasonDocument } from "./document.ts";
import { readPlantings } from "./read-plantings.ts";
import { readCeilings } from "./read-rates.ts";

/** What a season is read with. */
export interface SeasonContext extends ReadingContext {
  readonly currency?: string;
  /** The shelf file's `components`, as written: a density measured there counts for the mix. */
  readonly components?: readonly unknown[];
  /** Rows of the weather file that the season names. */
  readonly weather?: readonly DailyTemperature[];
}

/** Share of a feed that drains out of well watered pots at most, where the grower says nothing: `uf-leaching-fraction`. */
const USUAL_LEACHING = 0.15;

/**
 * Turns a season document into what a plan is made from, or says everything that is wrong with it.
 *
 * @param document Anything: the parsed file.
 * @param context Shelf, quantity reader, currency, what the shelf says of mix ingredients, and the rows of the weather file that the document names.
 * @returns What `planSeason` asks for; every problem carries the place in the document.
 * @example
 * const pots = { name: "pots", fill: "20 pots 20 L" };
 * const dates = { setOut: "2027-05-15", end: "2027-10-10" };
 * const document = { name: "roof", crop: "sweet pepper", ...dates, places: [pots], programme: "two-phase", products: ["20-10-20"], can: "10 L" };
 * const asked = readSeason(document, { shelf: [], quantity: readPlainQuantity });
 * asked.value.plantings[0]  // => { name: "pots", plants: 20, setOut: "2027-05-15" }
 */
export function readSeason(document: unknown, context: SeasonContext): Outcome<SeasonInput> {
  const entered = throughDoor(seasonDocument, document);
  if (!entered.ok) return entered;
  const texts = entered.value;
  const { quantity, shelf } = context;
  const parts = gather<{
    plantings: readonly Planting[];
    products: readonly Product[];
    stageProducts: ReadonlyMap<string, Product>;
    water: Delivered;
    canLitres: number;
    measures: Measures | undefined;
    ceilings: readonly (readonly Ceiling[])[];
    leachingShare: number;
    stockCounted: CivilDate | undefined;
  }>({
    plantings: readPlantings(texts, context),
    products: readProducts(texts.products, "products", shelf),
    stageProducts: readStageProducts(texts, shelf),
    water: texts.water === undefined ? answer({}) : at("water", readAlready(texts.water, "litre")),
    canLitres: at("can", ofDimension(quantity(texts.can), "volume", texts.can)),
    measures: readMeasures({ scale: texts.scale, spoons: texts.spoons, syringe: texts.syringe }, quantity),
    ceilings: gatherList((texts.ceilings ?? []).map((text, index) => placed(`ceilings[${index}]`, readCeilings(text)))),
    leachingShare: texts.leaching === undefined ? answer(USUAL_LEACHING) : readShareOf(texts.leaching),
    stockCounted:
      texts.stockCounted === undefined ? answer(undefined) : placed("stockCounted", readCivilDate(texts.stockCounted)),
  });
  if (!parts.ok) return parts;
  const { plantings, products, stageProducts, measures, ceilings, stockCounted, ...rest } = parts.value;
  const named = [...stageProducts.values()];
  const known = new Map([...shelf, ...products, ...named].map((product) => [product.id, product]));
  const input: SeasonInput = {
    ...rest,
    name: texts.name,
    plantings: plantings.map((planting) => withProductIds(planting, stageProducts)),
    products,
    shelf: [...known.values()],
    ceilings: ceilings.flat(),
    labelRule: texts.labelRule ?? "us",
    weather: context.weather ?? [],
    reminders: texts.reminders ?? true,
    ...(measures === undefined ? {} : { measures }),
    ...(context.currency === undefined ? {} : { currency: context.currency }),
    ...(stockCounted === undefined ? {} : { stockCounted }),
    ...(texts.raisedAtCelsius === undefined ? {} : { raisedAtCelsius: texts.raisedAtCelsius }),
    ...(texts.sowingCelsius === undefined ? {} : { sowingCelsius: texts.sowingCelsius }),
  };
  return answer(input, parts.cautions, parts.working);
}

function readProducts(
  ids: readonly string[] | undefined,
  path: string,
  shelf: readonly Product[],
): Outcome<readonly Product[]> {
  if (ids !== undefined) {
    return gatherList(ids.map((id, index) => placed(`${path}[${index}]`, readProduct(id, { shelf }))));
  }
  if (shelf.length > 0) return answer(shelf);
  return unusable({
    code: "field-missing",
    path,
    message: "What to feed with is not said, and the shelf is empty.",
    expected: "products, or a shelf file that holds some",
    received: "nothing",
    hint: "add products: [20-10-20], or name a shelf file",
  });
}

/** Products that single stages name, by the words for them: looked up here, so that a mistake is told with its place. */
function readStageProducts(
  { stageProducts, stages }: SeasonDocument,
  shelf: readonly Product[],
): Outcome<ReadonlyMap<string, Product>> {
  const named = [
    ...Object.entries(stageProducts ?? {}).map(([stage, ids]) => [`stageProducts.${stage}`, ids] as const),
    ...(stages ?? []).map(({ products = [] }, index) => [`stages[${index}].products`, products] as const),
  ];
  const read = gatherList(named.map(([path, ids]) => readProducts(ids, path, shelf)));
  if (!read.ok) return read;
  const words = named.flatMap(([, ids]) => ids);
  return answer(new Map(read.value.flat().map((product, index) => [words[index]!, product])));
}

/** A stage may call a product by another of its names; from here on it is known by its id. */
function withProductIds(planting: Planting, named: ReadonlyMap<string, Product>): Planting {
  const stages = planting.programme.stages.map((stage) =>
    stage.products === undefined
      ? stage
      : { ...stage, products: stage.products.map((words) => named.get(words)?.id ?? words) },
  );
  return { ...planting, programme: { ...planting.programme, stages } };
}

function readShareOf(written: string): Outcome<number> {
  const number = readNumber(written.trim().replace(/\s*%$/, ""));
  if (number.ok && written.includes("%") && number.value <= 100) return answer(number.value / 100);
  return unusable({
    code: "share-unreadable",
    path: "leaching",
    message: `"${written}" is not a percentage from 0 to 100.`,
    expected: "a percentage such as 15%",
    received: written,
    hint: "write the percent sign too: 15%",
  });
}

/** The problems of a part, at its place in the document. */
function placed<T>(path: string, outcome: Outcome<T>): Outcome<T> {
  return outcome.ok ? outcome : unusable(...outcome.problems.map((problem) => ({ ...problem, path })));
}
