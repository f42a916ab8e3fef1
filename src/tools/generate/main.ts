/** `npm run generate`: rewrites every generated file; with --check it only says which are stale (exit 1). */
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { generatedFiles } from "./files.ts";

const root = process.cwd();
const checkOnly = process.argv.includes("--check");

let stale = 0;
for (const [file, text] of Object.entries(generatedFiles(root))) {
  const path = `${root}/${file}`;
  if (existsSync(path) && readFileSync(path, "utf8") === text) continue;
  stale++;
  if (checkOnly) console.error(`stale: ${file}; run npm run generate`);
  else writeFileSync(path, text);
}

// The sample is calculated by the functions themselves: a task of its own, built after the catalogue above is written.
const sample = spawnSync(process.execPath, ["src/tools/start/start.mjs", "sample", ...process.argv.slice(2)], {
  cwd: root,
  stdio: "inherit",
});
process.exitCode = (checkOnly && stale > 0) || sample.status !== 0 ? 1 : 0;
