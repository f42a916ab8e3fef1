/** The page as files to serve: scripts bundled, styles joined. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { build } from "esbuild";

export interface PageFile {
  readonly type: string;
  readonly content: Uint8Array;
}

const SCRIPTS = { page: "src/hosts/view/page.ts", engine: "src/hosts/view/engine-thread.ts" };
const STYLES = ["src/hosts/pane/pane.css", "src/hosts/view/view.css", "src/hosts/view/grid.css"];

/** `root` is the repository's top. */
export async function pageFiles(root: string): Promise<ReadonlyMap<string, PageFile>> {
  const { outputFiles } = await build({
    entryPoints: SCRIPTS,
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
  const read = (path: string) => readFileSync(resolve(root, path));
  const styles = STYLES.map((path) => read(path).toString("utf8"));
  return new Map<string, PageFile>([
    ["", { type: "text/html; charset=utf-8", content: read("src/hosts/view/index.html") }],
    ["page.css", { type: "text/css; charset=utf-8", content: Buffer.from(styles.join("\n")) }],
    ...outputFiles.map(({ path, contents }): [string, PageFile] => [
      path.split(/[\\/]/).at(-1)!,
      { type: "text/javascript; charset=utf-8", content: contents },
    ]),
  ]);
}
