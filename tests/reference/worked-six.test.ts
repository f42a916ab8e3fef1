/** The six lines hold before any of our functions is asked: in ordinary worksheet formulas. */
import { describe, expect, it } from "vitest";
import { writeWorkbookModel } from "../../src/job/xlsx/write.ts";
import { noCustomFunctions } from "../../src/sheet/evaluate/custom-functions.ts";
import { parseCell } from "../../src/sheet/formula/address.ts";
import { Calculator } from "../../src/sheet/graph/calculator.ts";
import type { CellValue } from "../../src/units/cell.ts";
import { type Given, valueAt, workbookOf } from "../sheet/evaluate-on-grid.ts";
import { cellsInLibreOffice, HAS_LIBREOFFICE } from "./in-libreoffice.ts";
import { cellOfRow, SIX_LINES, TOTAL_CELLS, WORKED_ROWS, workedSheets } from "./worked-six.ts";

const { Six, Shop } = workedSheets();
const workbook = workbookOf({ Six: Six as Record<string, Given>, Shop: Shop as Record<string, Given> });
new Calculator(workbook, { functions: noCustomFunctions }).calculateAll();
const at = (cell: string) => valueAt(workbook, cell) as number;

/** The same sheets as a workbook that holds no answers. */
const file = () => {
  const cells = (of: Record<string, CellValue>) =>
    Object.entries(of).map(([name, given]) => {
      const { row, column } = parseCell(name)!;
      const place = { row: row + 1, column: column + 1 };
      return typeof given === "string" && given.startsWith("=")
        ? { ...place, formula: given.slice(1) }
        : { ...place, value: given };
    });
  const sheet = (name: string, of: Record<string, CellValue>) => {
    const sorted = cells(of).sort((a, b) => a.row - b.row || a.column - b.column);
    return { name, widths: [20], cells: sorted, print: { landscape: false } };
  };
  return writeWorkbookModel(
    { title: "Six lines by hand", sheets: [sheet("Six", Six), sheet("Shop", Shop)] },
    () => undefined,
  );
};

describe("six lines in ordinary formulas", () => {
  it.skipIf(!HAS_LIBREOFFICE)(
    "LibreOffice has the same in every cell",
    () => {
      const rows = cellsInLibreOffice(file());
      WORKED_ROWS.forEach(({ name }, i) => {
        const [what, ...values] = rows[i + 1]!;
        expect(what).toBe(name);
        SIX_LINES.forEach((line, j) => {
          expect(Number(values[j]), `${name} of ${line}`).toBeCloseTo(at(cellOfRow(name, j)), 8);
        });
      });
    },
    120_000,
  );
  it("every row is a number", () => {
    for (const { name } of WORKED_ROWS)
      SIX_LINES.forEach((line, i) => {
        expect(at(cellOfRow(name, i)), `${name} of ${line}`).toBeTypeOf("number");
      });
  });
  it("prices each to the cent; tax on all of it", () => {
    expect(SIX_LINES.map((_, i) => at(cellOfRow("unitPrice", i)))).toEqual([
      109.94, 31.79, 112.79, 170.47, 75.4, 86.5, 45.25,
    ]);
    expect(Object.values(TOTAL_CELLS).map((cell) => at(cell).toFixed(2))).toEqual(["3036.45", "191.19", "3377.64"]);
  });
  it("a small stainless foot is believed: 20 to 45 each, though a sheet of 800 is pulled for eight", () => {
    const foot = at(cellOfRow("unitPrice", 1));
    expect(foot).toBeGreaterThanOrEqual(20);
    expect(foot).toBeLessThanOrEqual(45);
  });
});
