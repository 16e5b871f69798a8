/** Sets everything up where needed, and runs the demo: a courtyard cafe's season, from its mix to its fruiting feed. */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { build } from "./build.mjs";
import { ROOT, setUp } from "./run-step.mjs";

setUp();
await build({ types: false });
const steps = readFileSync(`${ROOT}test-data/courtyard/demo.txt`, "utf8").split("\n");
for (const step of steps) {
  if (step.startsWith("#")) console.log(`\n${step.slice(1).trim()}`);
  if (!step.startsWith("trug ")) continue;
  console.log(`$ npx ${step}\n`);
  const { status } = spawnSync(process.execPath, [`${ROOT}packages/cli/bin/trug.mjs`, ...wordsOf(step).slice(1)], {
    cwd: ROOT,
    stdio: "inherit",
  });
  if (status !== 0) process.exit(status ?? 1);
}
console.log("\nYour turn: npx trug --help. Every command takes --working (the arithmetic) and --units us.");

/** The words of a command line with double quotes. */
function wordsOf(line) {
  return [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain);
}
