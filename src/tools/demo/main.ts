/** `npm start [-- --all]`: recalculates the sample workbook from its formulas and says what `shop bill` says of it. */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { readArguments, UsageError } from "../../hosts/command-line/usage.ts";
import { SAMPLE_FILE } from "../sample/file.ts";
import { demo } from "./demo.ts";

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
  const all = values.all === true;
  const { text, bytes, counted } = demo(readFileSync(resolve(root, SAMPLE_FILE)), all, (words) =>
    process.stderr.write(words),
  );
  mkdirSync(dirname(written), { recursive: true });
  writeFileSync(written, bytes);
  process.stdout.write(
    `${[
      text,
      "",
      "Machines and job are invented. What a bracket may carry is not checked.",
      `${counted}: ${WRITTEN}`,
      ...(all ? [] : ["Every sentence, and the clear lines too: npm start -- --all"]),
    ].join("\n")}\n`,
  );
}
