/** Whether the workbook's answers come from another version or edition than the one that runs here. */
import { PRODUCT_VERSION } from "../../../cells/record/version.generated.ts";
import { CURRENT_EDITION } from "../../../data/materials/editions.ts";
import type { Book } from "../../../job/book.ts";

/** What SHOP.VERSION() answers in a cell; behind it may stand that Excel's list of functions is an old one. */
const SAID = /^Bracket Bill (\S+), materials ([^\s;]+)(?:;|$)/;

/** A sentence, or undefined where nothing differs or no cell says a version. */
export function versionWarning(book: Book): string | undefined {
  for (const { name, rows } of book)
    for (const cell of rows.flat()) {
      const [, version, edition] = typeof cell === "string" ? (SAID.exec(cell) ?? []) : [];
      if (version === undefined) continue;
      if (version === PRODUCT_VERSION && edition === CURRENT_EDITION.name) continue;
      return `${name} was calculated by version ${version} with materials ${edition}; here runs version ${PRODUCT_VERSION} with materials ${CURRENT_EDITION.name}. Recalculate (Ctrl+Alt+F9) before you rely on its figures.`;
    }
  return undefined;
}
