/** The stand-in as a script for a page, and the page opened with it. */
import { build, type Plugin } from "esbuild";

/** office-addin-mock asks the manifest package for the names of the hosts only; the rest of it needs Node. */
const namesOnly: Plugin = {
  name: "names-only",
  setup: ({ onResolve, onLoad }) => {
    onResolve({ filter: /^office-addin-manifest$/ }, () => ({ path: "names", namespace: "names" }));
    onLoad({ filter: /.*/, namespace: "names" }, () => ({
      contents: 'exports.OfficeApp = { Excel: "excel", Outlook: "outlook" }; exports.getOfficeApps = () => [];',
    }));
  },
};

/** Sets `fake` (the workbook) and `Excel`. A SHOP call answers 0.2, everything else #NAME?. */
export async function standInScript(sheets: object): Promise<string> {
  const { outputFiles } = await build({
    stdin: {
      contents: `import { FakeWorkbook, standIn } from "./stand-in.ts";
        globalThis.fake = new FakeWorkbook(${JSON.stringify(sheets)}, (formula) => /^=SHOP\\./.test(formula) ? 0.2 : "#NAME?");
        globalThis.Excel = standIn(globalThis.fake);`,
      resolveDir: "tests/hosts/pane/excel",
      loader: "ts",
    },
    bundle: true,
    write: false,
    format: "iife",
    platform: "browser",
    plugins: [namesOnly],
    logLevel: "error",
  });
  return outputFiles[0]!.text;
}
