import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** They put another module in a source's place, which only vitest's own loader can. */
const REPLACING = ["tests/bill/broken-fixes.test.ts", "tests/hosts/excel/excel-function.test.ts"];

/**
 * Every file that takes over ten seconds, the longest first. On a fresh clone vitest knows no times and goes by the size
 * of a file: one of the longest, which is short to read, then ran last and alone.
 */
const LONGEST = [
  "hosts/view/page",
  "hosts/excel/microsoft-runtime",
  "bill/money/laws",
  "hosts/view/week/week-page",
  "hosts/install/install",
  "hosts/excel/functions",
  "bill/typed-fixes",
  "bill/ordinary-bill",
  "hosts/command-line/upgrade",
  "hosts/command-line/guard",
  "hosts/pane/pane",
  "tools/sample/workbooks",
  "hosts/command-line/recalc",
  "cells/never",
  "papers/look",
  "hosts/view/session",
  "papers/letters",
  "tools/start/start",
  "calc/bend/order/pose",
  "papers/drawing/cut-layout",
  "bill/one-answer",
  "papers/drawing/layout",
  "tools/fuzz/files",
  "hosts/view/ended",
  "cells/bill/answers",
  "calc/schedule/floor/plan-floor",
  "hosts/pane/excel/pane-in-excel",
  "calc/bend/order/order",
  "tools/sample/levels",
  "hosts/command-line/kill",
  "calc/cutting/plan-cuts",
].map((name) => resolve(import.meta.dirname, `tests/${name}.test.ts`));
for (const path of LONGEST) if (!existsSync(path)) throw new Error(`LONGEST must name files of tests; got ${path}`);

/** So that no worker is left waiting at the end for a long file of the other. */
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const long = LONGEST.flatMap((path) => files.filter(({ moduleId }) => moduleId === path));
    const others = files.filter((file) => !long.includes(file));
    return [...long, ...(await super.sort(others))];
  }
}

export default defineConfig({
  test: {
    sequence: { sequencer: LongestFirst },
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
