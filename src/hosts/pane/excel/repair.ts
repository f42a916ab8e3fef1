/**
 * Enters again the calls that Excel left at #NAME? because they were typed or opened before the functions were there.
 * What is not entered again is told with its reason.
 */

import { findRecord, NAMESPACE } from "../../../cells/catalogue.ts";
import { itemAt, missing } from "../../../units/certain.ts";
import type { Task } from "./task.ts";

/** As typed, as stored, and with the number of the add-in before it. */
const CALL = new RegExp(`(?:\\[\\d+\\]!)?(?:_xldudf_${NAMESPACE}_|\\b${NAMESPACE}\\.)([A-Z0-9_.]+)\\s*\\(`, "gi");
const MOST_TOLD = 5;

interface Skipped {
  readonly cell: string;
  readonly why: string;
}

export async function repairFormulas(task: Task): Promise<string> {
  return Excel.run(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/name");
    await context.sync();
    let repaired = 0;
    const skipped: Skipped[] = [];
    for (const sheet of worksheets.items) {
      task.step(`Looking through ${sheet.name}, ${repaired} repaired so far`);
      const used = sheet.getUsedRangeOrNullObject();
      used.load("isNullObject,formulas,values,rowIndex,columnIndex");
      sheet.protection.load("protected");
      await context.sync();
      if (used.isNullObject) continue;
      for (const { row, column, formula } of broken(used)) {
        const cell = sheet.getRangeByIndexes(used.rowIndex + row, used.columnIndex + column, 1, 1);
        const why = reason(formula, sheet.protection.protected);
        if (why) skipped.push({ cell: `${sheet.name}, row ${used.rowIndex + row + 1}`, why });
        else {
          cell.formulas = [[plain(formula)]];
          repaired++;
        }
      }
      await context.sync();
    }
    return told(repaired, skipped);
  });
}

/** Formulas of ours whose answer is #NAME?. */
function broken({ formulas, values }: Excel.Range): { row: number; column: number; formula: string }[] {
  return formulas.flatMap((cells: unknown[], row: number) =>
    cells.flatMap((formula, column) =>
      typeof formula === "string" &&
      formula.startsWith("=") &&
      itemAt(values, row)[column] === "#NAME?" &&
      isOurs(formula)
        ? [{ row, column, formula }]
        : [],
    ),
  );
}

const isOurs = (formula: string): boolean => [...formula.matchAll(CALL)].length > 0;

/** Excel writes the stored name in capitals; a program that lower-cases it has dropped more that repair cannot bring back. */
const LOWERED = `_xldudf_${NAMESPACE.toLowerCase()}_`;
export const savedElsewhere = (formula: string): boolean => formula.includes(LOWERED);
export const SAVED_ELSEWHERE =
  "another program saved this copy (LibreOffice stores #NAME? and drops what lets an answer spill): go on from the last copy that Excel saved";

function reason(formula: string, isProtected: boolean): string | undefined {
  if (savedElsewhere(formula)) return SAVED_ELSEWHERE;
  const unknown = [...formula.matchAll(CALL)].map((match) => itemAt(match, 1)).find((name) => !findRecord(name));
  if (unknown) return `${NAMESPACE}.${unknown.replaceAll("_", ".")} is not a function of this version`;
  return isProtected ? "its sheet is protected" : undefined;
}

const plain = (formula: string): string =>
  formula.replace(CALL, (_, name: string) => `${NAMESPACE}.${(findRecord(name) ?? missing()).name}(`);

function told(repaired: number, skipped: readonly Skipped[]): string {
  const done =
    repaired === 0 && skipped.length === 0 ? "No call stands at #NAME?." : `${repaired} formulas entered again.`;
  if (skipped.length === 0) return done;
  const some = skipped.slice(0, MOST_TOLD).map(({ cell, why }) => `${cell}: ${why}`);
  const more = skipped.length > MOST_TOLD ? `; and ${skipped.length - MOST_TOLD} more` : "";
  return `${done} ${skipped.length} left as they were: ${some.join("; ")}${more}.`;
}
