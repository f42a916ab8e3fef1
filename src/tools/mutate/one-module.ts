/**
 * A test file and all sources it needs as one module, loaded at once. To fetch them one by one took most of the time of a
 * change, and a change needs them loaded anew: what a source remembers from another change must not answer for this one.
 * A file that a change keeps from loading has no tests left to fail; it gets one, so that the change is noticed.
 */
import { build } from "esbuild";
import type { Plugin } from "vitest/config";
import { firstOf } from "../../units/certain.ts";

const WHOLE = "?whole";

const loaded = (id: string): string => `
import { test } from "vitest";
try {
  await import(${JSON.stringify(id + WHOLE)});
} catch (error) {
  delete globalThis.__vitest_worker__.config.testNamePattern; // names the tests that the change is in
  test("the file loads", () => {
    throw error;
  });
}
`;

async function whole(id: string): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [id],
    bundle: true,
    write: false,
    platform: "node",
    format: "esm",
    packages: "external", // vitest and fast-check are those of the setup files, too
    logLevel: "error",
  });
  return firstOf(outputFiles).text;
}

export const oneModule: Plugin = {
  name: "one-module",
  enforce: "pre",
  load: (id) =>
    id.endsWith(".test.ts")
      ? loaded(id)
      : id.endsWith(`.test.ts${WHOLE}`)
        ? whole(id.slice(0, -WHOLE.length))
        : undefined,
};
