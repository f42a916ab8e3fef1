/** Copies every sheet that calculates into one of values, and adds one that says version, edition and date. */

import { PRODUCT_VERSION } from "../../../cells/record/version.generated.ts";
import { CURRENT_EDITION } from "../../../data/materials/editions.ts";
import { freezeNotice } from "../../../job/freeze-notice.ts";
import { TYPED } from "../../../job/job-sheets/read-me.ts";
import { DEAD, FROZEN, RUNNING, ZEROS } from "../../../job/state-words.ts";
import { itemAt } from "../../../units/certain.ts";
import type { Task } from "./task.ts";

const LONGEST_NAME = 31; // of a sheet
const MARK = " frozen";

export async function freezeWorkbook(task: Task, now: Date): Promise<string> {
  return Excel.run(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/name,items/visibility");
    await context.sync();
    const taken = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
    const made: string[] = [];
    const locked: string[] = [];
    let waiting = 0;
    for (const sheet of [...worksheets.items]) {
      task.step(`Freezing ${sheet.name}`);
      if (sheet.visibility !== "Visible") continue;
      const used = sheet.getUsedRangeOrNullObject();
      sheet.protection.load("protected");
      used.load("isNullObject,formulas,values,rowIndex,columnIndex,rowCount,columnCount");
      await context.sync();
      if (used.isNullObject || !calculates(used)) continue;
      const copy = sheet.copy("End");
      if (sheet.protection.protected && !(await unlocked(copy, context))) {
        locked.push(sheet.name);
        continue;
      }
      const name = freeName(sheet.name, taken);
      copy.name = name;
      // Values as they were read: what spilled stands in its cells, and nothing calculates again.
      copy.getRangeByIndexes(used.rowIndex, used.columnIndex, used.rowCount, used.columnCount).values = used.values.map(
        (row: unknown[]) => row.map(asValue),
      );
      await context.sync();
      made.push(name);
      waiting += unanswered(used);
    }
    const skipped = locked.length === 0 ? "" : ` Skipped, protected by a password: ${locked.join(", ")}.`;
    if (made.length === 0 && skipped) return `Nothing was frozen.${skipped}`;
    if (made.length === 0) return "No sheet calculates anything; nothing was frozen.";
    const facts = {
      version: PRODUCT_VERSION,
      edition: CURRENT_EDITION.name,
      date: now.toISOString(),
      from: `this workbook: ${made.join(", ")}`,
      kept: waiting,
    };
    const lines = freezeNotice(facts).filter((line) => !/^(?:Values only|Every formula)/.test(line));
    const notice = worksheets.add(freeName("Bill", taken));
    notice.getRangeByIndexes(0, 0, lines.length, 1).values = lines.map((line) => [line]);
    await context.sync();
    const open =
      waiting === 0 ? "" : ` Cells without an answer yet: ${waiting}; repair or recalculate, and freeze again.`;
    return `Frozen as values: ${made.join(", ")}.${open}${skipped}`;
  });
}

const calculates = ({ formulas }: Excel.Range): boolean =>
  formulas.some((row: unknown[]) => row.some((cell) => typeof cell === "string" && cell.startsWith("=")));

/** Lifts a protection without a password from the copy; a copy that stays locked is removed again. */
async function unlocked(copy: Excel.Worksheet, context: Excel.RequestContext): Promise<boolean> {
  await context.sync();
  try {
    copy.protection.unprotect();
    await context.sync();
    return true;
  } catch {
    copy.delete();
    await context.sync();
    return false;
  }
}

/** Not true in a copy, where nothing runs and nothing is typed. */
const INSTEAD = new Map([[RUNNING, FROZEN], [DEAD, FROZEN], [ZEROS, FROZEN], ...TYPED]);

/** Excel takes written text as if typed, "=A1" for a formula and "1/4" for a day, unless an apostrophe says text; "#..." may be an error. */
const asValue = (held: unknown): unknown =>
  typeof held === "string" && /^[^#]/s.test(held) ? (INSTEAD.get(held) ?? `'${held}`) : held;

/** What Excel shows in place of an answer: a function it does not know, or one that has not answered yet. */
const NO_ANSWER = ["#NAME?", "#BUSY!", "#CONNECT!", "#GETTING_DATA"];

const unanswered = ({ formulas, values }: Excel.Range): number =>
  values.flatMap((row: unknown[], r: number) =>
    row.filter((held, c) => NO_ANSWER.includes(String(held)) && String(itemAt(formulas, r)[c]).startsWith("=")),
  ).length;

function freeName(name: string, taken: Set<string>): string {
  for (let number = 1; ; number++) {
    const end = number === 1 ? MARK : `${MARK} ${number}`;
    const free = name.slice(0, LONGEST_NAME - end.length) + end;
    if (taken.has(free.toLowerCase())) continue;
    taken.add(free.toLowerCase());
    return free;
  }
}
