/** Builds the library (plain modules with types) and the command (one bundle, a chunk per command). */
import { rmSync } from "node:fs";
import { ROOT, setUp, tool } from "./run-step.mjs";

export async function build({ types = true } = {}) {
  setUp();
  const { build: bundle } = await import("esbuild");
  rmSync(`${ROOT}packages/cli/dist`, { recursive: true, force: true });
  await bundle({
    entryPoints: [`${ROOT}packages/cli/src/main.ts`],
    outdir: `${ROOT}packages/cli/dist`,
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    target: "node20.19",
    conditions: ["trug-source"],
    minify: true,
    legalComments: "none",
    // commander is CommonJS and asks for Node's own modules by require.
    banner: {
      js: 'import { createRequire as $require } from "node:module"; const require = $require(import.meta.url);',
    },
    logLevel: "warning",
  });
  if (!types) return;
  rmSync(`${ROOT}packages/nutrient-core/dist`, { recursive: true, force: true });
  tool("tsc", ["-p", `${ROOT}packages/nutrient-core/tsconfig.json`]);
}

if (process.argv[1] === new URL(import.meta.url).pathname) await build();
