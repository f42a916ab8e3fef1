import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { widthOf } from "../../units/certain.ts";
import { isMatrix, LAST_COLUMN, LAST_ROW, NA, SPILL } from "../evaluate/value.ts";
import type { Area } from "../formula/address.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";
import type { Sheet } from "../workbook/sheet.ts";

/** An array's empty element becomes 0 in a cell. */
const shown = (value: CellValue | undefined): CellValue => value ?? 0;

/** Before anything is calculated: the cells an array formula fills in the file belong to it. */
export function claimStored(sheet: Sheet, cell: FormulaCell): void {
  cell.covers = cell.ref;
  eachCell(cell.ref, (row, column) => {
    if (sheet.owners[column]?.[row] !== undefined) return;
    sheet.own(row, column, cell);
    sheet.originals.set(row * 16_384 + column, sheet.values[column]?.[row]);
  });
}

/** An array formula of the fixed kind: its range is given, too short a result shows #N/A. */
export function fillArray(sheet: Sheet, cell: FormulaCell, result: CellValue | CellMatrix): void {
  const area = cell.ref ?? { top: cell.row, left: cell.column, bottom: cell.row, right: cell.column };
  const rows = isMatrix(result) ? result : [[result]];
  eachCell(area, (row, column) => {
    const line = rows.length === 1 ? rows[0] : rows[row - area.top];
    const value = line?.length === 1 ? line[0] : line?.[column - area.left];
    if (sheet.owners[column]?.[row] === cell) sheet.set(row, column, value === undefined ? NA : shown(value));
  });
}

/**
 * A dynamic array formula: clears what it filled before, then fills as many cells as the result has, or shows #SPILL!
 * when something stands in the way. Returns the area whose cells may have changed beyond the anchor.
 */
export function spill(sheet: Sheet, cell: FormulaCell, result: CellValue | CellMatrix): Area | undefined {
  const before = cell.covers;
  eachCell(before, (row, column) => {
    if ((row === cell.row && column === cell.column) || sheet.owners[column]?.[row] !== cell) return;
    sheet.own(row, column, undefined);
    sheet.set(row, column, undefined);
  });
  const rows = isMatrix(result) ? result : [[result]];
  const area: Area = {
    top: cell.row,
    left: cell.column,
    bottom: cell.row + rows.length - 1,
    right: cell.column + widthOf(rows) - 1,
  };
  if (!isFree(sheet, cell, area)) {
    cell.covers = undefined;
    sheet.set(cell.row, cell.column, SPILL);
    return before;
  }
  cell.covers = area;
  eachCell(area, (row, column) => {
    sheet.own(row, column, cell);
    sheet.set(row, column, shown(rows[row - area.top]?.[column - area.left]));
  });
  if (before && sameArea(before, area)) return undefined;
  return before ? hull(before, area) : area;
}

function isFree(sheet: Sheet, cell: FormulaCell, area: Area): boolean {
  if (area.bottom > LAST_ROW || area.right > LAST_COLUMN) return false;
  let free = true;
  eachCell(area, (row, column) => {
    if (row === cell.row && column === cell.column) return;
    if (sheet.owners[column]?.[row] !== undefined || sheet.values[column]?.[row] !== undefined) free = false;
  });
  return free;
}

function eachCell(area: Area | undefined, see: (row: number, column: number) => void): void {
  if (!area) return;
  for (let row = area.top; row <= area.bottom; row++)
    for (let column = area.left; column <= area.right; column++) see(row, column);
}

export const sameArea = (a: Area, b: Area): boolean =>
  a.top === b.top && a.left === b.left && a.bottom === b.bottom && a.right === b.right;

const hull = (a: Area, b: Area): Area => ({
  top: Math.min(a.top, b.top),
  left: Math.min(a.left, b.left),
  bottom: Math.max(a.bottom, b.bottom),
  right: Math.max(a.right, b.right),
});
