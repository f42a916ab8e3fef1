/** The command line as it is shipped: bundled into a folder of its own. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";

/** The path of the bundle that node runs. */
export async function builtCommand(home: string): Promise<string> {
  writeFileSync(join(home, "package.json"), '{"type":"module"}');
  await build({
    entryPoints: ["main.ts", "command.worker.ts", "recalc.worker.ts"].map((name) => `src/hosts/command-line/${name}`),
    bundle: true,
    platform: "node",
    format: "esm",
    outdir: home,
    logLevel: "error",
    banner: {
      js: 'import { createRequire as nodeRequire } from "node:module"; const require = nodeRequire(import.meta.url);',
    },
  });
  return join(home, "main.js");
}
