/** The tests that judge one topic: its own (MUTATED names their folders) and the published answers. */
import { defineConfig } from "vitest/config";

const folders = (process.env["MUTATED"] ?? "units,calc").split(",");

export default defineConfig({
  test: {
    include: [...folders, "reference", "data"].map((folder) => `tests/${folder}/**/*.test.ts`),
    exclude: ["tests/reference/worked-bracket.test.ts"], // starts another program
    testTimeout: 60_000,
    maxWorkers: 1,
  },
});
