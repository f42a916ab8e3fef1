/**
 * Builds a task from its TypeScript sources when they have changed, and runs it in this process. A build stands in
 * .build/<task>/<hash of the sources>: it is written aside and renamed when finished, so no run reads half of one.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import module from "node:module";
import { basename } from "node:path";
import { pathToFileURL } from "node:url";
import { contentHash, sourceFiles, stampOf } from "./sources.mjs";
import { TASKS } from "./tasks.mjs";
import { timed } from "./timed.mjs";

const KEPT_MS = 60 * 60_000; // a run that still uses an old build may load one more of its files

export async function runBuilt(root, task, { args, folder }) {
  const main = await builtFile(root, task);
  process.argv = [process.execPath, main, ...args];
  process.env.PROJECT_ROOT = root;
  process.chdir(folder);
  module.enableCompileCache?.(`${root}/.build/cache`); // from Node 22
  await import(pathToFileURL(main).href);
}

/** The file to run, built first if need be. */
async function builtFile(root, task) {
  const home = `${root}/.build/${task.replace(":", "-")}`;
  const files = sourceFiles(root);
  const stamp = stampOf(files);
  const known = readKnown(`${home}/current.json`);
  if (known?.stamp === stamp && existsSync(fileIn(home, known.hash))) return fileIn(home, known.hash);
  const hash = contentHash(files);
  if (!existsSync(fileIn(home, hash))) await timed("build", () => build(root, TASKS[task].source, home, hash));
  writeAtomically(`${home}/current.json`, JSON.stringify({ stamp, hash }));
  return fileIn(home, hash);
}

const fileIn = (home, hash) => `${home}/${hash}/main.js`;

function readKnown(file) {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch {
    return undefined; // none yet, or damaged: the content decides
  }
}

async function build(root, source, home, hash) {
  const esbuild = await import("esbuild");
  const aside = `${home}/unfinished-${process.pid}`;
  mkdirSync(home, { recursive: true });
  try {
    await esbuild.build({
      // Everything lands in one folder, so that new URL("./x.worker.js", import.meta.url) is right from every chunk.
      entryPoints: [{ in: `${root}/src/${source}`, out: "main" }, ...workers(root)],
      outdir: aside,
      bundle: true,
      splitting: true,
      platform: "node",
      target: "node20.19",
      format: "esm",
      packages: "external",
      logLevel: "error",
      absWorkingDir: root,
    });
  } catch (problem) {
    rmSync(aside, { recursive: true, force: true });
    console.error(`src/${source} must build; got ${problem.errors?.length ?? 1} errors`);
    process.exit(70);
  }
  writeFileSync(`${aside}/package.json`, '{"type":"module"}\n');
  moveIntoPlace(aside, `${home}/${hash}`);
  removeOld(home, hash);
  await esbuild.stop?.();
}

/** Files that run in a thread of their own are found by their name: anything.worker.ts becomes anything.worker.js. */
const workers = (root) =>
  sourceFiles(root)
    .filter(({ path }) => path.endsWith(".worker.ts"))
    .map(({ path }) => ({ in: path, out: basename(path, ".ts") }));

function moveIntoPlace(from, to) {
  try {
    renameSync(from, to);
  } catch (problem) {
    if (!existsSync(to)) throw problem;
    rmSync(from, { recursive: true, force: true }); // another run has just built the same
  }
}

function writeAtomically(file, text) {
  const aside = `${file}-${process.pid}`;
  writeFileSync(aside, text);
  renameSync(aside, file);
}

function removeOld(home, hash) {
  for (const name of readdirSync(home)) {
    const path = `${home}/${name}`;
    const age = Date.now() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
    if (name !== hash && name !== "current.json" && age > KEPT_MS) rmSync(path, { recursive: true, force: true });
  }
}
