/**
 * Builds the add-in into dist: functions.js (the catalogue, registered in Excel), pane.js (the page, which uses the
 * functions' own copy of the catalogue), the page itself, and what is made from the catalogue: functions.json, both
 * manifests, icons, notices. The environment variable ORIGIN says where dist will be served.
 */
import { readFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import CopyPlugin from "copy-webpack-plugin";
import { build } from "esbuild";
import HtmlPlugin from "html-webpack-plugin";

const root = dirname(fileURLToPath(import.meta.url));
const OLDEST_ENGINE = "es2022"; // a shared runtime needs WebView2 or a WebKit of that age

export default async function config({ origin, output, plugins = [] } = {}) {
  const generator = await loadGenerator();
  return {
    mode: "production",
    target: ["web", OLDEST_ENGINE],
    context: root,
    devtool: false,
    entry: {
      functions: "./src/hosts/excel/functions.ts",
      pane: { import: "./src/hosts/pane/pane.ts", dependOn: "functions" },
    },
    output: { path: output ?? resolve(root, "dist"), filename: "[name].js", globalObject: "globalThis", clean: true },
    // Webpack's own minimizer drops what nobody calls; the one of esbuild-loader left half as much again.
    module: { rules: [{ test: /\.ts$/, loader: "esbuild-loader", options: { target: OLDEST_ENGINE } }] },
    plugins: [
      new HtmlPlugin({
        template: "./src/hosts/pane/taskpane.html",
        filename: "taskpane.html",
        chunks: ["functions", "pane"],
        hash: true, // a browser's old copy of the scripts must not outlive an update
      }),
      new CopyPlugin({ patterns: ["./src/hosts/pane/pane.css", "./src/hosts/pane/about.html"] }),
      new CataloguePlugin(generator, origin ?? process.env.ORIGIN ?? generator.DEFAULT_ORIGIN),
      ...plugins,
    ],
    performance: { hints: false }, // the size limits are a test
    stats: "errors-warnings",
  };
}

/** Adds to the output what the catalogue itself makes, and the notices of the packages that were bundled. */
class CataloguePlugin {
  constructor(generator, origin) {
    Object.assign(this, { generator, origin });
  }

  apply(compiler) {
    const { RawSource } = compiler.webpack.sources;
    compiler.hooks.thisCompilation.tap("CataloguePlugin", (compilation) => {
      // Before the optimizer joins modules, each still knows the file it came from.
      let bundled = [];
      compilation.hooks.finishModules.tap("CataloguePlugin", (modules) => {
        bundled = [...modules].map(({ resource }) => resource).filter(Boolean);
      });
      compilation.hooks.processAssets.tap("CataloguePlugin", () => {
        const project = JSON.parse(readFileSync(resolve(root, "package.json"), "utf8"));
        const files = this.generator.distFiles(project, this.origin);
        files["third-party-notices.txt"] = this.generator.notices(bundled);
        for (const [path, content] of Object.entries(files)) compilation.emitAsset(path, new RawSource(content));
      });
    });
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
