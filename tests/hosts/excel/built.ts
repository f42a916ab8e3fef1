/** The add-in built for tests. */
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import webpack from "webpack";
import { DEFAULT_ORIGIN } from "../../../src/hosts/excel/manifest/model.ts";
import { buildAddIn } from "../../../src/tools/package/build-add-in.ts";
import { withLock } from "../../../src/tools/start/lock.mjs";
import { contentHash, sourceFiles } from "../../../src/tools/start/sources.mjs";

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

/** What the build reads besides the sources. */
const BUILT_FROM = ["webpack.config.mjs", "package.json", "CHANGELOG.md", "LICENSE", "sample-workbooks/first-run.xlsx"];

/** The add-in as it is released. */
export const releasedAddIn = (): Promise<string> => built("released", { origin: DEFAULT_ORIGIN });

/** One that is not minimized: `replace` swaps a module for a deliberately different one. */
export function builtAddIn(
  name: string,
  { replace = [], origin = DEFAULT_ORIGIN }: { replace?: readonly Replacement[]; origin?: string } = {},
): Promise<string> {
  const plugins = replace.map((one, i) => {
    const path = resolve(root, one.file);
    const substitute = resolve(root, `.build/test-addin-${name}-module-${i}.ts`);
    mkdirSync(resolve(root, ".build"), { recursive: true });
    // The query tells the right module from the one to be replaced.
    writeFileSync(substitute, one.source.replaceAll("RIGHT", JSON.stringify(`${path}?right`)));
    const request = new RegExp(`/${one.file.split("/").at(-1)!.replaceAll(".", "\\.")}$`);
    return new webpack.NormalModuleReplacementPlugin(request, substitute);
  });
  return built(name, { origin, plugins: [...plugins, unminimized] }, JSON.stringify(replace));
}

/** Into a folder of its own, by the first test that asks, for all, and again when what it is made of changed. */
async function built(name: string, options: Parameters<typeof buildAddIn>[1], replaced = ""): Promise<string> {
  const output = resolve(root, `.build/test-addin-${name}`);
  mkdirSync(resolve(root, ".build"), { recursive: true });
  await withLock(`${output}.lock`, async () => {
    const files = [...sourceFiles(root), ...BUILT_FROM.map((file) => ({ path: resolve(root, file) }))];
    const made = `${contentHash(files)} ${options?.origin} ${replaced}`;
    const mark = `${output}.hash`;
    if (existsSync(mark) && readFileSync(mark, "utf8") === made) return;
    rmSync(mark, { force: true });
    await buildAddIn(root, { ...options, output });
    writeFileSync(mark, made); // last, so that a build that was ended leaves none
  });
  return output;
}
