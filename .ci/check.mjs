/** Everything a contributor owes, in one go: style, types, floors, unused code, tests, the built packages, sizes. */
import { build } from "./build.mjs";
import { run, setUp, tool } from "./run-step.mjs";

setUp();
const step = (name) => console.log(`\n== ${name}`);

step("style");
tool("biome", ["check", "--config-path=.biome.json", "."]);
step("types");
tool("tsc", ["-p", "packages/nutrient-core/tsconfig.json", "--noEmit"]);
tool("tsc", ["-p", "packages/nutrient-core/tsconfig.test.json"]);
tool("tsc", ["-p", "packages/cli/tsconfig.json"]);
step("floors");
tool("depcruise", ["--config", ".ci/floors.cjs", "packages/nutrient-core/src", "packages/cli/src"]);
step("unused code and dependencies");
tool("knip", ["--config", ".ci/knip.json"]);
step("built packages");
await build();
tool("publint", ["packages/nutrient-core", "--strict", "--pack", "npm"]);
run(process.execPath, [".ci/sizes.mjs"]);
if (!process.argv.includes("--no-tests")) {
  step("tests");
  run(process.execPath, [".ci/test.mjs"]);
}
