/** "A1" and back. Rows and columns are 0-based inside. */
export function columnLetters(column: number): string {
  let letters = "";
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

export const cellName = (row: number, column: number): string => columnLetters(column) + (row + 1);

export function columnNumber(letters: string): number {
  let column = 0;
  for (let i = 0; i < letters.length; i++) column = column * 26 + (letters.charCodeAt(i) & 31);
  return column - 1;
}

/** "B3" or "$B$3" as row and column; undefined for anything else or beyond the sheet. */
export function parseCell(text: string): { readonly row: number; readonly column: number } | undefined {
  const match = /^\$?([A-Za-z]{1,3})\$?([1-9]\d{0,6})$/.exec(text);
  if (!match) return undefined;
  const row = Number(match[2]) - 1;
  const column = columnNumber(match[1] ?? "");
  return row <= 1_048_575 && column <= 16_383 ? { row, column } : undefined;
}

export interface Area {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** "A1" or "A1:B2" as written in ref attributes. */
export function parseArea(text: string): Area | undefined {
  const [first = "", last = first] = text.split(":");
  const a = parseCell(first);
  const b = parseCell(last);
  if (!a || !b) return undefined;
  return {
    top: Math.min(a.row, b.row),
    left: Math.min(a.column, b.column),
    bottom: Math.max(a.row, b.row),
    right: Math.max(a.column, b.column),
  };
}

export const areaName = (area: Area): string =>
  area.top === area.bottom && area.left === area.right
    ? cellName(area.top, area.left)
    : `${cellName(area.top, area.left)}:${cellName(area.bottom, area.right)}`;
