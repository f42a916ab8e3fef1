/** The project's own files as text, for the rules that read them. */
import { readdirSync, readFileSync } from "node:fs";

export interface SourceFile {
  /** From the repository's top, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

export const root = process.cwd();

export const filesBelow = (folder: string, ending = ".ts"): SourceFile[] =>
  readdirSync(`${root}/${folder}`, { recursive: true, encoding: "utf8" })
    .map((name) => `${folder}/${name.replaceAll("\\", "/")}`)
    .filter((path) => path.endsWith(ending) && !path.endsWith(".d.ts"))
    .sort()
    .map((path) => ({ path, text: readFileSync(`${root}/${path}`, "utf8") }));

const COMMENT_OR_TEXT = /\/\*[\s\S]*?\*\/|\/\/[^\n]*|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`/g;
const blank = (text: string): string => text.replace(/[^\n]/g, " ");

/** The same text with comments and strings blanked, so that lines and columns stay where they are. */
export const codeOnly = (text: string): string => text.replace(COMMENT_OR_TEXT, blank);

/** Comments blanked, strings kept: what import statements are read from. */
export const withoutComments = (text: string): string =>
  text.replace(COMMENT_OR_TEXT, (found) => (found.startsWith("/") ? blank(found) : found));

/** Paths a file imports, static and lazy, as they are written. */
export function importsOf(text: string): string[] {
  const found = withoutComments(text).matchAll(
    /(?:^|[\s;}])(?:from|import)\s*\(?\s*["']([\w@./:-]+)["']|new URL\(\s*["'](\.[^"']+)["']/g,
  );
  return [...found].map((match) => (match[1] ?? match[2])!);
}

/** "src/calc/bend/flat.ts" and "../../units/x.ts" -> "src/units/x.ts". */
export function resolved(from: string, to: string): string {
  const parts = from.split("/").slice(0, -1);
  for (const part of to.split("/")) {
    if (part === "..") parts.pop();
    else if (part !== ".") parts.push(part);
  }
  return parts.join("/");
}
