import { CellError, type CellValue } from "../../units/cell.ts";
import { nearest } from "../../units/nearest.ts";
import { compileTemplate } from "../evaluate/compile-template.ts";
import { type CustomFunctions, callableNames } from "../evaluate/custom-functions.ts";
import type { Grid } from "../evaluate/frame.ts";
import { worksheetFunctions } from "../functions/registry.ts";

/** A workbook of one cell: nothing to refer to, everything else works. For `shop calc`. */
export function emptyGrid(custom: CustomFunctions, now: number): Grid {
  const grid: Grid = {
    custom,
    functions: worksheetFunctions,
    date1904: false,
    now,
    random: Math.random,
    unknownFunction: (name): CellValue => {
      const known = callableNames(custom, worksheetFunctions.names());
      return new CellError("#NAME?", `no function is called ${name}; nearest: ${nearest(name, known)}`);
    },
    sheetIndex: () => undefined,
    sheetName: () => "",
    sheetCount: 1,
    definedName: () => undefined,
    table: () => undefined,
    tableAt: () => undefined,
    pivotAt: () => undefined,
    cell: () => null,
    matrix: (ref) => {
      const row = new Array<CellValue>(ref.columns).fill(null);
      return new Array<CellValue[]>(ref.rows).fill(row);
    },
    visit: () => {},
    column: () => [],
    lastRow: () => 0,
    spillOf: () => undefined,
    formulaAt: () => undefined,
    rowHidden: () => false,
    rowFiltered: () => false,
    compile: (parsed, at) => compileTemplate(grid, parsed, at, true),
    memo: new Map(),
  };
  return grid;
}
