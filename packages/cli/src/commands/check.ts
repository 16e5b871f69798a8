import { resolve } from "node:path";
import {
  type Outcome,
  type Problem,
  planSeason,
  type QuantityReader,
  readShelf,
  readShelfIngredients,
} from "nutrient-core";
import type { TrugCommand } from "../command.ts";
import { EXIT } from "../exit-codes.ts";
import { type SeasonFileContext, seasonFrom } from "../input/season-file.ts";
import { readYamlFile, type YamlFile } from "../input/yaml-file.ts";
import { renderProblems } from "../render/problems.ts";

interface Checked {
  readonly file: string;
  readonly kind: string;
  readonly problems: readonly Problem[];
}

export const checkCommand: TrugCommand = {
  name: "check",
  configure: (command) => command.argument("<file...>", "shelf and season files"),
  examples: ["trug check shelf.yaml season.yaml", "trug check test-data/courtyard/season.yaml --json"],
  run: async (files, options, context) => {
    const quantity = (await import("nutrient-core/expression")).readQuantity;
    const checked: Checked[] = [];
    for (const file of files) {
      const read = await readYamlFile(resolve(context.io.cwd, file), file);
      if (!read.ok) {
        checked.push({ file, kind: "unknown", problems: read.problems });
        continue;
      }
      const kind = kindOf(read.value.document);
      const outcome =
        kind === "season"
          ? await checkSeason(read.value, file, { io: context.io, shelf: options["shelf"], quantity })
          : read.value.locate(checkShelf(read.value.document, quantity));
      checked.push({ file, kind, problems: outcome.ok ? [] : outcome.problems });
    }
    const unusable = checked.some(({ problems }) => problems.length > 0);
    return {
      inputs: { files: [...files] },
      result: { files: checked },
      cautions: [],
      working: [],
      lines: ({ width }) =>
        checked.flatMap(({ file, kind, problems }) =>
          problems.length === 0
            ? [`${file}: usable (${kind})`]
            : [
                `${file}: ${problems.length} ${problems.length === 1 ? "problem" : "problems"}`,
                renderProblems(problems, width).trimEnd(),
              ],
        ),
      exitCode: unusable ? EXIT.unusable : EXIT.answer,
    };
  },
};

/** A season says so, or is known by its places. */
function kindOf(document: unknown): "season" | "shelf" {
  const fields = document !== null && typeof document === "object" ? (document as Record<string, unknown>) : {};
  return fields["kind"] === "season" || (fields["kind"] === undefined && "places" in fields) ? "season" : "shelf";
}

/** A shelf is usable when its products read, and what it has for mixes. */
function checkShelf(document: unknown, quantity: QuantityReader): Outcome<unknown> {
  const shelf = readShelf(document, quantity);
  return shelf.ok ? readShelfIngredients(shelf.value.components, quantity) : shelf;
}

/** A season is usable when it reads, with the files it names, and can be planned. */
async function checkSeason(yaml: YamlFile, file: string, context: SeasonFileContext): Promise<Outcome<unknown>> {
  const season = await seasonFrom(yaml, file, context);
  return season.ok ? yaml.locate(planSeason(season.value.input)) : season;
}
