/** A sheet of inputs: one Excel Table under its title, to be typed over and added to. */
import type { CellValue } from "../../units/cell.ts";
import type { SheetModel, SheetTable } from "../xlsx/model.ts";
import { columnName } from "../xlsx/xml.ts";
import { headed, tableCells } from "./cells.ts";

const HEADER_ROW = 4;

export interface InputColumn {
  readonly header: string;
  readonly width: number;
  readonly number?: true;
}

export function tableSheet({
  name,
  table: tableName,
  note,
  columns,
  rows,
}: {
  readonly name: string;
  readonly table: string;
  readonly note: string;
  readonly columns: readonly InputColumn[];
  readonly rows: readonly (readonly CellValue[])[];
}): SheetModel {
  const table: SheetTable = {
    name: tableName,
    row: HEADER_ROW,
    column: 1,
    headers: columns.map(({ header }) => header),
    rows: rows.length,
  };
  return {
    name,
    widths: columns.map(({ width }) => width),
    columnStyles: columns.map(({ number }) => (number ? undefined : "textColumn")),
    cells: [
      ...headed(name, note),
      ...tableCells(
        table,
        rows,
        columns.map(({ number }) => (number ? "inputNumber" : "inputText")),
      ),
    ],
    tables: [table],
    merges: [`A2:${columnName(columns.length)}2`],
    frozen: { rows: HEADER_ROW, columns: 1 },
    print: { landscape: true, titleRows: `${HEADER_ROW}:${HEADER_ROW}` },
  };
}
