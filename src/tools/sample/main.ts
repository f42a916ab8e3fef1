/** The last step of `npm run generate`: rewrites the sample workbooks. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { SAMPLES, sampleBytes } from "./file.ts";

for (const sample of SAMPLES) {
  const { file } = sample;
  const bytes = sampleBytes(sample);
  if (existsSync(file) && readFileSync(file).equals(bytes)) continue;
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, bytes);
}
