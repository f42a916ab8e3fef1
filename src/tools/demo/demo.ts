/** What `npm start` says of the sample: the plan of its bill, from a workbook that has just been recalculated. */
import { billWords } from "../../hosts/command-line/bill-words.ts";
import { jobPlan } from "../../job/job-plan.ts";
import { bookOf } from "../../job/workbook-book.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import { SAMPLE_FILE } from "../sample/file.ts";
import { recalculated } from "./recalculated.ts";

interface Demo {
  readonly text: string;
  /** The workbook with every answer in its cell. */
  readonly bytes: Uint8Array;
  readonly counted: string;
}

/** @param note what is missing in the workbook is said there. */
export function demo(workbook: Uint8Array, all: boolean, note: (text: string) => void): Demo {
  const { formulas, changed, bytes } = recalculated(workbook, SAMPLE_FILE);
  const job = jobPlan(bookOf(readWorkbook(bytes)));
  if (!job) throw new Error(`${SAMPLE_FILE} must be a workbook with a bill; got none`);
  for (const each of job.missing) note(`${each}\n`);
  return {
    text: billWords(job.plan, all),
    bytes,
    counted: `${formulas} formulas of ${SAMPLE_FILE} recalculated, ${changed} cells changed`,
  };
}
