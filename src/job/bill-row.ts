/** Which line of the bill a row of a sheet is about: the row itself on the bill's sheet, elsewhere by the part it names. */

import type { LineAnswer } from "../bill/plan.ts";
import { foldHeader, HEADER_WORDS } from "../cells/tables/recognized.ts";
import { isBlank } from "../units/cell.ts";
import { firstOf } from "../units/certain.ts";
import { type BookSheet, cellAt } from "./book.ts";
import type { JobPlan } from "./job-plan.ts";

const PART_WORDS = firstOf(HEADER_WORDS.bill.has).map(foldHeader);

export function billRowAt({ table, plan }: JobPlan, sheet: BookSheet, row: number): LineAnswer | undefined {
  const { lines } = plan;
  if (sheet.name === table.sheet.name) {
    const inTable = row - table.top + 1; // the header is row 1
    return lines.find((line) => line.row === inTable);
  }
  const part = partNamed(sheet, row);
  return part === undefined ? undefined : lines.find((line) => line.part.toLowerCase() === part.toLowerCase());
}

/** The cell of this row under the nearest header that says "Part". */
function partNamed(sheet: BookSheet, row: number): string | undefined {
  for (let above = row - 1; above >= 0; above--)
    for (let column = 0; column < (sheet.rows[above]?.length ?? 0); column++) {
      if (!PART_WORDS.includes(foldHeader(cellAt(sheet, above, column)))) continue;
      const cell = cellAt(sheet, row, column);
      return isBlank(cell) ? undefined : String(cell);
    }
  return undefined;
}
