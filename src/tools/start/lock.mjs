/** One run at a time: a file that holds the process id of its owner. The lock of a run that died is taken over. */
import { existsSync, linkSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { setTimeout as wait } from "node:timers/promises";

const POLL_MS = 200;
const STALE_MS = 20 * 60_000; // no install takes this long; a process id may have been given to somebody else since

export async function withLock(file, action) {
  let told = false;
  while (!take(file)) {
    if (!told) console.error(`waiting for another run to finish (${file})`);
    told = true;
    removeWhenStale(file);
    await wait(POLL_MS);
  }
  const release = () => rmSync(file, { force: true });
  process.once("exit", release);
  try {
    return await action();
  } finally {
    process.off("exit", release);
    release();
  }
}

function take(file) {
  try {
    writeFileSync(file, String(process.pid), { flag: "wx" });
    return true;
  } catch (problem) {
    if (problem.code === "EEXIST") return false;
    throw problem;
  }
}

/** Moves a stale lock aside before deleting it: of two that find it, only one can; a fresh one moved is put back. */
function removeWhenStale(file) {
  try {
    if (!isStale(file)) return;
    const aside = `${file}-${process.pid}`;
    renameSync(file, aside);
    if (!isStale(aside) && !existsSync(file)) linkSync(aside, file);
    rmSync(aside, { force: true });
  } catch (problem) {
    if (problem.code !== "ENOENT" && problem.code !== "EEXIST") throw problem; // its owner was quicker
  }
}

function isStale(file) {
  const age = Date.now() - statSync(file).mtimeMs;
  const owner = Number(readFileSync(file, "utf8"));
  if (age > STALE_MS) return true;
  if (!Number.isInteger(owner) || owner <= 0) return age > 5_000; // written in two steps: give it time
  return !isAlive(owner);
}

function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (problem) {
    return problem.code === "EPERM";
  }
}
