/** A value as the sheet shows it: in its number format, figures without one to six significant places. */
import { format as inFormat } from "numfmt";
import { type CellValue, isBlank, isCellError } from "../../units/cell.ts";
import { showNumber } from "../../units/show.ts";
import type { ShownCell } from "./protocol.ts";

const PLACES = 6; // as many as a usual column has room for

export function shownCell(value: CellValue | undefined, format: string | undefined): ShownCell | null {
  if (value === undefined || isBlank(value)) return null;
  if (isCellError(value)) return { text: value.code, kind: "error", message: value.message };
  if (typeof value === "boolean") return { text: value ? "TRUE" : "FALSE", kind: "text" };
  if (typeof value === "string") return { text: value, kind: "text" };
  return { text: numberText(value, format), kind: "number" };
}

function numberText(value: number, format: string | undefined): string {
  if (format === undefined || format === "@" || format === "General") return showNumber(value, PLACES);
  try {
    return inFormat(format, value);
  } catch {
    return showNumber(value, PLACES); // a format that only another program understands
  }
}
