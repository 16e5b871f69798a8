import { resolve } from "node:path";
import type { Problem } from "nutrient-core";
import type { Reply } from "../command.ts";
import type { Io } from "../io.ts";
import { writeWhole } from "../record/write-whole.ts";
import { SEASON_EXAMPLE } from "./season-example.ts";

/** Writes an example season file under a name that is still free. */
export async function newSeason(file: string, io: Io): Promise<Reply | { readonly problems: readonly Problem[] }> {
  const written = await writeWhole(resolve(io.cwd, file), SEASON_EXAMPLE, file, "new");
  if (!written.ok) return written;
  return {
    inputs: { file },
    result: { written: [{ kind: "season", file }] },
    cautions: [],
    working: [],
    lines: () => [
      `Wrote ${file}: an example with invented numbers and a word on every field.`,
      `Put in your own, then: trug season ${file}`,
    ],
  };
}
