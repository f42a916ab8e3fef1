/** The rows of a part list's file, whatever kind it is: CSV parted by any sign, or the sheet of a workbook. */
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { Refusal } from "../../units/refusal.ts";
import { bookOf } from "../workbook-book.ts";
import { csvText, parseCsv, SEPARATORS } from "./csv.ts";
import { findHeading, known } from "./heading.ts";
import { checkListSize } from "./list-limits.ts";

export interface ListRows {
  readonly rows: CellMatrix;
  /** "semicolons", "sheet Parts": what the rows were told by. */
  readonly from: string;
}

const NAMES: Readonly<Record<string, string>> = { ",": "commas", ";": "semicolons", "\t": "tabs" };
const ZIP = [0x50, 0x4b];

export function rowsOfFile(bytes: Uint8Array): ListRows {
  const found = rowsIn(bytes);
  checkListSize(found.rows);
  return found;
}

function rowsIn(bytes: Uint8Array): ListRows {
  if (ZIP.every((byte, i) => bytes[i] === byte)) return ofWorkbook(bytes);
  const { text, separator } = csvText(bytes);
  const faults: Refusal[] = [];
  const parted = (separator === undefined ? SEPARATORS : [separator]).flatMap((by) => partedBy(text, by, faults));
  // The sign under which the heading tells most; without a heading the one that parts most.
  const [best] = parted.sort((a, b) => b.told - a.told || b.parts - a.parts);
  // A quote that ends nowhere may be why the others tell nothing.
  if (faults[0] && !best?.told) throw faults[0];
  if (!best) return { rows: [], from: "commas" };
  return { rows: best.rows, from: NAMES[best.by] ?? `"${best.by}"` };
}

function partedBy(text: string, by: string, faults: Refusal[]) {
  let rows: CellMatrix;
  try {
    rows = parseCsv(text, by);
  } catch (problem) {
    if (!(problem instanceof Refusal)) throw problem;
    faults.push(problem);
    return [];
  }
  const heading = findHeading(rows);
  return [{ by, rows, told: heading ? known(heading) : 0, parts: rows.reduce((sum, row) => sum + row.length, 0) }];
}

/** The sheet whose heading tells most; the first where none does. */
function ofWorkbook(bytes: Uint8Array): ListRows {
  const sheets = bookOf(readWorkbook(bytes)).map((sheet) => {
    const heading = findHeading(sheet.rows);
    return { ...sheet, told: heading ? known(heading) : 0 };
  });
  const best = sheets.reduce((a, b) => (b.told > a.told ? b : a));
  return { rows: best.rows as CellMatrix, from: `sheet ${best.name}` };
}
