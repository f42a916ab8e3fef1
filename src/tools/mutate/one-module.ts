/**
 * A test file and all sources it needs as one module, loaded at once. To fetch them one by one took most of the time of a
 * change, and a change needs them loaded anew: what a source remembers from another change must not answer for this one.
 */
import { build } from "esbuild";
import type { Plugin } from "vitest/config";
import { firstOf } from "../../units/certain.ts";

export const oneModule: Plugin = {
  name: "one-module",
  enforce: "pre",
  async load(id) {
    if (!id.endsWith(".test.ts")) return undefined;
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
  },
};
