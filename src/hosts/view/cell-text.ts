/** A value as the sheet shows it: in its number format, figures without one to six significant places. */
import { format as inFormat } from "numfmt";
import { type CellValue, isBlank, isCellError } from "../../units/cell.ts";
import { namesGauge } from "../../units/parse-gauge.ts";
import { parseLength } from "../../units/parse-length.ts";
import { showNumber } from "../../units/show.ts";
import type { ShownCell } from "./protocol.ts";

const PLACES = 6; // as many as a usual column has room for

export function shownCell(value: CellValue | undefined, format: string | undefined): ShownCell | null {
  if (value === undefined || isBlank(value)) return null;
  if (isCellError(value)) return { text: value.code, kind: "error", message: value.message };
  if (typeof value === "boolean") return { text: value ? "TRUE" : "FALSE", kind: "text" };
  if (typeof value === "string") return { text: value, kind: isFigure(value) ? "number" : "text" };
  return { text: numberText(value, format), kind: "number" };
}

/** 3/16, 10 ga, 2; 3.5: a number to who reads it, and it stands where numbers stand. */
const isFigure = (text: string): boolean =>
  /\d/.test(text) && text.split(";").every((item) => parseLength(item, "in") !== undefined || namesGauge(item.trim()));

function numberText(value: number, format: string | undefined): string {
  if (format === undefined || format === "@" || format === "General") return showNumber(value, PLACES);
  try {
    return inFormat(format, value);
  } catch {
    return showNumber(value, PLACES); // a format that only another program understands
  }
}
