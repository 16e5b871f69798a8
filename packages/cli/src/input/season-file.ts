import { basename, dirname, extname, isAbsolute, join, resolve } from "node:path";
import {
  answer,
  type Caution,
  type DailyTemperature,
  EMPTY_SHELF,
  type Outcome,
  type Problem,
  type QuantityReader,
  readSeason,
  readWeather,
  type SeasonInput,
  type Shelf,
  seasonFiles,
  unusable,
} from "nutrient-core";
import type { Io } from "../io.ts";
import { everyProblem } from "./every-problem.ts";
import { loadShelf } from "./shelf-file.ts";
import { readTextFile, readYamlFile, type YamlFile } from "./yaml-file.ts";

/** Daily figures of one station over two centuries fit; anything larger is a mistake. */
const LARGEST_WEATHER_BYTES = 30_000_000;

/** A season as its files say it. */
export interface SeasonFile {
  readonly input: SeasonInput;
  /** Where its record stands, and the name to show for it. */
  readonly log: { readonly path: string; readonly shownAs: string };
}

/** What a season file is read with beside its own words. */
export interface SeasonFileContext {
  readonly io: Io;
  /** The shelf file that was named on the command line: it goes before the season's own. */
  readonly shelf: unknown;
  readonly quantity: QuantityReader;
}

/** Loads a season file and the files it names, which are looked for beside it. */
export async function loadSeason(file: string, context: SeasonFileContext): Promise<Outcome<SeasonFile>> {
  const yaml = await readYamlFile(resolve(context.io.cwd, file), file);
  return yaml.ok ? seasonFrom(yaml.value, file, context) : yaml;
}

/** The season that a YAML text says, with the files it names beside `file`. */
export async function seasonFrom(
  { document, locate }: YamlFile,
  file: string,
  { io, shelf, quantity }: SeasonFileContext,
): Promise<Outcome<SeasonFile>> {
  const named = seasonFiles(document);
  const beside = (name: string): string => (isAbsolute(name) ? name : join(dirname(file), name));
  const shelfNamed = shelf ?? (named.shelf === undefined ? undefined : beside(named.shelf));
  const products: Outcome<Shelf> = await loadShelf(shelfNamed, io, quantity);
  const weather = await loadWeather(named.weather === undefined ? undefined : beside(named.weather), io);
  const { products: kept, components, currency } = products.ok ? products.value : EMPTY_SHELF;
  const input = locate(
    everyProblem(document, (entered) =>
      readSeason(entered, {
        shelf: kept,
        components,
        quantity,
        weather: weather.ok ? weather.value : [],
        ...(currency === undefined ? {} : { currency }),
      }),
    ),
  );
  // A person mends all the files in one go, so all are read whatever is wrong with one of them.
  if (!products.ok || !weather.ok || !input.ok) {
    const own = input.ok ? [] : input.problems.filter((problem) => products.ok || !mayComeOfTheShelf(problem));
    return unusable(...(products.ok ? [] : products.problems), ...(weather.ok ? [] : weather.problems), ...own);
  }
  const log = beside(named.log ?? `${basename(file, extname(file))}.log`);
  const cautions: Caution[] = [...products.cautions, ...weather.cautions, ...input.cautions];
  return answer({ input: input.value, log: { path: resolve(io.cwd, log), shownAs: log } }, cautions, input.working);
}

/** Whether a season could be without this problem if its shelf could be read. */
function mayComeOfTheShelf({ code, path }: Problem): boolean {
  return code === "product-unknown" || (code === "field-missing" && path.endsWith(" products"));
}

async function loadWeather(file: string | undefined, io: Io): Promise<Outcome<readonly DailyTemperature[]>> {
  if (file === undefined) return answer([]);
  const text = await readTextFile(
    resolve(io.cwd, file),
    file,
    "a table of daily temperatures, or a file of the open daily records",
    LARGEST_WEATHER_BYTES,
  );
  if (!text.ok) return text;
  const weather = readWeather(text.value);
  if (weather.ok) return answer(weather.value.rows, weather.cautions, weather.working);
  return unusable(...weather.problems.map((problem) => ({ ...problem, path: `${file} ${problem.path}`.trimEnd() })));
}
