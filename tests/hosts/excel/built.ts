/** Builds the add-in for a test into a folder of its own; `replace` swaps a module for a deliberately different one. */
import { mkdirSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import webpack from "webpack";
import { buildAddIn } from "../../../src/tools/package/build-add-in.ts";

const root = process.cwd();

export interface Replacement {
  /** The module's path from the repository's top. */
  readonly file: string;
  /** Source of the module that takes its place; it may import the right one as RIGHT. */
  readonly source: string;
}

/** Minimizing takes most of a build's time and matters only where the bundle is checked as it is released. */
const unminimized: webpack.WebpackPluginInstance = {
  apply: ({ options }) => {
    options.optimization.minimize = false;
  },
};

export async function builtAddIn(
  name: string,
  {
    replace = [],
    released = false,
    origin,
  }: { replace?: readonly Replacement[]; released?: boolean; origin?: string } = {},
): Promise<string> {
  const output = resolve(root, `.build/test-addin-${name}`);
  const plugins = replace.map((one, i) => {
    const path = resolve(root, one.file);
    const substitute = resolve(root, `.build/test-addin-${name}-module-${i}.ts`);
    mkdirSync(resolve(root, ".build"), { recursive: true });
    // The query tells the right module from the one to be replaced.
    writeFileSync(substitute, one.source.replaceAll("RIGHT", JSON.stringify(`${path}?right`)));
    const request = new RegExp(`/${one.file.split("/").at(-1)!.replaceAll(".", "\\.")}$`);
    return new webpack.NormalModuleReplacementPlugin(request, substitute);
  });
  await buildAddIn(root, {
    ...(origin && { origin }),
    output,
    plugins: released ? plugins : [...plugins, unminimized],
  });
  return output;
}
