/** The page as files to serve: scripts bundled, styles joined. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { build, transform } from "esbuild";
import { BILL_PAGE, type Page, pageHtml, WEEK_PAGE } from "../../hosts/view/html.ts";
import { lastOf } from "../../units/certain.ts";

export interface PageFile {
  readonly type: string;
  readonly content: Uint8Array;
  /** The CSS that stands in a page itself. */
  readonly styles?: string;
}

const SCRIPTS = { page: "src/hosts/view/page.ts", engine: "src/hosts/view/engine-thread.ts" };
const WEEK_SCRIPTS = {
  "week-page": "src/hosts/view/week/week-page.ts",
  "week-engine": "src/hosts/view/week/week-engine.ts",
};
const STYLES = ["src/hosts/pane/pane.css", "src/hosts/view/view.css", "src/hosts/view/grid.css"];
const WEEK_STYLES = [...STYLES, "src/hosts/view/week/week.css"];

/** `root` is the repository's top. */
export async function pageFiles(root: string): Promise<ReadonlyMap<string, PageFile>> {
  return new Map([["", await html(root, BILL_PAGE, STYLES)], ...(await bundled(root, SCRIPTS))]);
}

/** The pages of the bills, and that of their week. */
export async function weekFiles(root: string): Promise<ReadonlyMap<string, PageFile>> {
  return new Map([
    ["", await html(root, BILL_PAGE, STYLES)],
    ["week.html", await html(root, WEEK_PAGE, WEEK_STYLES)],
    ...(await bundled(root, { ...SCRIPTS, ...WEEK_SCRIPTS })),
  ]);
}

async function html(root: string, page: Page, styles: readonly string[]): Promise<PageFile> {
  const joined = styles.map((path) => readFileSync(resolve(root, path), "utf8")).join("\n");
  const { code } = await transform(joined, { loader: "css", minify: true });
  return { type: "text/html; charset=utf-8", content: Buffer.from(pageHtml(page, code.trim())), styles: code.trim() };
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
    { type: "text/javascript; charset=utf-8", content: contents },
  ]);
}
