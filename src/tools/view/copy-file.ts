/**
 * Where the page saves: beside the workbook, under a name that nothing has yet; never the workbook itself, and never over
 * what another page or program has written since.
 */
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { basename, dirname, extname, join } from "node:path";
import { replaceFile } from "../../hosts/command-line/replace-file.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";

export interface ToSave {
  readonly bytes: Uint8Array;
  /** What the workbook is called that it comes from, and the name that is wanted; "" where any will do. */
  readonly of: string;
  readonly name: string;
  /** What the page has written there before; undefined the first time. */
  readonly version: string | undefined;
}

export type Kept =
  | { readonly words: string; readonly name: string; readonly version: string }
  /** Nothing was written; `name` is one that is free. */
  | { readonly words: string; readonly name: string; readonly version: undefined };

export const versionOf = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex").slice(0, 16);

/** "" where the file is gone. */
const versionOnDisk = (file: string): string => (existsSync(file) ? versionOf(readFileSync(file)) : "");

/** Throws a FileRefusal on bytes that are no workbook. */
export function copySaver(workbook: string): (save: ToSave) => Kept {
  const folder = dirname(workbook);
  return ({ bytes, of, name, version }) => {
    readWorkbook(bytes);
    const own = basename(workbook);
    const stem = of === "" ? own : nameOnly(of);
    const wanted =
      name === "" ? freeName(folder, stem, stem === own || existsSync(join(folder, stem))) : nameOnly(name);
    const file = join(folder, wanted);
    const there = versionOnDisk(file);
    const saved = { words: `Saved as ${file}`, name: wanted, version: versionOf(bytes) };
    if (version !== undefined && there === version) {
      replaceFile(file, bytes);
      return saved;
    }
    if (there === "" && wanted !== own) {
      writeFileSync(file, bytes, { flag: "wx" }); // somebody may be quicker: then it throws
      return saved;
    }
    const why = version === undefined ? "is there already" : "was changed by somebody else since you saved it";
    return {
      words: `${wanted} ${why}: nothing was written.`,
      name: freeName(folder, wanted, true),
      version: undefined,
    };
  };
}

/** No folder of somebody else's choice. */
const nameOnly = (name: string): string => {
  const plain = basename(name.replaceAll("\\", "/")).replace(/[<>:"|?*\p{Cc}]/gu, "_");
  return /\.xls[xm]$/i.test(plain) ? plain : `${plain || "bill"}.xlsx`;
};

function freeName(folder: string, name: string, isTaken: boolean): string {
  if (!isTaken) return name;
  const extension = extname(name);
  const stem = basename(name, extension).replace(/ copy(?: \d+)?$/, "");
  for (let number = 1; ; number++) {
    const free = `${stem} copy${number === 1 ? "" : ` ${number}`}${extension}`;
    if (!existsSync(join(folder, free))) return free;
  }
}
