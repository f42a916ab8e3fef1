import type { CellValue } from "../../units/cell.ts";
import type { Area } from "../formula/address.ts";
import type { FormulaCell } from "./formula-cell.ts";
import { IntegerList } from "./growing.ts";

/** Where cells and rows stand in the sheet's XML, in document order; the writer splices by it. */
export class SheetLayout {
  readonly cellRow = new IntegerList();
  readonly cellColumn = new IntegerList();
  readonly cellStart = new IntegerList();
  readonly cellEnd = new IntegerList();
  readonly rowNumber = new IntegerList();
  readonly rowStart = new IntegerList();
  /** End of the row's opening tag. */
  readonly rowOpenEnd = new IntegerList();
  readonly rowEnd = new IntegerList();
  /** Offset just after sheetData's opening tag and just before its closing tag; equal when it is self-closing. */
  dataOpenEnd = -1;
  dataEnd = -1;
}

/** One sheet: values by column and row as they are now, formulas, and who fills which cell. */
export class Sheet {
  /** values[column]?.[row]; undefined is an empty cell. */
  readonly values: (CellValue | undefined)[][] = [];
  /** The formula that fills a cell: its own, or the array formula that spills there. */
  readonly owners: (FormulaCell | undefined)[][] = [];
  readonly formulas: FormulaCell[] = [];
  /** What the file holds in cells that array formulas fill, by row * 16384 + column. */
  readonly originals = new Map<number, CellValue | undefined>();
  readonly hiddenRows = new Set<number>();
  /** Ranges of filters that have a condition set: rows hidden inside them are filtered away. */
  readonly filtered: Area[] = [];
  readonly layout = new SheetLayout();
  lastRow = -1;
  lastColumn = -1;

  constructor(
    readonly index: number,
    readonly name: string,
    /** Part name in the package; "" for a sheet without cells (a chart sheet). */
    readonly part: string,
  ) {}

  set(row: number, column: number, value: CellValue | undefined): void {
    let cells = this.values[column];
    if (cells === undefined) {
      cells = [];
      this.values[column] = cells;
    }
    cells[row] = value;
    if (row > this.lastRow) this.lastRow = row;
    if (column > this.lastColumn) this.lastColumn = column;
  }

  own(row: number, column: number, owner: FormulaCell | undefined): void {
    let cells = this.owners[column];
    if (cells === undefined) {
      if (owner === undefined) return;
      cells = [];
      this.owners[column] = cells;
    }
    cells[row] = owner;
  }
}
