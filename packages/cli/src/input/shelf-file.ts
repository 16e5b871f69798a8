import { existsSync } from "node:fs";
import { join, resolve } from "node:path";
import { answer, EMPTY_SHELF, type Outcome, type QuantityReader, readShelf, type Shelf } from "nutrient-core";
import type { Io } from "../io.ts";
import { everyProblem } from "./every-problem.ts";
import { readYamlFile } from "./yaml-file.ts";

/** Where the shelf is looked for when none is named: here, then the user's config folder. */
export function shelfPath(named: unknown, io: Io): string | undefined {
  if (typeof named === "string") return resolve(io.cwd, named);
  const config = io.env["XDG_CONFIG_HOME"] ?? join(io.home, ".config");
  return [join(io.cwd, "shelf.yaml"), join(config, "trug", "shelf.yaml")].find((path) => existsSync(path));
}

/** Loads the named shelf, or the first one found; an empty shelf when there is none. */
export async function loadShelf(named: unknown, io: Io, quantity: QuantityReader): Promise<Outcome<Shelf>> {
  const path = shelfPath(named, io);
  if (path === undefined) return answer(EMPTY_SHELF);
  const file = await readYamlFile(path, typeof named === "string" ? named : path);
  if (!file.ok) return file;
  return file.value.locate(everyProblem(file.value.document, (document) => readShelf(document, quantity)));
}
