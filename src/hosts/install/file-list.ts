/** files.json: what a build consists of, so that the install page can ask for every file and name the one that is missing. */
import { lastOf } from "../../units/certain.ts";
import type { ProjectFile } from "../excel/manifest/model.ts";

export interface FileList {
  readonly project: ProjectFile;
  /** Paths from the folder that is served. */
  readonly files: readonly string[];
}

export const FILE_LIST = "files.json";

/** Of what Excel or a browser refuses when it is served under another type; others may be served as anything. */
const TYPES: Readonly<Record<string, RegExp>> = {
  html: /^text\/html\b/,
  js: /^(?:text|application)\/(?:javascript|x-javascript|ecmascript)\b/,
  css: /^text\/css\b/,
  json: /^(?:application|text)\/(?:[a-z.-]+\+)?json\b/,
  png: /^image\/png\b/,
};

/** What is wrong with the type a file is served as, or undefined. */
export function wrongType(path: string, served: string | null): string | undefined {
  const wanted = TYPES[lastOf(path.split("."))];
  return !wanted || wanted.test(served ?? "") ? undefined : `is served as ${served || "no type"}`;
}

/** The add-in's files alone, in order: the list must not depend on how a folder is read. */
export const fileList = ({ version, bracketBill }: ProjectFile, paths: readonly string[]): string =>
  `${JSON.stringify({ project: { version, bracketBill }, files: [...paths].sort() }, null, 1)}\n`;
