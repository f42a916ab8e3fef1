/**
 * `node shop view [WORKBOOK] [--port N] [--no-open]`: serves a workbook, or else the sample, as a page on this computer.
 * `node shop view JOB.xlsx ... | FOLDER [--shop WORKBOOK] [--now ISO]`: several are the open jobs of a week, on one board.
 */
import { basename, resolve } from "node:path";
import { callerPath, isFolder } from "../../hosts/command-line/caller.ts";
import { guarded } from "../../hosts/command-line/guard.ts";
import { LIMITS } from "../../hosts/command-line/limits.ts";
import { bytesOf } from "../../hosts/command-line/read-file.ts";
import { readArguments, UsageError } from "../../hosts/command-line/usage.ts";
import { filesOf, jobNames } from "../../hosts/command-line/week.ts";
import { serialOfIso } from "../../sheet/formula/serial-now.ts";
import { FileRefusal } from "../../sheet/package/file-refusal.ts";
import { SAMPLE_FILE } from "../sample/file.ts";
import { copySaver } from "./copy-file.ts";
import { openPage } from "./open-page.ts";
import { pageFiles, weekFiles } from "./page-files.ts";
import { type ServedWeek, type ServedWorkbook, servePage } from "./serve.ts";

const WRONG_USE = 64; // EX_USAGE of sysexits.h
const REFUSED = 2;
const QUIET = { out: () => {}, input: async () => "", interactive: false };

const USAGE =
  "view takes a WORKBOOK, or several and folders of them as a week; --shop and --now of a week, --port from 0 to 65535, --no-open";

async function main(args: string[]): Promise<number> {
  const root = process.env["PROJECT_ROOT"] ?? process.cwd();
  const { values, positionals } = readArguments(args, {
    port: { type: "string" },
    "no-open": { type: "boolean" },
    now: { type: "string" },
    shop: { type: "string" },
  });
  const { now, shop } = values;
  const port = Number(values.port ?? 0);
  if (!(Number.isInteger(port) && port >= 0 && port < 65_536)) throw new UsageError(USAGE);
  if (now !== undefined && serialOfIso(now) === undefined)
    throw new UsageError(`--now must be a date or a date and time as in 2026-05-18T07:00; got ${now}`);
  const [only, ...others] = positionals;
  const isWeek = others.length > 0 || (only !== undefined && isFolder(callerPath(only)));
  if (!isWeek && (now !== undefined || shop !== undefined)) throw new UsageError(USAGE);
  const file = only === undefined ? resolve(root, SAMPLE_FILE) : resolve(only);
  // What cannot be read is refused here, not in the page; of a week a job that cannot be read is named there.
  for (const needed of isWeek ? (shop === undefined ? [] : [callerPath(shop)]) : [file]) {
    const opened = await guarded({ name: "open", args: [needed], limits: LIMITS }, { ...QUIET, note: console.error });
    if (opened !== 0) return opened;
  }
  const { url } = isWeek
    ? await servePage(await weekFiles(root), weekOf(filesOf(positionals), now, shop), port)
    : // The sample's copies land where the person stands, not among the project's files.
      await servePage(
        await pageFiles(root),
        workbookOf(file, only === undefined ? resolve(basename(file)) : file),
        port,
      );
  process.stdout.write(`${url}\n`);
  console.error("The page opens in your browser; if it does not, open this address. Ctrl+C ends it.");
  // A run without a person, such as a test's, opens nothing.
  if (process.stdout.isTTY && values["no-open"] !== true) openPage(url);
  return 0;
}

const workbookOf = (file: string, saved = file): ServedWorkbook => ({
  name: basename(file),
  bytes: () => bytesOf(file),
  save: copySaver(saved),
});

const weekOf = (files: readonly string[], now: string | undefined, shop: string | undefined): ServedWeek => ({
  jobs: files.map((file) => workbookOf(callerPath(file))),
  names: jobNames(files),
  now,
  shop: shop === undefined ? undefined : () => bytesOf(callerPath(shop)),
});

try {
  process.exitCode = await main(process.argv.slice(2));
} catch (problem) {
  const known = problem instanceof UsageError || problem instanceof FileRefusal || problem instanceof Error;
  const message = known ? problem.message : String(problem);
  console.error(message);
  process.exitCode = problem instanceof UsageError ? WRONG_USE : REFUSED;
}
