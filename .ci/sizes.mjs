/** How large the library is once bundled, with and without the expression reader, held to a budget. */
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { ROOT } from "./run-step.mjs";

const PARTS = [
  { name: "library", code: 'export * from "nutrient-core";', mostKilobytes: 150 },
  {
    name: "library with the expression reader",
    code: 'export * from "nutrient-core"; export * from "nutrient-core/expression";',
    mostKilobytes: 190,
  },
  {
    name: "one dose only",
    code: 'export { dose, readDose, readPlainQuantity } from "nutrient-core";',
    mostKilobytes: 60,
  },
];

let over = false;
for (const { name, code, mostKilobytes } of PARTS) {
  const { outputFiles } = await build({
    stdin: { contents: code, resolveDir: `${ROOT}packages/cli` },
    bundle: true,
    minify: true,
    write: false,
    format: "esm",
    target: "es2022",
    conditions: ["trug-source"],
  });
  const [file] = outputFiles;
  const zipped = gzipSync(file.contents).length / 1000;
  const fits = zipped <= mostKilobytes;
  over ||= !fits;
  console.log(
    `${name}: ${(file.contents.length / 1000).toFixed(0)} kB, ${zipped.toFixed(0)} kB zipped (budget ${mostKilobytes})${fits ? "" : "  OVER"}`,
  );
}
process.exit(over ? 1 : 0);
