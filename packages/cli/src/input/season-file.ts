import { basename, dirname, extname, isAbsolute, join, resolve } from "node:path";
import {
  answer,
  type Caution,
  type DailyTemperature,
  type Outcome,
  type QuantityReader,
  readSeason,
  readWeather,
  type SeasonInput,
  type Shelf,
  seasonFiles,
  unusable,
} from "nutrient-core";
import type { Io } from "../io.ts";
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
  if (!products.ok) return products;
  const weather = await loadWeather(named.weather === undefined ? undefined : beside(named.weather), io);
  if (!weather.ok) return weather;
  const { currency } = products.value;
  const input = locate(
    readSeason(document, {
      shelf: products.value.products,
      quantity,
      weather: weather.value,
      ...(currency === undefined ? {} : { currency }),
    }),
  );
  if (!input.ok) return input;
  const log = beside(named.log ?? `${basename(file, extname(file))}.log`);
  const cautions: Caution[] = [...products.cautions, ...weather.cautions, ...input.cautions];
  return answer({ input: input.value, log: { path: resolve(io.cwd, log), shownAs: log } }, cautions, input.working);
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
