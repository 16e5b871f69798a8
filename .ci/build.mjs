/** Builds the library (plain modules with types) and the command (a small entry, and a chunk for what each command needs). */
import { renameSync, rmSync } from "node:fs";
import { ROOT, setUp, tool } from "./run-step.mjs";

/**
 * Chunks that the commands share. Reading a file costs about as much as reading ten kilobytes more, so the floors
 * that every command stands on come as two: what the words alone need, and what amounts need.
 */
const SHARED = [
  {
    name: "ground",
    test: (id) =>
      /nutrient-core\/src\/(outcome\/(?!door)|quantity\/(?!expression))/.test(id) ||
      /node_modules\/fast-|cli\/src\/(exit-codes|render\/(hanging|problems))/.test(id),
  },
  {
    name: "floors",
    test: (id) =>
      /nutrient-core\/src\/(outcome|quantity|element|product|supply|solution)\/(?!expression)/.test(id) ||
      /node_modules\/zod|cli\/src\/render\/(spoons|delivered|by-volume|number|rate|printable)\./.test(id),
  },
];

export async function build({ types = true } = {}) {
  setUp();
  const { build: bundle } = await import("rolldown");
  // Built beside the old one and put in its place at once, so that a failed build takes nothing away.
  const fresh = `${ROOT}packages/cli/dist.new`;
  rmSync(fresh, { recursive: true, force: true });
  await bundle({
    input: `${ROOT}packages/cli/src/main.ts`,
    platform: "node",
    resolve: { conditionNames: ["trug-source", "node", "import", "default"] },
    logLevel: "warn",
    output: { dir: fresh, format: "esm", minify: true, codeSplitting: { groups: SHARED } },
  });
  rmSync(`${ROOT}packages/cli/dist`, { recursive: true, force: true });
  renameSync(fresh, `${ROOT}packages/cli/dist`);
  if (!types) return;
  tool("tsc", ["-p", `${ROOT}packages/nutrient-core/tsconfig.json`]);
}

if (process.argv[1] === new URL(import.meta.url).pathname) await build();
