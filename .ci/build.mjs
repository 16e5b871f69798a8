/** Builds the library (plain modules with types) and the command (one bundle, a chunk per command). */
import { renameSync, rmSync } from "node:fs";
import { ROOT, setUp, tool } from "./run-step.mjs";

export async function build({ types = true } = {}) {
  setUp();
  const { build: bundle } = await import("esbuild");
  // Built beside the old one and put in its place at once, so that a failed build takes nothing away.
  const fresh = `${ROOT}packages/cli/dist.new`;
  rmSync(fresh, { recursive: true, force: true });
  await bundle({
    entryPoints: [`${ROOT}packages/cli/src/main.ts`],
    outdir: fresh,
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
  rmSync(`${ROOT}packages/cli/dist`, { recursive: true, force: true });
  renameSync(fresh, `${ROOT}packages/cli/dist`);
  if (!types) return;
  tool("tsc", ["-p", `${ROOT}packages/nutrient-core/tsconfig.json`]);
}

if (process.argv[1] === new URL(import.meta.url).pathname) await build();
