/** The judge of the published answers in one script, with a switch at every figure of src/data and src/calc. */
import { readFileSync } from "node:fs";
import { relative } from "node:path";
import { build, transform } from "esbuild";
import { firstOf } from "../../units/certain.ts";
import { type Constant, switched } from "./constants.ts";

const MEASURED = /[\\/]src[\\/](?:data|calc)[\\/].*\.ts$/;

export interface SwitchedBundle {
  /** The body of a function of ($figure, module, require) that fills module.exports. */
  readonly code: string;
  readonly constants: readonly Constant[];
}

export async function switchedBundle(root: string, entry: string): Promise<SwitchedBundle> {
  const constants: Constant[] = [];
  const { outputFiles } = await build({
    entryPoints: [`${root}/${entry}`],
    bundle: true,
    write: false,
    platform: "node",
    format: "cjs",
    external: ["node:*"],
    logLevel: "error",
    plugins: [
      {
        name: "switches",
        setup: (building) => {
          building.onLoad({ filter: MEASURED }, async ({ path }) => {
            const { code } = await transform(readFileSync(path, "utf8"), { loader: "ts" });
            const file = relative(root, path).replaceAll("\\", "/");
            const found = switched(code, file, constants.length);
            constants.push(...found.constants);
            return { contents: found.code, loader: "js" };
          });
        },
      },
    ],
  });
  return { code: firstOf(outputFiles).text, constants };
}
