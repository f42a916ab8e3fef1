/** `npm start [-- --all]`: recalculates the sample workbook from its formulas and says what `shop bill` says of it. */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { billWords } from "../../hosts/command-line/bill-words.ts";
import { planOfWorkbook } from "../../hosts/command-line/job-files.ts";
import { readArguments, UsageError } from "../../hosts/command-line/usage.ts";
import { SAMPLE_FILE } from "../sample/file.ts";
import { recalculated } from "./recalculated.ts";

/** Beside the builds, which git does not track: a clone stays as it was. */
const WRITTEN = ".build/workbooks/stage-job.xlsx";
const USAGE = 64;

try {
  start(process.env["PROJECT_ROOT"] ?? process.cwd(), process.argv.slice(2));
} catch (problem) {
  const { message = String(problem) } = problem as Partial<Error>;
  console.error(message);
  process.exitCode = problem instanceof UsageError ? USAGE : 1;
}

function start(root: string, args: readonly string[]): void {
  const { values, positionals } = readArguments(args, { all: { type: "boolean" } });
  if (positionals.length > 0) throw new UsageError(`npm start takes --all; got ${positionals[0]}`);
  const written = resolve(root, WRITTEN);
  const { formulas, changed, bytes } = recalculated(readFileSync(resolve(root, SAMPLE_FILE)), SAMPLE_FILE);
  mkdirSync(dirname(written), { recursive: true });
  writeFileSync(written, bytes);
  process.stdout.write(
    `${[
      billWords(planOfWorkbook(written, { note: (text) => process.stderr.write(text) }), values.all === true),
      "",
      "Machines and job are invented. What a bracket may carry is not checked.",
      `${formulas} formulas of ${SAMPLE_FILE} recalculated, ${changed} cells changed: ${WRITTEN}`,
      ...(values.all ? [] : ["Every sentence, and the clear lines too: npm start -- --all"]),
    ].join("\n")}\n`,
  );
}
