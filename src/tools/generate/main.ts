/** `npm run generate`: rewrites every generated file; with --check it only says which are stale (exit 1). */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { CATALOGUE_FILE, catalogueSource } from "./catalogue.ts";

const root = process.cwd();
const files: Record<string, string> = { [CATALOGUE_FILE]: catalogueSource(root) };

let stale = 0;
for (const [file, text] of Object.entries(files)) {
  const path = `${root}/${file}`;
  if (existsSync(path) && readFileSync(path, "utf8") === text) continue;
  stale++;
  if (process.argv.includes("--check")) console.error(`stale: ${file}`);
  else writeFileSync(path, text);
}
process.exitCode = process.argv.includes("--check") && stale > 0 ? 1 : 0;
