/** The files of a build as they must be for one address: the few that name it are made anew, the others stay. */
import { RECORDS } from "../../cells/catalogue.ts";
import { manifestFiles } from "../excel/manifest/files.ts";
import type { ProjectFile } from "../excel/manifest/model.ts";
import type { Files } from "./archive.ts";

/** `address`: https, with the folder, without the page's name. Throws where Excel would not load from it. */
export function stampedFiles(contents: Files, project: ProjectFile, address: string): Files {
  const encode = new TextEncoder();
  const made = Object.entries(manifestFiles(RECORDS, project, address));
  return new Map([...contents, ...made.map(([path, text]): [string, Uint8Array] => [path, encode.encode(text)])]);
}

/** Files that the server holds for another address than its own. */
export const madeForElsewhere = (served: Files, stamped: Files): string[] =>
  [...stamped].filter(([path, content]) => !isSame(served.get(path), content)).map(([path]) => path);

const isSame = (a: Uint8Array | undefined, b: Uint8Array): boolean =>
  a !== undefined && a.length === b.length && a.every((byte, i) => byte === b[i]);
