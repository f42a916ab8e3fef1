import { CellError, ERROR_CODES } from "../../units/cell.ts";
import { toNumber } from "../evaluate/coerce.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { keep } from "../evaluate/keep.ts";
import { firstValue, intersect } from "../evaluate/reference.ts";
import { isMatrix, isReference, Lambda, NA, RangeRef, VALUE } from "../evaluate/value.ts";
import { cellName, columnLetters } from "../formula/address.ts";
import { define, defineIn } from "./define.ts";

const parity = (name: string, odd: boolean): WorksheetFunction =>
  define(name, "value", (value) => {
    if (typeof value === "boolean") return VALUE;
    const number = toNumber(value);
    return number instanceof CellError ? number : Math.abs(Math.trunc(number)) % 2 === (odd ? 1 : 0);
  });

export const information: readonly WorksheetFunction[] = [
  define("ISERROR", "any", (value) => value instanceof CellError),
  define("ISERR", "any", (value) => value instanceof CellError && value.code !== "#N/A"),
  define("ISNA", "any", (value) => value instanceof CellError && value.code === "#N/A"),
  define("ISNUMBER", "any", (value) => typeof value === "number"),
  define("ISTEXT", "any", (value) => typeof value === "string"),
  define("ISNONTEXT", "any", (value) => typeof value !== "string"),
  define("ISLOGICAL", "any", (value) => typeof value === "boolean"),
  define("ISBLANK", "any", (value) => value === null),
  define("ISREF", "range", (value) => isReference(value)),
  parity("ISEVEN", false),
  parity("ISODD", true),
  define("NA", "", () => NA),
  defineIn("N", "range", (frame, given) => {
    const value = firstValue(given, frame);
    return typeof value === "number" || value instanceof CellError ? value : value === true ? 1 : 0;
  }),
  define("ERROR.TYPE", "any", (value) =>
    value instanceof CellError && value.code !== "#BUSY!" ? ERROR_CODES.indexOf(value.code) + 1 : NA,
  ),
  defineIn("TYPE", "range", (frame, given) => {
    if (isMatrix(given) || (given instanceof RangeRef && !given.isCell)) return 64;
    if (given instanceof Lambda) return 128;
    const value = intersect(given, frame);
    if (value instanceof CellError) return 16;
    return typeof value === "string" ? 2 : typeof value === "boolean" ? 4 : 1;
  }),
  defineIn("CELL", "text [range]", (frame, what, given) => {
    const ref = given ?? new RangeRef(frame.sheet, frame.row, frame.column, frame.row, frame.column);
    if (!(ref instanceof RangeRef)) return VALUE;
    const value = frame.grid.cell(ref.sheet, ref.top, ref.left);
    switch (what.toLowerCase()) {
      case "row":
        return ref.top + 1;
      case "col":
        return ref.left + 1;
      case "address":
        // On another sheet the answer begins with the file's own name.
        if (ref.sheet !== frame.sheet) return keep("unsupported-syntax", "CELL asks about the file's name");
        return `$${columnLetters(ref.left)}$${ref.top + 1}`;
      case "contents":
        return value ?? 0;
      case "type":
        return value === null ? "b" : typeof value === "string" ? "l" : "v";
      default:
        return keep(
          "unsupported-syntax",
          `CELL("${what}", ${cellName(ref.top, ref.left)}) asks about the file or its looks`,
        );
    }
  }),
];
