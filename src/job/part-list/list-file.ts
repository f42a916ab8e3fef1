/** The rows of a part list's file, whatever kind it is: CSV parted by any sign, or the sheet of a workbook. */
import { FileRefusal, refuse } from "../../sheet/package/file-refusal.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { Refusal } from "../../units/refusal.ts";
import { bookOf } from "../workbook-book.ts";
import { csvRows, csvText, SEPARATORS } from "./csv.ts";
import { findHeading, known, LOOKED_THROUGH } from "./heading.ts";
import { ListSize, MOST } from "./list-limits.ts";

interface ListRows {
  readonly rows: CellMatrix;
  /** "semicolons", "sheet Parts": what the rows were told by. */
  readonly from: string;
}

const NAMES: Readonly<Record<string, string>> = { ",": "commas", ";": "semicolons", "\t": "tabs" };
const ZIP = [0x50, 0x4b];

/** Throws FileRefusal where it is larger than any list, Refusal where it cannot be told apart. */
export function rowsOfFile(bytes: Uint8Array): ListRows {
  if (bytes.length > MOST.bytes) refuse("too-large", "part list", `at most ${MOST.bytes} bytes`, bytes.length);
  if (ZIP.every((byte, i) => bytes[i] === byte)) return ofWorkbook(bytes);
  const { text, separator } = csvText(bytes);
  const faults: (Refusal | FileRefusal)[] = [];
  const parted = (separator === undefined ? SEPARATORS : [separator]).flatMap((by) => partedBy(text, by, faults));
  // The sign under which the heading tells most; without a heading the one that parts most.
  const [best] = parted.sort((a, b) => b.told - a.told || b.parts - a.parts);
  // An unclosed quote may be why the other separators tell nothing.
  if (faults[0] && !best?.told) throw faults[0];
  if (!best) return { rows: [], from: "commas" };
  return { rows: [...csvRows(text, best.by)], from: NAMES[best.by] ?? `"${best.by}"` };
}

/** How the first rows look, parted by this sign: a heading stands among them or nowhere. */
function partedBy(text: string, by: string, faults: (Refusal | FileRefusal)[]) {
  const rows: CellMatrix = [];
  try {
    for (const row of csvRows(text, by)) if (rows.push(row) > LOOKED_THROUGH) break;
  } catch (problem) {
    if (!(problem instanceof Refusal) && !(problem instanceof FileRefusal)) throw problem;
    faults.push(problem);
    return [];
  }
  const heading = findHeading(rows);
  return [{ by, told: heading ? known(heading) : 0, parts: rows.reduce((sum, row) => sum + row.length, 0) }];
}

/** The sheet whose heading tells most; the first where none does. */
function ofWorkbook(bytes: Uint8Array): ListRows {
  const sheets = bookOf(readWorkbook(bytes)).map((sheet) => {
    const heading = findHeading(sheet.rows);
    return { ...sheet, told: heading ? known(heading) : 0 };
  });
  const best = sheets.reduce((a, b) => (b.told > a.told ? b : a));
  const size = new ListSize();
  for (const row of best.rows) {
    for (const cell of row) size.field(cell);
    size.line();
  }
  return { rows: best.rows as CellMatrix, from: `sheet ${best.name}` };
}
