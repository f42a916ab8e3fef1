/**
 * Builds the add-in into dist: functions.js (the catalogue, registered in Excel), pane.js (the page, which uses the
 * functions' own copy of the catalogue), line.js (the bill's line under the selection, loaded once the page stands),
 * long.js (the worker for long calls), install.js, the pages themselves, and what is made from the catalogue:
 * functions.json, both manifests, icons, notices. The environment variable ORIGIN says where dist is served.
 */
import { readFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import CopyPlugin from "copy-webpack-plugin";
import { build } from "esbuild";
import HtmlPlugin from "html-webpack-plugin";
import webpack from "webpack";

const root = dirname(fileURLToPath(import.meta.url));
const OLDEST_ENGINE = "es2022"; // a shared runtime needs WebView2 or a WebKit of that age

export default async function config({ origin, output, plugins = [] } = {}) {
  const generator = await loadGenerator();
  const common = {
    mode: "production",
    target: ["web", OLDEST_ENGINE],
    context: root,
    devtool: false,
    // Webpack's own minimizer drops what nobody calls; the one of esbuild-loader left half as much again.
    module: { rules: [{ test: /\.ts$/, loader: "esbuild-loader", options: { target: OLDEST_ENGINE } }] },
    // Shortest ids: nothing is kept from one build to the next that would need steady ones.
    optimization: { moduleIds: "size", chunkIds: "size", mangleExports: "size" },
    performance: { hints: false }, // the size limits are a test
    stats: "errors-warnings",
  };
  const path = output ?? resolve(root, "dist");
  const files = {
    path,
    filename: "[name].js",
    chunkFilename: "[name].js?[contenthash]",
    globalObject: "globalThis",
    publicPath: "",
  };
  const add = new AddedFiles();
  const page = {
    ...common,
    name: "page",
    entry: {
      functions: "./src/hosts/excel/functions.ts",
      pane: { import: "./src/hosts/pane/pane.ts", dependOn: "functions" },
    },
    output: { ...files, clean: true },
    plugins: [
      new HtmlPlugin({
        template: "./src/hosts/pane/taskpane.html",
        filename: "taskpane.html",
        chunks: ["functions", "pane"],
        hash: true, // a browser's old copy of the scripts must not outlive an update
      }),
      new CopyPlugin({
        patterns: [
          "./src/hosts/pane/pane.css",
          "./src/hosts/pane/about.html",
          { from: "./CHANGELOG.md", to: "changelog.txt" },
          { from: "./sample-workbooks/first-run.xlsx", to: "first-run.xlsx" },
          { from: "./LICENSE", to: "license.txt", toType: "file" },
        ],
      }),
      ...generator.outlineModules().map(outlineInstead),
      add.plugin(() => generator.distFiles(projectFile(), origin ?? process.env.ORIGIN ?? generator.DEFAULT_ORIGIN)),
      ...plugins,
    ],
  };
  // Compiled apart: what it shared with functions.js, which every workbook loads, would make that one larger.
  const install = {
    ...common,
    name: "install",
    dependencies: ["page"], // which empties the folder first
    entry: { install: "./src/hosts/install/install.ts" },
    output: files,
    plugins: [
      new HtmlPlugin({
        template: "./src/hosts/install/install.html",
        filename: "install.html",
        hash: true,
      }),
      ...generator.outlineModules().map(outlineInstead),
      add.plugin(() => ({})),
      ...plugins,
    ],
  };
  const worker = {
    ...common,
    name: "worker",
    dependencies: ["install"],
    entry: { long: "./src/hosts/excel/long.ts" },
    output: files,
    plugins: [add.plugin(() => ({ "third-party-notices.txt": generator.notices(add.bundled) })), ...plugins],
  };
  return [page, install, worker];
}

const projectFile = () => JSON.parse(readFileSync(resolve(root, "package.json"), "utf8"));

/** Puts a long record's outline where the record itself would be bundled. */
const outlineInstead = ({ file, source }) => {
  const text = source(resolve(root, "src/hosts/excel/outlined.ts"));
  const request = new RegExp(`/functions/${file.replaceAll(".", "\\.")}$`);
  return new webpack.NormalModuleReplacementPlugin(request, `data:text/javascript,${encodeURIComponent(text)}`);
};

/** Adds files that are not bundled, and remembers which sources were. */
class AddedFiles {
  bundled = new Set();

  plugin(makeFiles) {
    const apply = (compiler) => {
      compiler.hooks.thisCompilation.tap("AddedFiles", (compilation) => {
        // Before the optimizer joins modules, each still knows the file it came from.
        compilation.hooks.finishModules.tap("AddedFiles", (modules) => {
          for (const { resource } of modules) if (resource) this.bundled.add(resource);
        });
        compilation.hooks.processAssets.tap("AddedFiles", () => {
          for (const [path, content] of Object.entries(makeFiles()))
            compilation.emitAsset(path, new compiler.webpack.sources.RawSource(content));
        });
      });
    };
    return { apply };
  }
}

/** The catalogue is TypeScript and Node 20 runs none: it is bundled in memory and loaded from there. */
async function loadGenerator() {
  const { outputFiles } = await build({
    entryPoints: [resolve(root, "src/tools/package/dist-files.ts")],
    bundle: true,
    write: false,
    platform: "node",
    format: "esm",
    target: "node20.19",
    absWorkingDir: root,
    logLevel: "error",
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`);
}
