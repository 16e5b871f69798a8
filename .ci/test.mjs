/** Sets up what the tests need, builds, and runs them; extra words go to vitest. Ends with the totals on a line of their own. */

import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "./build.mjs";
import { ROOT } from "./run-step.mjs";

await build();
const folder = mkdtempSync(join(tmpdir(), "trug-test-"));
const report = join(folder, "report.json");
const result = spawnSync(
  `${ROOT}node_modules/.bin/vitest`,
  [
    "run",
    "--config",
    ".ci/vitest.config.ts",
    "--reporter=default",
    "--reporter=json",
    `--outputFile.json=${report}`,
    ...process.argv.slice(2),
  ],
  { cwd: ROOT, stdio: "inherit" },
);
try {
  const { numPassedTests, numFailedTests, numFailedTestSuites } = JSON.parse(readFileSync(report, "utf8"));
  // A file that fails to load fails no test of its own, but it is a failure all the same.
  const failed = Math.max(
    numFailedTests,
    result.status === 0 ? 0 : Math.max(1, numFailedTests, numFailedTestSuites > 0 ? 1 : 0),
  );
  console.log(`${numPassedTests} passed, ${failed} failed`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
process.exit(result.status ?? 1);
