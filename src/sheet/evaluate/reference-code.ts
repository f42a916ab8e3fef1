import { parseA1Ref, parseStructRef } from "@borgar/fx/xlsx";
import type { CellValue } from "../../units/cell.ts";
import { SyntaxRefusal } from "../formula/parse.ts";
import type { Compiling } from "./compiling.ts";
import type { Code, Frame } from "./frame.ts";
import { keep } from "./keep.ts";
import type { Table } from "./table.ts";
import { AreaList, LAST_COLUMN, LAST_ROW, RangeRef, REF, VALUE } from "./value.ts";

export interface ReferenceCode {
  readonly code: Code;
  /** For a reference to one cell: its value straight away. */
  readonly cell?: (frame: Frame) => CellValue;
}

// A relative reference that runs over the sheet's edge comes back in on the other side, as in Excel.
export const wrap = (value: number, last: number): number =>
  value < 0 ? value + last + 1 : value > last ? value - last - 1 : value;

/** "Sheet1!$A2:B7", "A:A", "Sheet1:Sheet3!A1". */
export function compileRange(compiler: Compiling, text: string): ReferenceCode {
  const parsed = parseA1Ref(text, { allowNamed: false });
  if (!parsed || !("range" in parsed)) throw new SyntaxRefusal(`cannot read the reference ${text}`);
  if (parsed.workbookName && parsed.workbookName !== "0") return { code: () => keep("external-link", text) };
  const { range } = parsed;
  const top = range.top ?? 0;
  const bottom = range.bottom ?? LAST_ROW;
  const left = range.left ?? 0;
  const right = range.right ?? LAST_COLUMN;
  const relativeTop = range.top != null && !range.$top;
  const relativeBottom = range.bottom != null && !range.$bottom;
  // Beams (A:A, 1:1) keep their own place: their key names them absolutely.
  const beam = range.top == null || range.left == null;
  const relativeLeft = range.left != null && !range.$left;
  const relativeRight = range.right != null && !range.$right;
  const rowBase = (relative: boolean, value: number): number => (relative && !beam ? value - compiler.row : value);
  const columnBase = (relative: boolean, value: number): number =>
    relative && !beam ? value - compiler.column : value;
  const [first, last] = sheetsOf(compiler, parsed.sheetName);
  if (first === undefined || last === undefined) return { code: () => REF };
  const shape = {
    top: rowBase(relativeTop, top),
    left: columnBase(relativeLeft, left),
    bottom: rowBase(relativeBottom, bottom),
    right: columnBase(relativeRight, right),
    relativeTop: relativeTop && !beam,
    relativeLeft: relativeLeft && !beam,
    relativeBottom: relativeBottom && !beam,
    relativeRight: relativeRight && !beam,
  };
  for (let sheet = first; sheet <= last; sheet++) compiler.precedents.push({ sheet, ...shape });
  const at = (frame: Frame, sheet: number): RangeRef => {
    let t = shape.relativeTop ? wrap(shape.top + frame.row, LAST_ROW) : shape.top;
    let b = shape.relativeBottom ? wrap(shape.bottom + frame.row, LAST_ROW) : shape.bottom;
    let l = shape.relativeLeft ? wrap(shape.left + frame.column, LAST_COLUMN) : shape.left;
    let r = shape.relativeRight ? wrap(shape.right + frame.column, LAST_COLUMN) : shape.right;
    if (t > b) [t, b] = [b, t];
    if (l > r) [l, r] = [r, l];
    return new RangeRef(sheet < 0 ? frame.sheet : sheet, t, l, b, r);
  };
  if (last > first) {
    const sheets = Array.from({ length: last - first + 1 }, (_, i) => first + i);
    return { code: (frame) => new AreaList(sheets.map((sheet) => at(frame, sheet))) };
  }
  const code: Code = (frame) => at(frame, first);
  const isCell =
    !beam && top === bottom && left === right && range.$top === range.$bottom && range.$left === range.$right;
  if (!isCell) return { code };
  const { top: r0, left: c0, relativeTop: rr, relativeLeft: rc } = shape;
  const cell = (frame: Frame): CellValue =>
    frame.grid.cell(
      first < 0 ? frame.sheet : first,
      rr ? wrap(r0 + frame.row, LAST_ROW) : r0,
      rc ? wrap(c0 + frame.column, LAST_COLUMN) : c0,
    );
  return { code, cell };
}

/** First and last sheet of a reference; -1 is the formula's own. */
function sheetsOf(compiler: Compiling, name: string | undefined): [number | undefined, number | undefined] {
  if (!name) return [-1, -1];
  const whole = compiler.grid.sheetIndex(name);
  if (whole !== undefined) return [whole, whole];
  const [from = "", to = ""] = name.split(":");
  const a = compiler.grid.sheetIndex(from);
  const b = compiler.grid.sheetIndex(to);
  return a === undefined || b === undefined ? [undefined, undefined] : [Math.min(a, b), Math.max(a, b)];
}

/** "Table1[[#This Row],[Width]]" and its shorter forms. */
export function compileTable(compiler: Compiling, text: string): ReferenceCode {
  const parsed = parseStructRef(text);
  if (!parsed) throw new SyntaxRefusal(`cannot read the table reference ${text}`);
  if (parsed.workbookName && parsed.workbookName !== "0") return { code: () => keep("external-link", text) };
  if (!parsed.table) compiler.local = true;
  const table = parsed.table
    ? compiler.grid.table(parsed.table)
    : compiler.grid.tableAt(compiler.sheet, compiler.row, compiler.column);
  if (!table) return { code: () => REF };
  const columns = parsed.columns ?? [];
  const places = columns.flatMap((name) => columnOf(table, name) ?? []);
  if (places.length < columns.length) return { code: () => REF };
  const [left, right] =
    places.length > 0
      ? [table.left + Math.min(...places), table.left + Math.max(...places)]
      : [table.left, table.right];
  const sections = (parsed.sections ?? []).map((section) => section.toLowerCase());
  const dataTop = table.top + table.headerRows;
  const dataBottom = table.bottom - table.totalsRows;
  const absolute = { relativeTop: false, relativeLeft: false, relativeBottom: false, relativeRight: false };
  if (sections.includes("this row")) {
    compiler.precedents.push({
      sheet: table.sheet,
      top: 0,
      left,
      bottom: 0,
      right,
      ...absolute,
      relativeTop: true,
      relativeBottom: true,
    });
    const code: Code = (frame) =>
      frame.row >= dataTop && frame.row <= dataBottom
        ? new RangeRef(table.sheet, frame.row, left, frame.row, right)
        : VALUE;
    return { code };
  }
  const all = sections.includes("all");
  let top = dataTop;
  let bottom = dataBottom;
  if (all) [top, bottom] = [table.top, table.bottom];
  else if (sections.length > 0) {
    if (sections.includes("headers")) top = table.top;
    if (sections.includes("totals")) bottom = table.bottom;
    if (!sections.includes("data")) {
      if (!sections.includes("totals")) bottom = dataTop - 1;
      if (!sections.includes("headers")) top = dataBottom + 1;
    }
  }
  if (top > bottom) return { code: () => REF };
  const ref = new RangeRef(table.sheet, top, left, bottom, right);
  compiler.precedents.push({ sheet: table.sheet, top, left, bottom, right, ...absolute });
  return { code: () => ref };
}

function columnOf(table: Table, name: string): number | undefined {
  const wanted = name.toLowerCase();
  const index = table.columns.findIndex((column) => column.toLowerCase() === wanted);
  return index >= 0 ? index : undefined;
}
