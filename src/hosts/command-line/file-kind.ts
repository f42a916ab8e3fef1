import type { Stats } from "node:fs";

/** What is where a file was meant. */
export const kindOf = (found: Stats): string => {
  if (found.isDirectory()) return "a folder";
  if (found.isFIFO()) return "a pipe";
  return found.isSocket() ? "a socket" : "a device";
};
