/** `npm run excel -- --offer-addin IN.xlsx OUT.xlsx`: the copy that a colleague without the add-in can open. */
import { resolve } from "node:path";
import { bytesOf } from "../../hosts/command-line/read-file.ts";
import { replaceFile } from "../../hosts/command-line/replace-file.ts";
import type { ProjectFile } from "../../hosts/excel/manifest/model.ts";
import { FileRefusal } from "../../sheet/package/file-refusal.ts";
import { offerAddIn } from "./offer-add-in.ts";

/** `folder`: the caller's. Answers the sentence to say; throws an Error with one where nothing was written. */
export function offerCommand(paths: readonly string[], project: ProjectFile, folder: string): string {
  const [from, to] = paths.map((path) => resolve(folder, path));
  if (!from || !to || paths.length > 2 || from === to)
    throw new Error(`--offer-addin must be followed by a workbook and another file to write; got ${paths.join(" ")}`);
  try {
    const addIn = { id: project.bracketBill.addinId, version: `${project.version}.0`, runtime: "Taskpane.Url" };
    replaceFile(to, offerAddIn(bytesOf(from), addIn));
  } catch (problem) {
    throw problem instanceof FileRefusal ? new Error(`${from}: ${problem.message}`) : problem;
  }
  return `${to}: names the add-in. Who opens it without the add-in should be offered it; no real Excel has tried this yet.`;
}
