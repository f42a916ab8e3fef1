import { defineConfig } from "vitest/config";

/** They put another module in a source's place, which only vitest's own loader can. */
const REPLACING = ["tests/bill/broken-fixes.test.ts", "tests/hosts/excel/excel-function.test.ts"];

export default defineConfig({
  test: {
    setupFiles: ["tests/seed.ts"],
    // Long enough for a machine that does ten things at once: what takes how long is a question of the benchmarks.
    testTimeout: 120_000,
    hookTimeout: 300_000,
    // Benchmarks and browser checks share two cores on small machines; more workers only make them wait for each other.
    maxWorkers: 2,
    // The files of a worker share what they import: to load the catalogue anew for each took a seventh of the time.
    isolate: false,
    projects: [
      {
        extends: true,
        test: {
          name: "all",
          include: ["tests/**/*.test.ts"],
          exclude: REPLACING,
          execArgv: ["--import", "./tests/native/register.mjs", "--enable-source-maps"],
          server: { deps: { external: [/\/src\/.*\.ts$/] } },
        },
      },
      { extends: true, test: { name: "replacing", include: REPLACING } },
    ],
  },
});
