import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { nearest } from "../../units/nearest.ts";
import { DAYS_1904 } from "../evaluate/calendar.ts";
import { compileTemplate } from "../evaluate/compile-template.ts";
import { type CustomFunctions, callableNames } from "../evaluate/custom-functions.ts";
import type { Frame, Grid, Template } from "../evaluate/frame.ts";
import { keep } from "../evaluate/keep.ts";
import type { Pivot } from "../evaluate/pivot.ts";
import type { Table } from "../evaluate/table.ts";
import { RangeRef } from "../evaluate/value.ts";
import type { Parsed } from "../formula/parse.ts";
import { shiftFormula } from "../formula/shift.ts";
import { worksheetFunctions } from "../functions/registry.ts";
import { FileRefusal } from "../package/file-refusal.ts";
import { DONE, type FormulaCell } from "../workbook/formula-cell.ts";
import { readPivots } from "../workbook/read-pivots.ts";
import type { Sheet } from "../workbook/sheet.ts";
import type { Workbook } from "../workbook/workbook.ts";
import { Names } from "./names.ts";
import { Pending, type PendingCells } from "./pending.ts";

/** Matrices are remembered within a run up to this many cells in all: a table read by every row is copied once. */
const REMEMBERED_CELLS = 4_000_000;

/** Excel's functions whose answers come from a connection, a server or the web. */
const OUTSIDE = /^(?:CUBE\w+|RTD|WEBSERVICE|STOCKHISTORY|TRANSLATE|SQL\.REQUEST)$/i;

/** The workbook as expressions read it while it is being calculated. */
export class WorkbookGrid implements Grid {
  readonly date1904: boolean;
  readonly now: number | undefined;
  readonly functions = worksheetFunctions;
  readonly random = undefined;
  readonly memo = new Map<string, unknown>();
  readonly sheetCount: number;
  private readonly sheetByName = new Map<string, number>();
  private readonly tableByName = new Map<string, Table>();
  private readonly names: Names;
  private readonly matrices = new Map<string, CellMatrix>();
  private readonly pivots = new Map<number, readonly Pivot[]>();
  private rememberedCells = 0;
  private pending: PendingCells | undefined;
  private recording: FormulaCell | undefined;

  constructor(
    private readonly workbook: Workbook,
    readonly custom: CustomFunctions,
    now: number | undefined,
  ) {
    this.date1904 = workbook.date1904;
    this.now = now === undefined ? undefined : now - (workbook.date1904 ? DAYS_1904 : 0);
    this.sheetCount = workbook.sheets.length;
    for (const sheet of workbook.sheets) this.sheetByName.set(sheet.name.toLowerCase(), sheet.index);
    for (const table of workbook.tables) this.tableByName.set(table.name.toLowerCase(), table);
    this.names = new Names(this, workbook.names);
  }

  /** A run starts: until it ends, what was read stays true. */
  begin(pending: PendingCells): void {
    this.pending = pending;
    this.memo.clear();
    this.matrices.clear();
    this.rememberedCells = 0;
  }

  end(): void {
    this.pending = undefined;
    this.memo.clear();
    this.matrices.clear();
  }

  /** From now on note what is read, for this cell; undefined stops. */
  record(cell: FormulaCell | undefined): void {
    this.recording = cell;
    if (cell) cell.read = [];
  }

  private note(sheet: number, top: number, left: number, bottom: number, right: number): void {
    this.recording?.read?.push(new RangeRef(sheet, top, left, bottom, right));
  }

  private sheet(index: number): Sheet {
    const found = this.workbook.sheets[index];
    if (!found) throw new Error(`no sheet ${index}`);
    return found;
  }

  cell(sheet: number, row: number, column: number): CellValue {
    const at = this.sheet(sheet);
    const owner = at.owners[column]?.[row];
    if (this.recording) this.note(sheet, row, column, row, column);
    if (owner !== undefined && owner.state !== DONE) throw new Pending(owner);
    return at.values[column]?.[row] ?? null;
  }

  private ready(sheet: number, top: number, left: number, bottom: number, right: number): void {
    if (this.recording) this.note(sheet, top, left, bottom, right);
    const waiting = this.pending?.first(sheet, top, left, bottom, right);
    if (waiting) throw new Pending(waiting);
  }

  matrix(ref: RangeRef): CellMatrix {
    const { sheet, top, left, bottom, right } = ref;
    this.ready(sheet, top, left, bottom, right);
    const size = ref.rows * ref.columns;
    const key = size > 64 ? `${sheet} ${top} ${left} ${bottom} ${right}` : undefined;
    const known = key && this.matrices.get(key);
    if (known) return known;
    const { values, lastRow } = this.sheet(sheet);
    const columns = ref.columns;
    const matrix: CellMatrix = new Array(ref.rows);
    const filled = Math.min(bottom, lastRow);
    for (let row = top; row <= filled; row++) {
      const line: CellValue[] = new Array(columns);
      for (let i = 0; i < columns; i++) line[i] = values[left + i]?.[row] ?? null;
      matrix[row - top] = line;
    }
    // Below the used part all rows are the same empty row: a whole column costs one pointer per row.
    if (bottom > filled) matrix.fill(new Array<CellValue>(columns).fill(null), Math.max(0, filled - top + 1));
    if (key && this.rememberedCells + size <= REMEMBERED_CELLS) {
      this.matrices.set(key, matrix);
      this.rememberedCells += size;
    }
    return matrix;
  }

  visit(ref: RangeRef, see: (value: CellValue, row: number, column: number) => void): void {
    const { sheet, top, left, bottom, right } = ref;
    this.ready(sheet, top, left, bottom, right);
    const { values, lastRow, lastColumn } = this.sheet(sheet);
    const lastR = Math.min(bottom, lastRow);
    const lastC = Math.min(right, lastColumn);
    if (left === lastC) {
      const column = values[left];
      if (column === undefined) return;
      for (let row = top; row <= lastR; row++) {
        const value = column[row];
        if (value !== undefined) see(value, row, left);
      }
      return;
    }
    for (let row = top; row <= lastR; row++) {
      for (let column = left; column <= lastC; column++) {
        const value = values[column]?.[row];
        if (value !== undefined) see(value, row, column);
      }
    }
  }

  column(sheet: number, column: number, top: number, bottom: number): readonly (CellValue | undefined)[] {
    this.ready(sheet, top, column, bottom, column);
    return this.sheet(sheet).values[column] ?? [];
  }

  unknownFunction(name: string): CellValue {
    if (OUTSIDE.test(name)) return keep("external-link", `${name} reads a source outside the workbook`);
    const known = callableNames(this.custom, this.functions.names());
    return keep("unknown-function", `${name}; nearest: ${nearest(name, known)}`);
  }

  sheetIndex(name: string): number | undefined {
    return this.sheetByName.get(name.toLowerCase());
  }

  sheetName(sheet: number): string {
    return this.sheet(sheet).name;
  }

  definedName(name: string, sheet: number): Template | undefined {
    return this.names.find(name, sheet);
  }

  table(name: string): Table | undefined {
    return this.tableByName.get(name.toLowerCase());
  }

  tableAt(sheet: number, row: number, column: number): Table | undefined {
    return this.workbook.tables.find(
      (table) =>
        table.sheet === sheet &&
        row >= table.top &&
        row <= table.bottom &&
        column >= table.left &&
        column <= table.right,
    );
  }

  pivotAt(sheet: number, row: number, column: number): Pivot | undefined {
    let pivots = this.pivots.get(sheet);
    if (!pivots) {
      pivots = this.readPivots(sheet);
      this.pivots.set(sheet, pivots);
    }
    return pivots.find(
      ({ top, left, bottom, right }) => row >= top && row <= bottom && column >= left && column <= right,
    );
  }

  private readPivots(sheet: number): readonly Pivot[] {
    try {
      return readPivots(this.workbook.package, this.sheet(sheet).part);
    } catch (problem) {
      if (!(problem instanceof FileRefusal)) throw problem;
      return keep("unknown-function", `GETPIVOTDATA: ${problem.message}`);
    }
  }

  compile(parsed: Parsed, at: Frame): Template {
    return compileTemplate(this, parsed, at, true);
  }

  lastRow(sheet: number): number {
    return this.sheet(sheet).lastRow;
  }

  spillOf(sheet: number, row: number, column: number): RangeRef | undefined {
    const owner = this.sheet(sheet).owners[column]?.[row];
    if (owner === undefined || owner.row !== row || owner.column !== column || owner.kind !== "dynamic")
      return undefined;
    if (owner.state !== DONE) throw new Pending(owner);
    const area = owner.covers;
    return area ? new RangeRef(sheet, area.top, area.left, area.bottom, area.right) : undefined;
  }

  formulaAt(sheet: number, row: number, column: number): string | undefined {
    const owner = this.sheet(sheet).owners[column]?.[row];
    if (owner === undefined || owner.row !== row || owner.column !== column) return undefined;
    return `=${owner.master ? shiftFormula(owner.text, owner.master, owner) : owner.text}`;
  }

  rowHidden(sheet: number, row: number): boolean {
    return this.sheet(sheet).hiddenRows.has(row);
  }

  rowFiltered(sheet: number, row: number): boolean {
    const { filtered, hiddenRows } = this.sheet(sheet);
    return filtered.some((area) => row > area.top && row <= area.bottom) && hiddenRows.has(row);
  }
}
