import { defineConfig } from "vitest/config";
import { LongestFirst } from "./support/longest-first.ts";

const conditions = ["ullage-source", "node", "import", "default"];
const resolved = {
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: conditions } },
};
const each = { setupFiles: ["tests/support/property-seed.ts"], testTimeout: 30_000, hookTimeout: 60_000 };

const SCREENS = "tests/browser/**/*.test.ts";
const WORDS = ["tests/web/**/*.test.ts", "tests/words/**/*.test.ts"];

/**
 * Reading the program anew for every file takes longer than most files run, so files share a worker's modules: what a file
 * needs it makes for itself, and leaves no variable of a module behind. Modules of the screens do hold the language.
 */
export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  test: {
    maxWorkers: 2,
    globalSetup: ["tests/support/run-folder.ts"],
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        ...resolved,
        // A process, as it ends the browser that it started.
        test: { ...each, name: "screens", include: [SCREENS], pool: "forks", isolate: false },
      },
      {
        ...resolved,
        test: {
          ...each,
          name: "program",
          include: ["tests/**/*.test.ts"],
          exclude: [SCREENS, ...WORDS],
          pool: "threads",
          isolate: false,
        },
      },
      { ...resolved, test: { ...each, name: "words", include: WORDS, pool: "threads" } },
    ],
  },
});
