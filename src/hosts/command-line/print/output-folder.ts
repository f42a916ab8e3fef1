/**
 * The folder the papers go to: absent, empty, or made by us before. Anything else is left alone, and nothing is ever
 * written or removed outside it, whatever stands in the workbook or in a folder that was tampered with.
 */
import { lstatSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

const MARK = ".bracket-bill-print.json";
/** All names we ever write. */
const OURS = /^(?:(?:setup|tools)\/[A-Za-z0-9_-]+\.html|outline\/[A-Za-z0-9_-]+\.svg|[a-z-]+\.html|pack\.pdf)$/;

export class FolderRefusal {
  constructor(readonly message: string) {}
}

/** Readies the folder, the papers of an earlier run removed. Throws FolderRefusal on a folder that is not ours. */
export function readyFolder(folder: string): void {
  const stat = lstatSync(folder, { throwIfNoEntry: false });
  if (!stat) {
    mkdirSync(folder, { recursive: true });
    return;
  }
  if (!stat.isDirectory()) throw new FolderRefusal("is not a folder");
  if (readdirSync(folder).length === 0) return;
  const earlier = earlierFiles(folder);
  if (!earlier) throw new FolderRefusal("holds files that are not from an earlier print; name an empty folder");
  for (const name of ["setup", "tools", "outline"])
    if (lstatSync(join(folder, name), { throwIfNoEntry: false })?.isSymbolicLink())
      throw new FolderRefusal(`has a link in place of its folder ${name}`);
  for (const file of earlier) rmSync(join(folder, file), { force: true });
}

function earlierFiles(folder: string): readonly string[] | undefined {
  try {
    const mark = join(folder, MARK);
    if (!lstatSync(mark).isFile()) return undefined;
    const { files } = JSON.parse(readFileSync(mark, "utf8")) as { files: unknown };
    const names = Array.isArray(files) ? files.filter((name): name is string => typeof name === "string") : [];
    return names.filter((name) => OURS.test(name));
  } catch {
    return undefined; // no mark, or one that we did not write
  }
}

/** Writes one of our files; a link in its place is replaced, never followed. */
export function writeInto(folder: string, file: string, content: string | Uint8Array): void {
  if (!OURS.test(file)) throw new Error(`a paper's file must be one of our names; got ${file}`);
  const path = join(folder, file);
  mkdirSync(dirname(path), { recursive: true });
  if (lstatSync(path, { throwIfNoEntry: false })) rmSync(path, { force: true });
  writeFileSync(path, content, { flag: "wx" });
}

export const markFolder = (folder: string, files: readonly string[]): void => {
  rmSync(join(folder, MARK), { force: true });
  writeFileSync(join(folder, MARK), `${JSON.stringify({ files })}\n`, { flag: "wx" });
};
