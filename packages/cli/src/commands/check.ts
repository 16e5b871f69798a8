import { resolve } from "node:path";
import {
  answer,
  type Outcome,
  type Problem,
  planSeason,
  type QuantityReader,
  readShelf,
  readShelfIngredients,
  unusable,
} from "nutrient-core";
import type { TrugCommand } from "../command.ts";
import { EXIT } from "../exit-codes.ts";
import { everyProblem } from "../input/every-problem.ts";
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
          : read.value.locate(everyProblem(read.value.document, (document) => checkShelf(document, quantity)));
      checked.push({ file, kind, problems: outcome.ok ? [] : inOrderOfLines(outcome.problems) });
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
                ...renderProblems(problems, width).trimEnd().split("\n"),
              ],
        ),
      exitCode: unusable ? EXIT.unusable : EXIT.answer,
    };
  },
};

/** From the top of each file to its end, as a person mends it; the files in the order in which they were read. */
function inOrderOfLines(problems: readonly Problem[]): readonly Problem[] {
  const placed = problems.map((problem) => {
    const [, file = problem.path, line = "0", column = "0"] = /^(.*?):(\d+):(\d+)/.exec(problem.path) ?? [];
    return { problem, file, place: [Number(line), Number(column)] as const };
  });
  const files = [...new Set(placed.map(({ file }) => file))];
  return placed
    .sort((a, b) => files.indexOf(a.file) - files.indexOf(b.file) || a.place[0] - b.place[0] || a.place[1] - b.place[1])
    .map(({ problem }) => problem);
}

/** A season says so, or is known by its places. */
function kindOf(document: unknown): "season" | "shelf" {
  const fields = document !== null && typeof document === "object" ? (document as Record<string, unknown>) : {};
  return fields["kind"] === "season" || (fields["kind"] === undefined && "places" in fields) ? "season" : "shelf";
}

/** A shelf is usable when its products read, and what it has for mixes. */
function checkShelf(document: unknown, quantity: QuantityReader): Outcome<unknown> {
  const shelf = readShelf(document, quantity);
  const { components } = (document ?? {}) as { readonly components?: unknown };
  const ingredients = Array.isArray(components) ? readShelfIngredients(components, quantity) : answer([]);
  if (shelf.ok) return ingredients;
  return unusable(...shelf.problems, ...(ingredients.ok ? [] : ingredients.problems));
}

/** A season is usable when it reads, with the files it names, and can be planned. */
async function checkSeason(yaml: YamlFile, file: string, context: SeasonFileContext): Promise<Outcome<unknown>> {
  const season = await seasonFrom(yaml, file, context);
  return season.ok ? yaml.locate(planSeason(season.value.input)) : season;
}
