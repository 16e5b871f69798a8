// Bundles and runs a benchmark: node packages/nutrient-core/bench/run.mjs [name]
import { rm } from "node:fs/promises";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";

const name = process.argv[2] ?? "blend-engine";
const here = new URL(".", import.meta.url);
const outfile = new URL(`../${name}.bench.tmp.mjs`, here).pathname;
await build({
  entryPoints: [new URL(`${name}.ts`, here).pathname],
  outfile,
  bundle: true,
  platform: "node",
  format: "esm",
  packages: "external",
});
try {
  await import(pathToFileURL(outfile).href);
} finally {
  await rm(outfile, { force: true });
}
