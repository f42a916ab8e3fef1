/** A workbook to be written, as plain data. Rows and columns count from 1, as they are shown. */
import type { CellValue } from "../../units/cell.ts";
import type { StyleName } from "./styles.ts";

export interface SheetCell {
  readonly row: number;
  readonly column: number;
  readonly style?: StyleName;
  readonly value?: CellValue;
  /** As the file stores it, without "=": _xldudf_SHOP_..., _xlfn.XLOOKUP, Table[Column]. */
  readonly formula?: string;
  /** A dynamic array formula: the styles of the columns it fills. */
  readonly spills?: readonly StyleName[];
  /** Of a spill whose first row is its header: the styles of that row. */
  readonly heads?: readonly StyleName[];
}

export interface SheetTable {
  readonly name: string;
  readonly row: number;
  readonly column: number;
  readonly headers: readonly string[];
  readonly rows: number;
}

export interface Validation {
  readonly area: string;
  readonly type: "list" | "whole" | "decimal";
  readonly formula: string;
  /** Shown when the cell is chosen. */
  readonly prompt: string;
  /** What a wrong entry meets; without one it is only advised. */
  readonly refusal?: string;
}

/** Cells that show their text in another style when an ordinary formula is true. */
export interface Emphasis {
  readonly area: string;
  readonly formula: string;
  readonly look: "stop" | "check" | "moment";
}

interface Printing {
  readonly landscape: boolean;
  /** One page wide; else `scale` percent, which lets page breaks stand. */
  readonly scale?: number;
  /** Whole columns, "A:M", so that a longer bill is printed too. */
  readonly area?: string;
  /** Pages side by side, where one would make the letters too small; the first column is on each. */
  readonly pagesWide?: number;
  /** Words at the left of every page's foot. */
  readonly foot?: string;
  /** Rows repeated on every page, "8:8". */
  readonly titleRows?: string;
  readonly breaksBefore?: readonly number[];
}

export interface SheetModel {
  readonly name: string;
  readonly widths: readonly number[];
  /** Styles of whole columns, so that what is added below looks the same. */
  readonly columnStyles?: readonly (StyleName | undefined)[];
  readonly cells: readonly SheetCell[];
  readonly tables?: readonly SheetTable[];
  readonly validations?: readonly Validation[];
  readonly emphasis?: readonly Emphasis[];
  readonly merges?: readonly string[];
  /** Rows and columns that stay while the rest scrolls. */
  readonly frozen?: { readonly rows: number; readonly columns: number };
  /** Only inputs can be typed into; without a password, so that who knows why can lift it. */
  readonly locked?: boolean;
  readonly print: Printing;
}

export interface WorkbookModel {
  readonly title: string;
  readonly sheets: readonly SheetModel[];
}
