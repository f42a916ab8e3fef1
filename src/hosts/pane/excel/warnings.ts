/** What a person must know before relying on the workbook's figures; nothing where all is well. */
import type { Book } from "../../../job/book.ts";
import { ZEROS } from "../../../job/state-words.ts";
import { isCellError } from "../../../units/cell.ts";
import { calledByAnotherList, OTHER_LIST } from "../../excel/function-list.ts";
import { versionWarning } from "./version-warning.ts";

export function warnings(book: Book): string[] {
  const cells = book.flatMap(({ rows }) => rows.flat());
  const unknown = cells.filter((cell) => isCellError(cell) && cell.code === "#NAME?").length;
  return [
    versionWarning(book),
    cells.includes(ZEROS) ? ZEROS : undefined,
    calledByAnotherList() ? `${OTHER_LIST}; until then an answer may leave out its newest argument.` : undefined,
    unknown > 0 ? `${unknown} cells stand at #NAME?: press Repair formulas.` : undefined,
  ].filter((one) => one !== undefined);
}
