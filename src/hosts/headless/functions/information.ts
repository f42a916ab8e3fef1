import { CellError } from "../../../units/cell.ts";
import { isReference, NA } from "../evaluate/value.ts";
import { define, type WorksheetFunction } from "./define.ts";

export const information: readonly WorksheetFunction[] = [
  define("ISERROR", "e", (value) => value instanceof CellError),
  define("ISERR", "e", (value) => value instanceof CellError && value.code !== "#N/A"),
  define("ISNA", "e", (value) => value instanceof CellError && value.code === "#N/A"),
  define("ISNUMBER", "e", (value) => typeof value === "number"),
  define("ISTEXT", "e", (value) => typeof value === "string"),
  define("ISNONTEXT", "e", (value) => typeof value !== "string"),
  define("ISLOGICAL", "e", (value) => typeof value === "boolean"),
  define("ISBLANK", "e", (value) => value === null),
  define("ISREF", "s", (value) => isReference(value)),
  define("NA", "", () => NA),
];
