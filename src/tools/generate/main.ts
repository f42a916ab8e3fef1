/** `npm run generate`: rewrites every generated file; the tests say which are stale. */
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { generatedFiles } from "./files.ts";

const root = process.cwd();

for (const [file, text] of Object.entries(generatedFiles(root))) {
  const path = `${root}/${file}`;
  if (!existsSync(path) || readFileSync(path, "utf8") !== text) writeFileSync(path, text);
}

// The sample is calculated by the functions themselves: a task of its own, built after the catalogue above is written.
const sample = spawnSync(process.execPath, ["src/tools/start/start.mjs", "sample"], {
  cwd: root,
  stdio: "inherit",
});
process.exitCode = sample.status === 0 ? 0 : 1;
