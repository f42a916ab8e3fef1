/**
 * Installs what is missing, builds what has changed, runs the task. Node built-ins only, so that it works on a bare
 * clone. Everything it says itself goes to standard error: standard output belongs to the task.
 */
import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { runBuilt } from "./build.mjs";
import { runChecks } from "./checks.mjs";
import { installWhenMissing } from "./install.mjs";
import { TASKS } from "./tasks.mjs";

const WRONG_USE = 64; // EX_USAGE of sysexits.h

export async function run([task = "", ...args]) {
  const root = resolve(dirname(fileURLToPath(import.meta.url)), "../../..");
  // npm moves to the package's folder and leaves the caller's in INIT_CWD; called directly, the folder is right already.
  const callersFolder = process.cwd() === root ? (process.env.INIT_CWD ?? root) : process.cwd();
  const isCheck = task === "test";
  if (!isCheck && !Object.hasOwn(TASKS, task)) {
    console.error(`task must be one of test, ${Object.keys(TASKS).join(", ")}; got ${task || "nothing"}`);
    process.exitCode = WRONG_USE;
    return;
  }
  await installWhenMissing(root, isCheck || !TASKS[task].alone);
  if (isCheck) process.exitCode = await runChecks(root, args);
  else await runBuilt(root, task, { args, folder: TASKS[task].inRoot ? root : callersFolder });
}
