/** A workbook as its readers here see it, whatever holds it: Excel, the page's engine, a file. */
import { type CellMatrix, type CellValue, isCellError } from "../units/cell.ts";

export interface BookSheet {
  readonly name: string;
  /** rows[0][0] is A1; rows may be ragged. */
  readonly rows: CellMatrix;
}
export type Book = readonly BookSheet[];

export const cellAt = ({ rows }: BookSheet, row: number, column: number): CellValue => rows[row]?.[column] ?? null;
/** A cell as it is typed into another workbook: an error says nothing there. */
export const withoutError = (cell: CellValue = null): CellValue => (isCellError(cell) ? null : cell);
