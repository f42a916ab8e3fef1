/** Copies every sheet that calculates into one of values, and adds one that says version, edition and date. */
import { PRODUCT_VERSION } from "../../../cells/version.generated.ts";
import { CURRENT_EDITION } from "../../../data/materials/editions.ts";
import { freezeNotice } from "../../freeze/notice.ts";
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
    for (const sheet of [...worksheets.items]) {
      task.step(`Freezing ${sheet.name}`);
      if (sheet.visibility !== "Visible") continue;
      const used = sheet.getUsedRangeOrNullObject();
      used.load("isNullObject,formulas,values,rowIndex,columnIndex,rowCount,columnCount");
      await context.sync();
      if (used.isNullObject || !calculates(used)) continue;
      const name = freeName(sheet.name, taken);
      const copy = sheet.copy("End");
      copy.name = name;
      // Values as they were read: what spilled stands in its cells, and nothing calculates again.
      copy.getRangeByIndexes(used.rowIndex, used.columnIndex, used.rowCount, used.columnCount).values = used.values;
      await context.sync();
      made.push(name);
    }
    if (made.length === 0) return "No sheet calculates anything; nothing was frozen.";
    const facts = {
      version: PRODUCT_VERSION,
      edition: CURRENT_EDITION.name,
      date: now.toISOString(),
      from: `this workbook: ${made.join(", ")}`,
      kept: 0,
    };
    const lines = freezeNotice(facts).filter((line) => !/^(?:Values only|Every formula)/.test(line));
    const notice = worksheets.add(freeName("Bill", taken));
    notice.getRangeByIndexes(0, 0, lines.length, 1).values = lines.map((line) => [line]);
    await context.sync();
    return `Frozen as values: ${made.join(", ")}.`;
  });
}

const calculates = ({ formulas }: Excel.Range): boolean =>
  formulas.some((row: unknown[]) => row.some((cell) => typeof cell === "string" && cell.startsWith("=")));

function freeName(name: string, taken: Set<string>): string {
  for (let number = 1; ; number++) {
    const end = number === 1 ? MARK : `${MARK} ${number}`;
    const free = name.slice(0, LONGEST_NAME - end.length) + end;
    if (taken.has(free.toLowerCase())) continue;
    taken.add(free.toLowerCase());
    return free;
  }
}
