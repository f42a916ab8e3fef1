import { missing } from "../../units/certain.ts";
import { headed, tableCells, value } from "../building/cells.ts";
import type { SheetCell, SheetModel, SheetTable } from "../xlsx/model.ts";
import type { JobContents } from "./contents.ts";
import { FINISHED } from "./finished-sheet.ts";

const FIRST_ROW = 4;
/** Free rows below a table, for tools to come. */
const ROOM = 3;

export function shopSheet({ shop, shopNote }: Pick<JobContents, "shop" | "shopNote">, name = "Shop"): SheetModel {
  const cells: SheetCell[] = headed(name, shopNote);
  const tables: SheetTable[] = [];
  let row = FIRST_ROW;
  for (const { name: tableName, title, headers, rows } of shop.filter((table) => table.name !== FINISHED)) {
    cells.push(value(row, 1, "heading", title));
    const table: SheetTable = { name: tableName, row: row + 1, column: 1, headers, rows: rows.length };
    const styles = headers.map((_, i) =>
      rows.every((cell) => typeof (cell[i] ?? 0) === "number") && rows.some((cell) => cell[i] !== null)
        ? "inputNumber"
        : "inputText",
    );
    tables.push(table);
    cells.push(...tableCells(table, rows, styles));
    row += rows.length + 2 + ROOM;
  }
  return {
    name,
    widths: [19, 14, 14, 14, 13, 14, 13, 13, 13, 12, 12],
    cells,
    tables,
    merges: ["A2:K2"],
    frozen: { rows: 2, columns: 0 },
    print: { landscape: true, titleRows: "1:2" },
  };
}

/** Of the sheet "Shop": where a table's first column stands, for a list to choose from: "Shop!$A$18:$A$25". */
export function namesOf(contents: Pick<JobContents, "shop" | "shopNote">, tableName: string): string | undefined {
  const table = (shopSheet(contents).tables ?? missing()).find(({ name }) => name === tableName);
  return table && `Shop!$A$${table.row + 1}:$A$${table.row + table.rows}`;
}
