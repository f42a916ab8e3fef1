import type { CustomFunctions } from "../evaluate/custom-functions.ts";
import { Calculator } from "../graph/calculator.ts";
import { FileRefusal } from "../package/file-refusal.ts";
import { describeFile } from "../report/describe-file.ts";
import { refusedFile } from "../report/refused-file.ts";
import type { FileReport, FileResult } from "../report/report.ts";
import { brokenBySaving } from "../report/saved-by.ts";
import { readWorkbook } from "../workbook/read-workbook.ts";
import type { Workbook } from "../workbook/workbook.ts";
import { writeWorkbook } from "../write/write-workbook.ts";

interface RecalculateOptions {
  readonly functions: CustomFunctions;
  readonly now: number | undefined;
  readonly verify: boolean;
  readonly in: string;
  readonly out: string | null;
}

export interface Recalculated {
  readonly result: FileResult;
  /** What to write; undefined when refused or only verified. */
  readonly output: Uint8Array | undefined;
}

/** Recalculates one workbook from its bytes. Never throws: what cannot be read is a refusal in the report. */
export function recalculateBytes(bytes: Uint8Array, options: RecalculateOptions): Recalculated {
  const started = performance.now();
  const seconds = (): number => Math.round(performance.now() - started) / 1000;
  try {
    const workbook = readWorkbook(bytes);
    const calculator = new Calculator(workbook, options);
    if (options.verify) forget(workbook);
    calculator.calculateAll();
    const written = options.verify ? undefined : writeWorkbook(workbook);
    const { in: from, out, verify } = options;
    const facts = { in: from, out, verify, changed: written?.changed ?? 0, seconds: seconds() };
    const result = describeFile(calculator, facts);
    const note = brokenBySaving(workbook.package, calculator.formulas());
    return { result: note ? { ...result, report: broken(result.report, note) } : result, output: written?.bytes };
  } catch (error) {
    const refusal =
      error instanceof FileRefusal
        ? error
        : new FileRefusal(
            "internal",
            error instanceof Error ? `${error.message} ${error.stack?.split("\n")[1]?.trim() ?? ""}` : String(error),
          );
    return { result: refusedFile(options.in, refusal, seconds()), output: undefined };
  }
}

/** Answers that no longer spill are not those of the original workbook: never fresh. */
const broken = (report: FileReport, note: string): FileReport => ({
  ...report,
  note,
  status: report.status === "fresh" ? "stale" : report.status,
});

/** Removes every cached value, so that nothing computed can lean on it. */
function forget(workbook: Workbook): void {
  for (const sheet of workbook.sheets) {
    for (const cell of sheet.formulas) sheet.set(cell.row, cell.column, undefined);
    for (const key of sheet.originals.keys()) sheet.set(Math.floor(key / 16_384), key % 16_384, undefined);
  }
}
