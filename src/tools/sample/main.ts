/** The last step of `npm run generate`: rewrites the sample workbook; with --check it only says whether it is stale. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { SAMPLE_FILE, sampleBytes } from "./file.ts";

const bytes = sampleBytes();
const isFresh = existsSync(SAMPLE_FILE) && readFileSync(SAMPLE_FILE).equals(bytes);
if (!isFresh && process.argv.includes("--check")) {
  console.error(`stale: ${SAMPLE_FILE}; run npm run generate`);
  process.exitCode = 1;
} else if (!isFresh) {
  mkdirSync(dirname(SAMPLE_FILE), { recursive: true });
  writeFileSync(SAMPLE_FILE, bytes);
}
