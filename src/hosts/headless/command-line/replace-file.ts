import { chmodSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";

/** Writes beside the target and renames: whoever looks sees the old file or the new one, never half of it. */
export function replaceFile(path: string, content: Uint8Array): void {
  const temporary = `${path}.${process.pid}.tmp`;
  try {
    writeFileSync(temporary, content, { flag: "wx" });
    const before = statSync(path, { throwIfNoEntry: false });
    if (before) chmodSync(temporary, before.mode);
    renameSync(temporary, path);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
}
