import { noCustomFunctions } from "../../src/sheet/evaluate/custom-functions.ts";
import { parseCell } from "../../src/sheet/formula/address.ts";
import { Calculator } from "../../src/sheet/graph/calculator.ts";
import type { Package } from "../../src/sheet/package/package.ts";
import { FormulaCell, type FormulaKind } from "../../src/sheet/workbook/formula-cell.ts";
import { Sheet } from "../../src/sheet/workbook/sheet.ts";
import type { Workbook } from "../../src/sheet/workbook/workbook.ts";
import { randomFrom } from "../../src/tools/random/random.ts";
import { CellError, type CellValue } from "../../src/units/cell.ts";

export type Given = number | string | boolean | null;

/** A workbook in memory: sheet names to cells; a text that begins with "=" is a formula. */
export function workbookOf(
  sheets: Readonly<Record<string, Readonly<Record<string, Given>>>>,
  kind: FormulaKind = "normal",
  rest: Partial<Workbook> = {},
): Workbook {
  const made = Object.entries(sheets).map(([name, cells], index) => {
    const sheet = new Sheet(index, name, `sheet${index + 1}.xml`);
    for (const [cell, value] of Object.entries(cells)) {
      const { row, column } = parseCell(cell)!;
      if (typeof value === "string" && value.startsWith("=")) {
        const formula = new FormulaCell(
          index,
          row,
          column,
          value.slice(1),
          kind,
          undefined,
          undefined,
          undefined,
          undefined,
        );
        sheet.formulas.push(formula);
        sheet.own(row, column, formula);
        sheet.set(row, column, undefined);
      } else if (value !== null) sheet.set(row, column, value);
    }
    return sheet;
  });
  return {
    package: undefined as unknown as Package,
    sheets: made,
    names: [],
    tables: [],
    date1904: false,
    sheetText: new Map(),
    ...rest,
  };
}

export const valueAt = (workbook: Workbook, cell: string, sheet = 0): CellValue => {
  const { row, column } = parseCell(cell)!;
  return workbook.sheets[sheet]!.values[column]?.[row] ?? null;
};

const random = randomFrom(1);

/** Where the formula under test stands: far from the grid. */
const PROBE = "AZ1";

/** The formula's value on a grid, as rows when it spills; volatile functions see 14 March 2026, 09:30. */
export function evaluateOn(
  cells: Readonly<Record<string, Given>>,
  formula: string,
  rest: Partial<Workbook> = {},
): CellValue | CellValue[][] {
  const workbook = workbookOf({ Sheet1: { ...cells, [PROBE]: `=${formula}` } }, "dynamic", rest);
  const calculator = new Calculator(workbook, { functions: noCustomFunctions, now: 46_095.395833333336 });
  Object.assign(calculator.grid, { random });
  calculator.calculateAll();
  const probe = workbook.sheets[0]!.formulas.find((f) => f.text === formula)!;
  if (probe.kept) return new CellError("#BLOCKED!", `${probe.kept.reason}: ${probe.kept.detail}`);
  const area = probe.covers;
  const { row, column } = parseCell(PROBE)!;
  const at = (r: number, c: number): CellValue => workbook.sheets[0]!.values[c]?.[r] ?? null;
  if (!area || (area.top === area.bottom && area.left === area.right)) return at(row, column);
  return Array.from({ length: area.bottom - area.top + 1 }, (_, r) =>
    Array.from({ length: area.right - area.left + 1 }, (_, c) => at(area.top + r, area.left + c)),
  );
}
