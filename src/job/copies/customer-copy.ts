/**
 * The quote alone, as a workbook of its own: nothing of the shop's rates, costs, machines or times is in the file, not
 * even where nobody looks. It is written anew from the values of the quote, never cut out of the job's workbook.
 */

import { customerSays } from "../../bill/customer-says.ts";
import { type CellValue, isBlank, isCellError } from "../../units/cell.ts";
import { itemAt } from "../../units/certain.ts";
import { wrong } from "../../units/refusal.ts";
import { type Book, cellAt } from "../book.ts";
import { value } from "../building/cells.ts";
import { jobPlan } from "../job-plan.ts";
import { FIRST_LINE, MACHINES, QUOTE, quoteSheet, REMARK_COLUMN } from "../job-sheets/quote-sheet.ts";
import type { SheetCell, SheetModel, WorkbookModel } from "../xlsx/model.ts";
import type { StyleName } from "../xlsx/styles.ts";

const NO_QUOTE = /^no quote/i;

/** Throws Refusal where the workbook has no quote, or none that is one. @param notice says what the copy is. */
export function customerCopy(book: Book, notice: readonly string[]): WorkbookModel {
  const quote = book.find(({ name }) => name === QUOTE);
  if (!quote) throw wrong("workbook", `a job's, with a sheet "${QUOTE}"`, book.map(({ name }) => name).join(", "));
  const model = quoteSheet({ shopName: "", quoteFoot: "" });
  const lines = jobPlan(book)?.plan.lines ?? [];
  const styles = new Map(model.cells.map((cell) => [`${cell.row} ${cell.column}`, cell]));
  const cells = quote.rows.flatMap((row, r) =>
    row.flatMap((_, c): SheetCell[] => {
      const held = cellAt(quote, r, c);
      // What the shop has yet to do is not the customer's business.
      if (isBlank(held) || (c < 2 && cellAt(quote, r, 0) === MACHINES)) return [];
      if (isCellError(held) || (typeof held === "string" && NO_QUOTE.test(held) && c === 0))
        throw wrong(
          "quote",
          "answered in every cell",
          shown(held),
          "type what is missing and calculate the workbook first",
        );
      // In workbooks of earlier releases the remark is the shop's: it may name a machine and what it is rated.
      const isRemark = r + 1 >= FIRST_LINE && c + 1 === REMARK_COLUMN;
      const line = lines[r + 1 - FIRST_LINE];
      const said = isRemark ? (line ? customerSays(line) : "") : held;
      return [value(r + 1, c + 1, styleAt(styles, r + 1, c + 1), said)];
    }),
  );
  const { emphasis: _, ...sheet } = model;
  const about: SheetModel = {
    name: "About this copy",
    widths: [100],
    cells: notice.map((line, i) => value(i + 1, 1, "plain", line)),
    print: { landscape: false },
  };
  return { title: "Quote", sheets: [{ ...sheet, cells }, about] };
}

const shown = (cell: CellValue): string => (isCellError(cell) ? cell.code : String(cell));

/** The model's own style; of a spill that of its column. */
function styleAt(styles: ReadonlyMap<string, SheetCell>, row: number, column: number): StyleName {
  const own = styles.get(`${row} ${column}`);
  if (own) return own.spills?.[0] ?? own.style ?? "plain";
  for (const cell of styles.values())
    if (cell.spills && cell.row <= row && column >= cell.column && column < cell.column + cell.spills.length)
      return itemAt(cell.spills, column - cell.column);
  return "plain";
}
