/** A sheet of the workbook as the page shows it: values in their formats, which rows head its tables, where it belongs. */
import type { Sheet } from "../../sheet/workbook/sheet.ts";
import type { Workbook } from "../../sheet/workbook/workbook.ts";
import { shownCell } from "./cell-text.ts";
import type { SheetLooks } from "./looks.ts";
import type { SheetView } from "./protocol.ts";

/** Empty rows and columns around what is filled, so that there is room to type. */
const ROOM = { rows: 20, columns: 1 };

export function sheetView(workbook: Workbook, sheet: Sheet, looks: SheetLooks): SheetView {
  const [rows, columns] = [sheet.lastRow + 1 + ROOM.rows, sheet.lastColumn + 1 + ROOM.columns];
  const each = <T>(make: (row: number, column: number) => T): T[][] =>
    Array.from({ length: sheet.lastRow + 1 }, (_, row) =>
      Array.from({ length: sheet.lastColumn + 1 }, (_, column) => make(row, column)),
    );
  return {
    rows,
    columns,
    widths: Array.from({ length: columns }, (_, column) => Math.round(looks.width(column) * 7 + 5)),
    headings: headingRows(workbook, sheet),
    cells: each((row, column) => shownCell(sheet.values[column]?.[row], looks.at(row, column).format)),
    looks: each((row, column) => {
      const { bold, shaded } = looks.at(row, column);
      return bold || shaded ? { bold, shaded } : undefined;
    }),
  };
}

/** Headers of tables, and the words that stand at the top of a block that one formula fills, or right above it. */
function headingRows(workbook: Workbook, sheet: Sheet): number[] {
  const tops = workbook.tables.filter((table) => table.sheet === sheet.index).map(({ top }) => top);
  for (const { covers } of sheet.formulas) {
    if (!covers || covers.bottom === covers.top || covers.right === covers.left) continue;
    const isWords = (row: number) => {
      for (let column = covers.left; column <= covers.right; column++)
        if (typeof sheet.values[column]?.[row] !== "string") return false;
      return true;
    };
    const top = [covers.top, covers.top - 1].find((row) => row >= 0 && isWords(row));
    if (top !== undefined) tops.push(top);
  }
  return [...new Set(tops)].sort((a, b) => a - b);
}

/** What a person does with a sheet, by the names that the sheets of a job bear. */
const GROUPS: Readonly<Record<string, readonly string[]>> = {
  Bill: ["Parts", "Job", "Answers", "Checks", "Summary", "Calculation"],
  Shop: ["Shop", "Machines", "Finished"],
  Cutting: ["Blanks", "Cut plan", "Cut list", "Buying"],
  Work: ["Set-ups", "Route", "Times", "What-if", "Load-in"],
  Money: ["Price", "Quote"],
};

export const groupOf = (name: string): string =>
  Object.entries(GROUPS).find(([, names]) => names.includes(name))?.[0] ?? "More";
