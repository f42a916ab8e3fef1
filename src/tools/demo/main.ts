/** `npm start`: recalculates the sample workbook from its formulas, prints the bill, says where the workbook is. */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { SAMPLE_FILE } from "../sample/file.ts";
import { JOB } from "../sample/stage-job/bill/job.ts";
import { printBill } from "./print.ts";
import { recalculatedBill } from "./recalculated.ts";

/** Beside the builds, which git does not track: a clone stays as it was. */
const WRITTEN = ".build/workbooks/stage-job.xlsx";

try {
  start(process.env["PROJECT_ROOT"] ?? process.cwd());
} catch (problem) {
  console.error(problem instanceof Error ? problem.message : String(problem));
  process.exitCode = 1;
}

function start(root: string): void {
  const written = resolve(root, WRITTEN);
  const { lines, formulas, changed, bytes } = recalculatedBill(readFileSync(resolve(root, SAMPLE_FILE)), SAMPLE_FILE);
  mkdirSync(dirname(written), { recursive: true });
  writeFileSync(written, bytes);
  process.stdout.write(
    `${[
      `${JOB}: ${formulas} formulas of ${SAMPLE_FILE} recalculated, ${changed} cells changed`,
      "Machines and job are invented. What a bracket may carry is not checked.",
      "",
      printBill(lines),
      "",
      `The recalculated workbook: ${written}`,
    ].join("\n")}\n`,
  );
}
