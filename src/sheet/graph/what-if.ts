import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { itemAt, topLeft } from "../../units/certain.ts";
import { Frame } from "../evaluate/frame.ts";
import { dereference, intersect } from "../evaluate/reference.ts";
import { isMatrix, type RangeRef, REF } from "../evaluate/value.ts";
import { parseCell } from "../formula/address.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";
import type { Sheet } from "../workbook/sheet.ts";
import type { Dependants } from "./dependants.ts";
import type { WorkbookGrid } from "./workbook-grid.ts";

interface Input {
  readonly row: number;
  readonly column: number;
}

/** A deeper chain of formulas than this is not followed for another input. */
const DEEPEST = 500;

/**
 * The workbook with other values in one or two input cells of a sheet: whatever depends on them is evaluated anew, on
 * demand, and forgotten afterwards. Everything else reads through to the calculated workbook.
 */
function otherwise(
  grid: WorkbookGrid,
  sheets: readonly Sheet[],
  affected: ReadonlySet<FormulaCell>,
  values: ReadonlyMap<string, CellValue>,
): WorkbookGrid {
  const known = new Map<FormulaCell, CellValue>();
  let depth = 0;
  const cell = (sheet: number, row: number, column: number): CellValue => {
    const given = values.get(`${sheet} ${row} ${column}`);
    if (given !== undefined) return given;
    const owner = sheets[sheet]?.owners[column]?.[row];
    if (!owner || !affected.has(owner) || owner.kind !== "normal") return grid.cell(sheet, row, column);
    const ready = known.get(owner);
    if (ready !== undefined) return ready;
    if (++depth > DEEPEST) throw new RangeError("what-if chain too deep");
    const frame = new Frame(self, owner.sheet, owner.row, owner.column, owner.literals);
    const value = intersect(owner.compiled.code(frame), frame) ?? 0;
    depth--;
    known.set(owner, value);
    return value;
  };
  const matrix = (ref: RangeRef): CellMatrix =>
    Array.from({ length: Math.min(ref.rows, Math.max(1, grid.lastRow(ref.sheet) - ref.top + 1)) }, (_, r) =>
      Array.from({ length: ref.columns }, (_, c) => cell(ref.sheet, ref.top + r, ref.left + c)),
    );
  const self = Object.assign(Object.create(grid) as WorkbookGrid, {
    memo: new Map(),
    cell,
    matrix,
    visit: (ref: RangeRef, see: (value: CellValue, row: number, column: number) => void) =>
      matrix(ref).forEach((line, r) => {
        line.forEach((value, c) => {
          if (value !== null) see(value, ref.top + r, ref.left + c);
        });
      }),
    column: (sheet: number, column: number, top: number, bottom: number) => {
      const out: CellValue[] = [];
      for (let row = top; row <= Math.min(bottom, grid.lastRow(sheet)); row++) out[row] = cell(sheet, row, column);
      return out;
    },
  });
  return self;
}

/**
 * Fills a what-if data table: every cell shows its row's or column's formula (or the corner's, for two inputs) with the
 * margin values put into the input cells. ECMA-376 part 1, 18.3.1.40: r1 is the row input of a two-input table.
 */
export function fillDataTable(
  table: FormulaCell,
  grid: WorkbookGrid,
  sheets: readonly Sheet[],
  dependants: Dependants,
): void {
  const { ref, inputs, sheet } = table;
  if (!ref || !inputs) return;
  const own = itemAt(sheets, sheet);
  const [first, second] = [place(inputs.first, inputs.firstDeleted), place(inputs.second, inputs.secondDeleted)];
  const two = inputs.second !== undefined;
  const area = ({ row, column }: Input) => ({ sheet, area: { top: row, left: column, bottom: row, right: column } });
  const starts = [first, second].flatMap((input) => (input ? [area(input)] : []));
  const affected = dependants.all(starts);
  for (let row = ref.top; row <= ref.bottom; row++) {
    for (let column = ref.left; column <= ref.right; column++) {
      if (!first || (two && !second)) {
        own.set(row, column, REF);
        continue;
      }
      const above = grid.cell(sheet, ref.top - 1, column);
      const beside = grid.cell(sheet, row, ref.left - 1);
      const key = ({ row: r, column: c }: Input): string => `${sheet} ${r} ${c}`;
      const values = new Map<string, CellValue>();
      values.set(key(first), (two || inputs.byRow ? above : beside) ?? 0);
      if (second) values.set(key(second), beside ?? 0);
      const [fromRow, fromColumn] = two
        ? [ref.top - 1, ref.left - 1]
        : inputs.byRow
          ? [row, ref.left - 1]
          : [ref.top - 1, column];
      const scene = otherwise(grid, sheets, affected, values);
      const value = dereference(scene.cell(sheet, fromRow, fromColumn), new Frame(scene, sheet, row, column, []));
      own.set(row, column, isMatrix(value) ? topLeft(value) : (value ?? 0));
    }
  }
}

const place = (name: string | undefined, deleted: boolean): Input | undefined =>
  name === undefined || deleted ? undefined : parseCell(name);
