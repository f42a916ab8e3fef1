/** The page as files to serve: scripts bundled, styles joined. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { build, transform } from "esbuild";
import { lastOf } from "../../units/certain.ts";

export interface PageFile {
  readonly type: string;
  readonly content: Uint8Array;
}

const SCRIPTS = { page: "src/hosts/view/page.ts", engine: "src/hosts/view/engine-thread.ts" };
const WEEK_SCRIPTS = {
  "week-page": "src/hosts/view/week/week-page.ts",
  "week-engine": "src/hosts/view/week/week-engine.ts",
};
const STYLES = ["src/hosts/pane/pane.css", "src/hosts/view/view.css", "src/hosts/view/grid.css"];

const JAVASCRIPT = "text/javascript; charset=utf-8";
const CSS = "text/css; charset=utf-8";
const HTML = "text/html; charset=utf-8";

/** `root` is the repository's top. */
export async function pageFiles(root: string): Promise<ReadonlyMap<string, PageFile>> {
  const read = (path: string) => readFileSync(resolve(root, path));
  const styles = STYLES.map((path) => read(path).toString("utf8")).join("\n");
  const { code } = await transform(styles, { loader: "css", minify: true });
  return new Map<string, PageFile>([
    ["", { type: HTML, content: read("src/hosts/view/index.html") }],
    ["page.css", { type: CSS, content: Buffer.from(code) }],
    ...(await bundled(root, SCRIPTS)),
  ]);
}

/** The pages of the bills, and that of their week. */
export async function weekFiles(root: string): Promise<ReadonlyMap<string, PageFile>> {
  const read = (path: string) => readFileSync(resolve(root, path));
  return new Map<string, PageFile>([
    ...(await pageFiles(root)),
    ["week.html", { type: HTML, content: read("src/hosts/view/week/week.html") }],
    ["week.css", { type: CSS, content: read("src/hosts/view/week/week.css") }],
    ...(await bundled(root, WEEK_SCRIPTS)),
  ]);
}

async function bundled(root: string, entryPoints: Readonly<Record<string, string>>): Promise<[string, PageFile][]> {
  const { outputFiles } = await build({
    entryPoints,
    outdir: resolve(root, ".build/view"),
    absWorkingDir: root,
    bundle: true,
    splitting: true,
    chunkNames: "[name]-[hash]",
    write: false,
    minify: true,
    format: "esm",
    platform: "browser",
    target: "es2022",
    charset: "utf8",
    logLevel: "error",
  });
  return outputFiles.map(({ path, contents }) => [
    lastOf(path.split(/[\\/]/)),
    { type: JAVASCRIPT, content: contents },
  ]);
}
