import {
  chmodSync,
  lstatSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import { refuse } from "../../sheet/package/file-refusal.ts";
import { fileFault } from "./file-fault.ts";
import { kindOf } from "./file-kind.ts";

/**
 * Writes beside the file and renames: whoever looks finds the old bytes or the new ones. A run that was killed in between
 * leaves its own file behind; the next one that writes here takes it away. A link stays, and what it leads to is written.
 * Anything that is not a file, a file that may not be written and an ordinary disk fault are a FileRefusal.
 */
export function replaceFile(given: string, content: Uint8Array): void {
  const path = throughLinks(given);
  const before = statSync(path, { throwIfNoEntry: false });
  if (before) checkReplaceable(given, before);
  const temporary = `${path}.${process.pid}.tmp`;
  try {
    removeLeftovers(path);
    writeFileSync(temporary, content, { flag: "wx" });
    if (before) chmodSync(temporary, before.mode);
    renameSync(temporary, path);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw fileFault(given, error, "unwritable") ?? error;
  }
}

/** The file itself where the path is a symbolic link. */
function throughLinks(path: string): string {
  if (!lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink()) return path;
  try {
    return realpathSync(path);
  } catch {
    return refuse("unwritable", path, "a file or a link to one", "a link that leads nowhere");
  }
}

function checkReplaceable(path: string, found: Stats): void {
  if (!found.isFile()) refuse("unwritable", path, "a file", kindOf(found));
  if ((found.mode & 0o222) === 0)
    refuse("unwritable", path, "a file that may be written", "a read-only one", "allow writing or give another name");
}

/** Left by a process that no longer runs. */
function removeLeftovers(path: string): void {
  const start = `${basename(path)}.`;
  for (const name of readdirSync(dirname(path))) {
    const pid = name.startsWith(start) ? /^(\d+)\.tmp$/.exec(name.slice(start.length))?.[1] : undefined;
    if (pid !== undefined && !isRunning(Number(pid))) rmSync(join(dirname(path), name), { force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0); // signal 0 asks and sends nothing
    return true;
  } catch (problem) {
    return (problem as NodeJS.ErrnoException).code === "EPERM"; // another user's
  }
}
