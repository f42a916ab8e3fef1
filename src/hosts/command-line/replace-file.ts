import { chmodSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";

/**
 * Writes beside the file and renames: whoever looks finds the old bytes or the new ones. A run that was killed in between
 * leaves its own file behind; the next one that writes here takes it away.
 */
export function replaceFile(path: string, content: Uint8Array): void {
  const temporary = `${path}.${process.pid}.tmp`;
  try {
    removeLeftovers(path);
    writeFileSync(temporary, content, { flag: "wx" });
    const before = statSync(path, { throwIfNoEntry: false });
    if (before) chmodSync(temporary, before.mode);
    renameSync(temporary, path);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
}

/** What a process left that is no longer there. */
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
