import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    testTimeout: 60_000,
    // Benchmarks and browser checks share two cores on small machines; more workers only make them wait for each other.
    maxWorkers: 2,
  },
});
