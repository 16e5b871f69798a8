import { defineConfig } from "vitest/config";

// One run over both packages, from their sources ("trug-source" is the export condition that names them).
export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  resolve: { conditions: ["trug-source", "node", "import", "module", "default"] },
  ssr: { resolve: { conditions: ["trug-source", "node", "import", "module", "default"] } },
  test: {
    include: ["packages/*/src/**/*.test.ts", "packages/*/test/**/*.test.ts"],
    pool: "threads",
    typecheck: { enabled: false },
    testTimeout: 60_000,
  },
});
