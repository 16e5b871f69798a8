import { resolve } from "node:path";
import { type Problem, readShelf } from "nutrient-core";
import type { TrugCommand } from "../command.ts";
import { EXIT } from "../exit-codes.ts";
import { readYamlFile } from "../input/yaml-file.ts";
import { renderProblems } from "../render/problems.ts";

interface Checked {
  readonly file: string;
  readonly kind: string;
  readonly problems: readonly Problem[];
}

export const checkCommand: TrugCommand = {
  name: "check",
  configure: (command) => command.argument("<file...>", "shelf files"),
  examples: ["trug check shelf.yaml", "trug check test-data/courtyard/shelf.yaml --json"],
  run: async (files, _options, context) => {
    const quantity = (await import("nutrient-core/expression")).readQuantity;
    const checked: Checked[] = [];
    for (const file of files) {
      const read = await readYamlFile(resolve(context.io.cwd, file), file);
      if (!read.ok) {
        checked.push({ file, kind: "unknown", problems: read.problems });
        continue;
      }
      const shelf = read.value.locate(readShelf(read.value.document, quantity));
      checked.push({ file, kind: "shelf", problems: shelf.ok ? [] : shelf.problems });
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
