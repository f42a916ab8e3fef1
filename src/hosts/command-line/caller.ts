import { statSync } from "node:fs";
import { resolve } from "node:path";

/** npm runs scripts in the repository; relative paths are meant from the folder the person stands in. */
export const callerPath = (path: string): string => resolve(process.env["INIT_CWD"] ?? process.cwd(), path);

export const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
export const isFile = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isFile() ?? false;
export const isWorkbook = (path: string): boolean => /\.xls[xm]$/i.test(path);
