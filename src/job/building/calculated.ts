import { shopFunctions } from "../../cells/catalogue.ts";
import { Calculator } from "../../sheet/graph/calculator.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { foundIn, lastOf } from "../../units/certain.ts";
import type { WorkbookModel } from "../xlsx/model.ts";
import { type WorkbookAnswers, writeWorkbookModel } from "../xlsx/write.ts";

/**
 * The bytes of a workbook with the answer of every formula in its cell: written without answers, calculated by the
 * engine that `shop recalc` uses, and written again. Throws when a formula is not calculated.
 */
export function calculatedBytes(model: WorkbookModel): Uint8Array {
  return writeWorkbookModel(model, answersOf(writeWorkbookModel(model, () => undefined)));
}

function answersOf(bytes: Uint8Array): WorkbookAnswers {
  const workbook = readWorkbook(bytes);
  const calculator = new Calculator(workbook, { functions: shopFunctions });
  calculator.calculateAll();
  const kept = [...calculator.formulas()].filter((cell) => cell.kept || cell.circular);
  if (kept.length > 0)
    throw new Error(
      `the sample must be calculated; got ${kept.map(({ text, kept }) => `${kept?.detail}: ${text}`).join("\n")}`,
    );
  return ({ name }, { row, column }) => {
    const sheet = foundIn(workbook.sheets, (found) => found.name === name);
    const covers = sheet.owners[column - 1]?.[row - 1]?.covers;
    const { top, left, bottom, right } = covers ?? {
      top: row - 1,
      left: column - 1,
      bottom: row - 1,
      right: column - 1,
    };
    const rows: CellMatrix = [];
    for (let r = top; r <= bottom; r++) {
      rows.push([]);
      for (let c = left; c <= right; c++) lastOf(rows).push(sheet.values[c]?.[r] ?? null);
    }
    return rows;
  };
}
