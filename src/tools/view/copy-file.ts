/** Where the page's "Save a copy" writes: beside the workbook, under a name that nothing has yet; never the workbook. */
import { existsSync } from "node:fs";
import { basename, dirname, extname, join } from "node:path";
import { replaceFile } from "../../hosts/command-line/replace-file.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";

/** Saves of one session go to one copy. Throws a FileRefusal on bytes that are no workbook. */
export function copySaver(workbook: string): (bytes: Uint8Array) => string {
  let copy: string | undefined;
  return (bytes) => {
    readWorkbook(bytes);
    const name = copy ?? freeName(workbook);
    replaceFile(name, bytes);
    copy = name;
    return `Saved as ${copy}`;
  };
}

function freeName(workbook: string): string {
  const extension = extname(workbook);
  const stem = join(dirname(workbook), basename(workbook, extension));
  for (let number = 1; ; number++) {
    const name = `${stem} copy${number === 1 ? "" : ` ${number}`}${extension}`;
    if (!existsSync(name)) return name;
  }
}
