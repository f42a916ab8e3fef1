/** The tests that judge the arithmetic: lower layers, published answers, examples. None that builds, opens files or throws dice. */
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: [
      "tests/{units,data,calc,reference}/**/*.test.ts",
      "tests/cells/{arguments,broadcast,ordinary-brackets}.test.ts",
      "tests/house-rules/examples.test.ts",
    ],
    exclude: ["tests/reference/worked-bracket.test.ts"],
    testTimeout: 60_000,
    maxWorkers: 1,
  },
});
