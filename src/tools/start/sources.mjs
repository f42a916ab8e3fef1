/** The sources a build depends on, and two ways to tell whether they changed: a quick one and a sure one. */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, statSync } from "node:fs";

/** Every file below src, and what says which packages and compiler options there are. Sorted by path. */
export function sourceFiles(root) {
  const inSrc = readdirSync(`${root}/src`, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => `${entry.parentPath ?? entry.path}/${entry.name}`);
  return [...inSrc, `${root}/package-lock.json`, `${root}/tsconfig.json`]
    .map((path) => ({ path, stat: statSync(path, { throwIfNoEntry: false }) }))
    .filter(({ stat }) => stat !== undefined)
    .sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** Size and time of every file: what did not change in either did not change. */
export const stampOf = (files) =>
  createHash("sha256")
    .update(files.map(({ path, stat }) => `${path} ${stat.size} ${stat.mtimeMs}`).join("\n"))
    .digest("hex");

/** The contents: a fresh checkout of the same commit has the same hash, whatever its times. */
export function contentHash(files) {
  const hash = createHash("sha256").update(process.versions.node);
  for (const { path } of files) hash.update(`\n${path}\n`).update(readFileSync(path));
  return hash.digest("hex").slice(0, 20);
}
