/** Installs the packages of the lock file when they are not there yet, once, even when two runs start together. */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { withLock } from "./lock.mjs";
import { timed } from "./timed.mjs";

/** `whole`: the task needs what developing needs too; else the packages that the product runs on will do. */
export async function installWhenMissing(root, whole) {
  if (isInstalled(root, whole)) return;
  await withLock(`${root}/.install-lock`, () => {
    if (isInstalled(root, whole)) return; // the run before us did it
    // What was whole stays whole: who develops changes the lock file and runs the shop before the tests.
    const all = whole || markOf(root).endsWith(WHOLE);
    timed(all ? "install of all packages" : "install of what it runs on", () => install(root, all));
  });
}

/** Written last, so that an interrupted install leaves none. Names the lock file it belongs to, the machine, how much. */
const markFile = (root) => `${root}/node_modules/.installed`;
const markOf = (root) => (existsSync(markFile(root)) ? readFileSync(markFile(root), "utf8") : "");
const WHOLE = "whole\n";

function wantedMark(root, whole) {
  const hash = createHash("sha256")
    .update(readFileSync(`${root}/package-lock.json`))
    .digest("hex");
  return `${hash} ${process.platform} ${process.arch} ${whole ? WHOLE : "without development\n"}`;
}

function isInstalled(root, whole) {
  const packages = JSON.parse(readFileSync(`${root}/package-lock.json`, "utf8")).packages;
  // A time stamp alone would not notice a node_modules that somebody deleted halfway.
  const direct = Object.keys({ ...packages[""].dependencies, ...(whole ? packages[""].devDependencies : {}) });
  if (!direct.every((name) => existsSync(`${root}/node_modules/${name}/package.json`))) return false;
  const mark = markOf(root);
  if (mark === wantedMark(root, true) || (!whole && mark === wantedMark(root, false))) return true;
  if (!npmAgrees(root, packages, whole)) return false;
  if (whole) writeFileSync(markFile(root), wantedMark(root, true));
  return true;
}

/** Somebody may have run npm by hand: its own record then lists every package of our lock file. */
function npmAgrees(root, wanted, whole) {
  const file = `${root}/node_modules/.package-lock.json`;
  if (!existsSync(file)) return false;
  const found = JSON.parse(readFileSync(file, "utf8")).packages;
  return Object.entries(wanted).every(
    ([path, { version, optional, dev }]) =>
      path === "" || optional || (dev && !whole) || (found[path]?.version === version && existsSync(`${root}/${path}`)),
  );
}

/**
 * `npm ci` for the second, whole install too: it unpacks everything anew, where `npm install` takes a package that an
 * interrupted run left half unpacked for a whole one; and it never writes the lock file.
 */
function install(root, whole) {
  rmSync(markFile(root), { force: true });
  const npm = process.env.npm_execpath; // the npm that started us, where one did
  const command = npm?.endsWith("js") ? [process.execPath, npm] : ["npm"];
  // No package needs its install script; without them nothing foreign runs during an install.
  // `npm run -s` would silence the npm below it too, its errors included.
  const much = whole ? "--include=dev" : "--omit=dev";
  const args = ["ci", much, "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=notice"];
  const { status, error } = spawnSync(command[0], [...command.slice(1), ...args], {
    cwd: root,
    stdio: ["ignore", 2, 2],
    shell: process.platform === "win32" && command.length === 1,
  });
  if (status !== 0) {
    console.error(`npm ${args.join(" ")} must succeed; got ${error?.message ?? `exit ${status}`}`);
    process.exit(status || 1);
  }
  writeFileSync(markFile(root), wantedMark(root, whole));
}
