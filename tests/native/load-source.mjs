/** Loads one source: its types are taken away; line and column of a fault stay those of the file. */
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { transform } from "esbuild";

export async function load(url, context, nextLoad) {
  if (!url.endsWith(".ts")) return nextLoad(url, context);
  const sourcefile = fileURLToPath(url);
  const { code } = await transform(await readFile(sourcefile, "utf8"), {
    loader: "ts",
    target: "node20.19",
    sourcefile,
    sourcemap: "inline",
  });
  return { format: "module", source: code, shortCircuit: true };
}
