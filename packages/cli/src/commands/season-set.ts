import { resolve } from "node:path";
import { answer, type Outcome } from "nutrient-core";
import { type SeasonFileContext, seasonFrom } from "../input/season-file.ts";
import { readTextFile, readYaml } from "../input/yaml-file.ts";
import { type Edit, editYaml } from "../record/edit-yaml.ts";
import { writeWhole } from "../record/write-whole.ts";

const LARGEST_BYTES = 2_000_000;

/** Changes fields of a season file; its comments stay, and nothing is written unless the season still reads. */
export async function changeSeason(
  file: string,
  settings: readonly string[],
  context: SeasonFileContext,
): Promise<Outcome<readonly Edit[]>> {
  if (settings.length === 0) return answer([]);
  const path = resolve(context.io.cwd, file);
  const text = await readTextFile(path, file, "a season file that can be read", LARGEST_BYTES);
  if (!text.ok) return text;
  const before = readYaml(text.value, file);
  if (!before.ok) return before;
  const edited = editYaml(text.value, settings);
  if (!edited.ok) return edited;
  const after = readYaml(edited.value.text, file);
  if (!after.ok) return after;
  const season = await seasonFrom(after.value, file, context);
  if (!season.ok) return season;
  const written = await writeWhole(path, edited.value.text, file);
  return written.ok ? answer(edited.value.edits) : written;
}
