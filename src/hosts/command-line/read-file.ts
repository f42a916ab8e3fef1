import { readFileSync, type Stats, statSync } from "node:fs";
import { refuse } from "../../sheet/package/file-refusal.ts";
import { callerPath } from "./caller.ts";
import { fileFault } from "./file-fault.ts";
import { kindOf } from "./file-kind.ts";

/** No workbook that can be unpacked and no shop's part list is larger. */
const MOST_BYTES = 512 * 1024 * 1024;

/** The bytes of a file as a person named it. What is no file, too large or not to be read is a FileRefusal. */
export function bytesOf(given: string, most = MOST_BYTES): Uint8Array {
  const path = callerPath(given);
  try {
    checkReadable(given, statSync(path), most);
    return new Uint8Array(readFileSync(path));
  } catch (error) {
    throw fileFault(given, error, "unreadable") ?? error;
  }
}

/** A pipe or a device may never end. */
function checkReadable(given: string, found: Stats, most: number): void {
  if (!found.isFile()) refuse("unreadable", given, "a file", kindOf(found));
  if (found.size > most) refuse("too-large", given, `a file of at most ${most} bytes`, found.size);
}
