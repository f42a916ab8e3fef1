/** `npm start`: recalculates the sample workbook from its formulas, prints the bill, says where the workbook is. */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { shopFunctions } from "../../cells/catalogue.ts";
import { recalculateBytes } from "../../hosts/headless/recalculate/recalculate-bytes.ts";
import { readWorkbook } from "../../hosts/headless/workbook/read-workbook.ts";
import { JOB } from "../sample/job.ts";
import { readBill } from "./bill.ts";
import { printBill } from "./print.ts";

const SAMPLE = "sample-workbooks/stage-job.xlsx";
/** Beside the builds, which git does not track: a clone stays as it was. */
const WRITTEN = ".build/workbooks/stage-job.xlsx";

const root = process.env["PROJECT_ROOT"] ?? process.cwd();
const { result, output } = recalculateBytes(readFileSync(resolve(root, SAMPLE)), {
  functions: shopFunctions,
  now: undefined,
  verify: false,
  in: SAMPLE,
  out: WRITTEN,
});
const { report } = result;
if (!output || report.status !== "fresh") {
  const why = report.refused?.message ?? report.kept.map(({ cell, detail }) => `${cell} ${detail}`).join("; ");
  console.error(`${SAMPLE} must be calculated whole; got ${report.status}: ${why}`);
  process.exitCode = 1;
} else {
  const written = resolve(root, WRITTEN);
  mkdirSync(resolve(written, ".."), { recursive: true });
  writeFileSync(written, output);
  process.stdout.write(
    `${[
      `${JOB}: ${report.formulas} formulas of ${SAMPLE} recalculated`,
      "Machines and job are invented. What a bracket may carry is not checked.",
      "",
      printBill(readBill(readWorkbook(output))),
      "",
      `The recalculated workbook: ${written}`,
    ].join("\n")}\n`,
  );
}
