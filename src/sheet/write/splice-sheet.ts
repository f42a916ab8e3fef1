import { firstOf, lastOf } from "../../units/certain.ts";
import { columnLetters, parseArea } from "../formula/address.ts";
import type { Sheet } from "../workbook/sheet.ts";
import { newCell, replacedCell } from "./cell-xml.ts";
import type { ChangedCell } from "./changed-cells.ts";
import { type Edit, pushValueEdits } from "./value-edit.ts";

/** The sheet's XML with the changed cells replaced or inserted; everything between them is copied. */
export function spliceSheet(xml: string, sheet: Sheet, changed: readonly ChangedCell[]): string {
  const edits: Edit[] = [];
  const { layout } = sheet;
  const prefix = prefixOf(xml, layout.dataOpenEnd);
  let cell = 0;
  let lastRowEnd = layout.dataOpenEnd;
  const wanted = [...groupByRow(changed)].sort(([a], [b]) => b - a);
  /** The next row that has changed cells, if it stands at or above `most`. */
  const due = (most: number) => (wanted.length > 0 && lastOf(wanted)[0] <= most ? wanted.pop() : undefined);
  for (let i = 0; i < layout.rowNumber.length; i++) {
    const row = layout.rowNumber.at(i);
    const start = layout.rowStart.at(i);
    const end = layout.rowEnd.at(i);
    for (let above = due(row - 1); above; above = due(row - 1)) edits.push(newRow(above[1], prefix, start));
    while (cell < layout.cellRow.length && layout.cellStart.at(cell) < start) cell++;
    let next = cell;
    while (next < layout.cellRow.length && layout.cellStart.at(next) < end) next++;
    const here = due(row);
    if (here) edits.push(...rowEdits(xml, sheet, { row: i, from: cell, to: next }, here[1], prefix));
    cell = next;
    lastRowEnd = end;
  }
  for (const [, cells] of wanted.reverse()) edits.push(newRow(cells, prefix, lastRowEnd));
  const dimension = dimensionEdit(xml, changed, layout.dataOpenEnd);
  return apply(xml, dimension ? [dimension, ...edits] : edits);
}

function groupByRow(changed: readonly ChangedCell[]): Map<number, ChangedCell[]> {
  const rows = new Map<number, ChangedCell[]>();
  for (const cell of changed) {
    const list = rows.get(cell.row);
    if (list) list.push(cell);
    else rows.set(cell.row, [cell]);
  }
  return rows;
}

function rowEdits(
  xml: string,
  sheet: Sheet,
  /** The row, and its cells, by their place in the layout. */
  { row, from, to }: { readonly row: number; readonly from: number; readonly to: number },
  changed: readonly ChangedCell[],
  prefix: string,
): Edit[] {
  const { layout } = sheet;
  const openStart = layout.rowStart.at(row);
  const openEnd = layout.rowOpenEnd.at(row);
  const end = layout.rowEnd.at(row);
  const edits: Edit[] = [];
  let at = from;
  let inserted = "";
  for (const change of changed) {
    while (at < to && layout.cellColumn.at(at) < change.column) at++;
    if (at < to && layout.cellColumn.at(at) === change.column) {
      const [start, stop] = [layout.cellStart.at(at), layout.cellEnd.at(at)];
      if (prefix !== "" || !pushValueEdits(edits, xml, start, stop, change))
        edits.push({ start, end: stop, text: replacedCell(xml.slice(start, stop), change) });
      continue;
    }
    const text = newCell(change, prefix);
    if (text === "") continue;
    inserted += text;
    const place = at < to ? layout.cellStart.at(at) : at > from ? layout.cellEnd.at(at - 1) : openEnd;
    if (openEnd < end) edits.push({ start: place, end: place, text });
  }
  const open = widenSpans(xml.slice(openStart, openEnd), changed);
  if (openEnd === end && inserted !== "") {
    // An empty row <row .../> opens up for its new cells.
    edits.push({ start: openStart, end, text: `${open.replace(/\s*\/>$/, ">")}${inserted}</${prefix}row>` });
  } else if (inserted !== "" && open !== xml.slice(openStart, openEnd)) {
    edits.unshift({ start: openStart, end: openEnd, text: open });
  }
  return edits;
}

/** spans="1:5" promises where a row's cells stand; new cells may lie outside. */
function widenSpans(open: string, changed: readonly ChangedCell[]): string {
  return open.replace(/(\sspans\s*=\s*["'])(\d+):(\d+)(["'])/, (_all, before, first, last, after) => {
    const columns = changed.map((cell) => cell.column + 1);
    return `${before}${Math.min(Number(first), ...columns)}:${Math.max(Number(last), ...columns)}${after}`;
  });
}

function newRow(cells: readonly ChangedCell[], prefix: string, at: number): Edit {
  const text = cells.map((cell) => newCell(cell, prefix)).join("");
  return {
    start: at,
    end: at,
    text: text === "" ? "" : `<${prefix}row r="${firstOf(cells).row + 1}">${text}</${prefix}row>`,
  };
}

const prefixOf = (xml: string, dataOpenEnd: number): string =>
  /<([\w.-]+:)?sheetData\b[^<]*$/.exec(xml.slice(0, dataOpenEnd))?.[1] ?? "";

/** The used range grows when a spill reaches beyond it. */
function dimensionEdit(xml: string, changed: readonly ChangedCell[], before: number): Edit | undefined {
  const match = /<(?:[\w.-]+:)?dimension\b[^>]*?\sref\s*=\s*["']([^"']+)["']/.exec(xml.slice(0, before));
  const [whole = "", ref = ""] = match ?? [];
  const area = parseArea(ref);
  if (!match || !area) return undefined;
  let { top, left, bottom, right } = area;
  for (const { row, column, value } of changed) {
    if (value === undefined) continue;
    top = Math.min(top, row);
    left = Math.min(left, column);
    bottom = Math.max(bottom, row);
    right = Math.max(right, column);
  }
  if (top === area.top && left === area.left && bottom === area.bottom && right === area.right) return undefined;
  const start = match.index + whole.length - 1 - ref.length;
  const text = `${columnLetters(left)}${top + 1}:${columnLetters(right)}${bottom + 1}`;
  return { start, end: start + ref.length, text };
}

function apply(xml: string, edits: readonly Edit[]): string {
  const pieces: string[] = [];
  let at = 0;
  for (const edit of edits) {
    pieces.push(xml.slice(at, edit.start), edit.text);
    at = edit.end;
  }
  pieces.push(xml.slice(at));
  return pieces.join("");
}
