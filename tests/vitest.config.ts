import { defineConfig } from "vitest/config";

const conditions = ["ullage-source", "node", "import", "default"];

export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: conditions } },
  test: {
    include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
    pool: "threads",
    maxWorkers: 2,
    setupFiles: ["tests/support/property-seed.ts"],
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
