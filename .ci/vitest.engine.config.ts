import { defineConfig } from "vitest/config";

// The engine's own tests alone, for the mutation run (see stryker.config.json).
export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  test: {
    include: ["packages/nutrient-core/src/blend/engine/*.test.ts"],
    pool: "threads",
    testTimeout: 60_000,
  },
});
