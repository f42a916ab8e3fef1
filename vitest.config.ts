import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    setupFiles: ["tests/seed.ts"],
    // Long enough for a machine that does ten things at once: what takes how long is a question of the benchmarks.
    testTimeout: 120_000,
    hookTimeout: 300_000,
    // Benchmarks and browser checks share two cores on small machines; more workers only make them wait for each other.
    maxWorkers: 2,
    // The files of a worker share what they import: to load the catalogue anew for each took a seventh of the time.
    isolate: false,
  },
});
