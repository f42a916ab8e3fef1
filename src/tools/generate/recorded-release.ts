/** Copies of the sample workbooks as a version went out: later versions must still recalculate them. */
import { cpSync, existsSync, mkdirSync } from "node:fs";
import { basename, join } from "node:path";
import { SAMPLES } from "../sample/file.ts";

export const RELEASED = "tests/recorded/released";

/** Throws where the version has its copies already: what went out never changes. */
export function recordRelease(version: string): void {
  const folder = join(RELEASED, version);
  if (existsSync(folder)) throw new Error(`version must be one without stored samples; got ${version}: ${folder}`);
  mkdirSync(folder, { recursive: true });
  for (const { file } of SAMPLES) cpSync(file, join(folder, basename(file)));
}
