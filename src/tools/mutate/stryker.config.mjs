/**
 * Mutation testing. What is not mutated, and why: words (messages and steps of the working are judged by
 * the grammar tests and read by people), and what runs once at load (constants: `npm run mutate:constants` changes those).
 * @type {import("@stryker-mutator/api/core").PartialStrykerOptions}
 */
export default {
  testRunner: "vitest",
  vitest: { configFile: "src/tools/mutate/vitest.config.ts", related: false },
  coverageAnalysis: "perTest",
  mutator: { excludedMutations: ["StringLiteral"] },
  ignoreStatic: true,
  ignorePatterns: ["dist", ".build"],
  tsconfigFile: "none", // its rewriting needs a compiler interface that TypeScript 7 no longer has
  tempDirName: ".build/stryker",
  incremental: true,
  incrementalFile: ".build/stryker-incremental.json",
  reporters: ["clear-text", "json", "progress-append-only"],
  clearTextReporter: { allowColor: false, reportTests: false, reportScoreTable: false, logTests: false },
  jsonReporter: { fileName: ".build/mutation.json" },
  concurrency: 2,
  testRunnerNodeArgs: ["--max-old-space-size=2048"],
  // A machine that does ten things at once must not seem to notice a change: ten times what a change usually takes.
  timeoutMS: 20_000,
  timeoutFactor: 5,
};
