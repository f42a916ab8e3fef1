import { refuse } from "../../sheet/package/file-refusal.ts";
import type { CellMatrix } from "../../units/cell.ts";

/** What a worksheet holds (Microsoft's specifications and limits of Excel): a list beyond is no list of parts. */
const MOST = { rows: 1_048_576, columns: 16_384, letters: 32_767 } as const;

/** Refuses a part list that no worksheet could hold, before anything is made of it. */
export function checkListSize(rows: CellMatrix): void {
  if (rows.length > MOST.rows) refuse("too-large", "part list", `at most ${MOST.rows} lines`, rows.length);
  rows.forEach((row, i) => {
    const line = `part list line ${i + 1}`;
    if (row.length > MOST.columns) refuse("too-large", line, `at most ${MOST.columns} fields`, row.length);
    const long = row.find((field) => typeof field === "string" && field.length > MOST.letters);
    if (long !== undefined)
      refuse("too-large", `${line}, a field,`, `at most ${MOST.letters} letters`, String(long).length);
  });
}
