/** Texts about a file without a word of what stands in it. */
import { FileRefusal } from "../../sheet/package/file-refusal.ts";
import { readDirectory } from "../../sheet/package/zip-directory.ts";

/** The rule that was broken: what was found, and every name, is left out. */
export function refusalRule(message: string): string {
  const rule = /must be (.*?)(?:; got|$)/s.exec(message)?.[1];
  return rule === undefined ? "a fault of the program" : `must be ${rule.replace(/"[^"]*"/g, '"..."')}`;
}

/** Where in the program a fault happened: file and line of each step, no words. */
export const faultPlaces = (stack: string): string[] =>
  [...stack.matchAll(/^\s+at (?:([\w.<>#$ ]+) \()?.*?([\w.-]+:\d+:\d+)\)?$/gm)]
    .slice(0, 10)
    .map(([, step = "?", place]) => `  at ${step}, ${place}`);

const LINE_FEED = 10;

/** How large the file is, and of what kinds its parts are. */
export function fileSizes(bytes: Uint8Array, isWorkbook: boolean): string[] {
  const size = `File: ${bytes.length} bytes`;
  if (!isWorkbook) {
    return [`${size}, no package, ${bytes.filter((byte) => byte === LINE_FEED).length} line ends`];
  }
  try {
    const entries = readDirectory(bytes);
    const kinds = new Map<string, number>();
    for (const { name } of entries) kinds.set(kindOf(name), (kinds.get(kindOf(name)) ?? 0) + 1);
    const unpacked = entries.reduce((sum, { size: each }) => sum + each, 0);
    const shown = [...kinds].map(([kind, count]) => `${count} ${kind}`).sort();
    return [`${size}, a package of ${entries.length} parts, ${unpacked} bytes unpacked`, `Parts: ${shown.join(", ")}`];
  } catch (problem) {
    if (!(problem instanceof FileRefusal)) throw problem;
    return [`${size}, a package that is refused, ${problem.reason}: ${refusalRule(problem.message)}`];
  }
}

/** A part's name may be anybody's; its kind is one of these. */
const KINDS = [
  "worksheet",
  "table",
  "chart",
  "drawing",
  "pivot",
  "media",
  "comment",
  "theme",
  "style",
  "string",
  "vba",
  "rels",
];
const kindOf = (name: string): string => KINDS.find((kind) => name.toLowerCase().includes(kind)) ?? "other";
