/** The tests that judge one topic: its own (MUTATED names their folders or files) and the published answers. */
import { defineConfig } from "vitest/config";

const named = (process.env["MUTATED"] ?? "units,calc").split(",");

export default defineConfig({
  test: {
    include: [...named, "reference", "data"].map(
      (each) => `tests/${each.endsWith(".ts") ? each : `${each}/**/*.test.ts`}`,
    ),
    exclude: ["tests/reference/worked-bracket.test.ts"], // starts another program
    testTimeout: 60_000,
    maxWorkers: 1,
  },
});
