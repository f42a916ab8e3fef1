/**
 * The folder the papers go to: absent, empty, or made by us before. Anything else is left alone, and nothing is ever
 * written or removed outside it, whatever stands in the workbook or in a folder that was tampered with.
 */
import { lstatSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { refusal } from "../../../sheet/package/file-refusal.ts";

const MARK = ".bracket-bill-print.json";
/** All names we ever write. */
const OURS = /^(?:(?:setup|tools|station)\/[A-Za-z0-9_-]+\.html|outline\/[A-Za-z0-9_-]+\.svg|[a-z-]+\.html|pack\.pdf)$/;

/** Readies the folder, which a person called `name`, the papers of an earlier run removed. One that is not ours is refused. */
export function readyFolder(folder: string, name = folder): void {
  const rule = "a folder that is new, empty or from an earlier print";
  const refusalOf = (got: string) => refusal("unwritable", name, rule, got, "give another name");
  const stat = lstatSync(folder, { throwIfNoEntry: false });
  if (!stat) {
    mkdirSync(folder, { recursive: true });
    return;
  }
  if (!stat.isDirectory()) throw refusalOf("a file or a link");
  if (readdirSync(folder).length === 0) return;
  const earlier = earlierFiles(folder);
  if (!earlier) throw refusalOf("one with other files");
  for (const inner of ["setup", "tools", "outline", "station"])
    if (lstatSync(join(folder, inner), { throwIfNoEntry: false })?.isSymbolicLink())
      throw refusalOf(`one with a link in place of its folder ${inner}`);
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

/** Writes one of our files whole or not at all; a link in its place is replaced, never followed. */
export function writeInto(folder: string, file: string, content: string | Uint8Array): void {
  if (!OURS.test(file)) throw new Error(`a paper's file must be one of our names; got ${file}`);
  const path = join(folder, file);
  try {
    mkdirSync(dirname(path), { recursive: true });
    rmSync(path, { force: true });
    writeFileSync(path, content, { flag: "wx" });
  } catch (error) {
    rmSync(path, { force: true });
    throw error;
  }
}

export const markFolder = (folder: string, files: readonly string[]): void => {
  rmSync(join(folder, MARK), { force: true });
  writeFileSync(join(folder, MARK), `${JSON.stringify({ files })}\n`, { flag: "wx" });
};
