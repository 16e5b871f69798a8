import { defineConfig } from "vitest/config";

// The engine's own tests alone, for the mutation run (see stryker.config.json).
export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  test: {
    include: ["packages/nutrient-core/src/blend/engine/*.test.ts"],
    pool: "threads",
    // Each mutant runs them anew, so a start that is shared counts 2,700 times.
    isolate: false,
    testTimeout: 60_000,
  },
});
