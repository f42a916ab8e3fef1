/** The tests that judge one topic: MUTATED names their folders or files below tests. */
import { defineConfig } from "vitest/config";
import { oneModule } from "./one-module.ts";

const named = (process.env["MUTATED"] ?? "units calc reference").split(" ");

export default defineConfig({
  plugins: [oneModule],
  test: {
    include: named.map((each) => `tests/${each.endsWith(".ts") ? each : `${each}/**/*.test.ts`}`),
    exclude: ["tests/reference/worked-bracket.test.ts"], // starts another program
    setupFiles: ["tests/seed.ts", "src/tools/mutate/whole-file.ts"],
    testTimeout: 60_000,
    maxWorkers: 1,
  },
});
