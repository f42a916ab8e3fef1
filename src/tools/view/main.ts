/** `node shop view [WORKBOOK] [--port N] [--no-open]`: serves a workbook, or else the sample, as a page on this computer. */
import { basename, resolve } from "node:path";
import { parseArgs } from "node:util";
import { guarded } from "../../hosts/command-line/guard.ts";
import { LIMITS } from "../../hosts/command-line/limits.ts";
import { bytesOf } from "../../hosts/command-line/read-file.ts";
import { FileRefusal } from "../../sheet/package/file-refusal.ts";
import { SAMPLE_FILE } from "../sample/file.ts";
import { copySaver } from "./copy-file.ts";
import { openPage } from "./open-page.ts";
import { pageFiles } from "./page-files.ts";
import { servePage } from "./serve.ts";

const WRONG_USE = 64; // EX_USAGE of sysexits.h
const REFUSED = 2;
const QUIET = { out: () => {}, input: async () => "", interactive: false };

async function main(args: string[]): Promise<number> {
  const root = process.env["PROJECT_ROOT"] ?? process.cwd();
  let given: { values: { port?: string; "no-open"?: boolean }; positionals: string[] };
  try {
    given = parseArgs({
      args,
      allowPositionals: true,
      options: { port: { type: "string" }, "no-open": { type: "boolean" } },
    });
  } catch (problem) {
    console.error((problem as Error).message);
    return WRONG_USE;
  }
  const port = Number(given.values.port ?? 0);
  if (given.positionals.length > 1 || !(Number.isInteger(port) && port >= 0 && port < 65_536)) {
    console.error("view takes at most one WORKBOOK, --port with a number from 0 to 65535 and --no-open");
    return WRONG_USE;
  }
  const sample = given.positionals.length === 0;
  const file = sample ? resolve(root, SAMPLE_FILE) : resolve(given.positionals[0]!);
  // What cannot be read is refused here, not in the page.
  const opened = await guarded({ name: "open", args: [file], limits: LIMITS }, { ...QUIET, note: console.error });
  if (opened !== 0) return opened;
  // The sample's copies land where the person stands, not among the project's files.
  const save = copySaver(sample ? resolve(basename(file)) : file);
  const { url } = await servePage(
    await pageFiles(root),
    { name: basename(file), bytes: () => bytesOf(file), save },
    port,
  );
  process.stdout.write(`${url}\n`);
  console.error("The page opens in your browser; if it does not, open this address. Ctrl+C ends it.");
  // A run that nobody looks at, such as a test's, opens nothing.
  if (process.stdout.isTTY && given.values["no-open"] !== true) openPage(url);
  return 0;
}

try {
  process.exitCode = await main(process.argv.slice(2));
} catch (problem) {
  const message = problem instanceof FileRefusal || problem instanceof Error ? problem.message : String(problem);
  console.error(message);
  process.exitCode = REFUSED;
}
