import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { jobPlan } from "../../job/job-plan.ts";
import { bookOf } from "../../job/workbook-book.ts";
import { document } from "../../papers/page.ts";
import { type Print, printOf } from "../../papers/papers.ts";
import { serialNow } from "../../sheet/formula/serial-now.ts";
import { Calculator } from "../../sheet/graph/calculator.ts";
import { FileRefusal } from "../../sheet/package/file-refusal.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import { firstOf } from "../../units/certain.ts";
import { callerPath } from "./caller.ts";
import type { Command, CommandContext } from "./command.ts";
import { CANCELLED, REFUSED } from "./guard.ts";
import { findBrowser, printToPdf } from "./print/browser.ts";
import { markFolder, readyFolder, writeInto } from "./print/output-folder.ts";
import { bytesOf } from "./read-file.ts";
import { readArguments, UsageError } from "./usage.ts";

const PDF = "pack.pdf";

/** `shop print WORKBOOK.xlsx OUT_DIR [--no-pdf] [--json]`: the papers for the floor. Exit 2 on a refused file or folder, 130 when interrupted. */
export const print: Command = async (args, context) => {
  const { values, positionals } = readArguments(args, { "no-pdf": { type: "boolean" }, json: { type: "boolean" } });
  const [given, out] = positionals;
  if (given === undefined || out === undefined || positionals.length > 2)
    throw new UsageError("print takes WORKBOOK.xlsx and OUT_DIR");
  const refuse = (words: string) => {
    context.note(`${words}\n`);
    return REFUSED;
  };
  try {
    const made = papersOf(given, context);
    if (!made)
      return refuse(
        `${given} must hold a bill: a range with the columns Part, Material, Thickness, Flanges, Quantity; got none`,
      );
    return await writePapers(made, out, { pdf: !values["no-pdf"], json: values.json === true }, context);
  } catch (problem) {
    if (problem instanceof FileRefusal) return refuse(named(problem, given, out));
    throw problem;
  }
};

/** Writes all papers into a folder of ours, and says how many. Throws the FileRefusal of a folder that is not. */
export async function writePapers(
  made: Print,
  out: string,
  wanted: { readonly pdf: boolean; readonly json: boolean },
  context: CommandContext,
): Promise<number> {
  const folder = callerPath(out);
  readyFolder(folder, out);
  const { papers, outlines } = made;
  const files = [...papers, ...outlines].map(({ file }) => file);
  markFolder(folder, [...files, PDF]);
  for (const paper of papers) writeInto(folder, paper.file, document(paper.title, [paper]));
  for (const { file, svg } of outlines) writeInto(folder, file, svg);
  const pdf = wanted.pdf ? await pack(made, folder, context) : false;
  if (pdf === "cancelled") {
    context.note(`cancelled: ${files.length} files are in ${out}, ${PDF} is not\n`);
    return CANCELLED;
  }
  const pages = pdf || papers.reduce((sum, paper) => sum + paper.pages.length, 0);
  if (wanted.json)
    context.out(`${JSON.stringify({ files: pdf ? [...files, PDF] : files, pages, pdf: pdf ? PDF : null })}\n`);
  else context.out(`${files.length} files with ${pages} pages in ${out}${pdf ? `, all together in ${PDF}` : ""}\n`);
  return 0;
}

/** What is wrong inside the workbook is said with its name; a path says it itself. */
const named = ({ message }: FileRefusal, ...paths: readonly string[]): string =>
  paths.some((path) => message.startsWith(path)) ? message : `${paths[0]}: ${message}`;

function papersOf(given: string, context: CommandContext): Print | undefined {
  const workbook = readWorkbook(bytesOf(given));
  const calculator = new Calculator(workbook, { functions: context.functions, now: serialNow(new Date()) });
  calculator.calculateAll();
  const kept = [...calculator.formulas()].filter((cell) => cell.kept || cell.circular).length;
  const job = jobPlan(bookOf(workbook));
  if (!job) return undefined;
  const about = {
    name: basename(given),
    version: context.version,
    edition: job.edition,
    date: new Date().toISOString().slice(0, 10),
    stale: kept + calculator.stale().size,
    missing: job.missing,
  };
  return printOf(job.plan, about, context.interactive ? (words) => context.note(`\r\u001b[K${words}`) : undefined);
}

/** All papers as one PDF, where a browser is here to print it: how many pages it has; a note where there is none. */
async function pack({ papers }: Print, folder: string, context: CommandContext): Promise<number | false | "cancelled"> {
  const browser = await findBrowser();
  if (browser === undefined) {
    context.note(`no browser found for ${PDF}; set CHROMIUM to one, or print index.html by hand\n`);
    return false;
  }
  const work = mkdtempSync(join(tmpdir(), "bracket-bill-print-"));
  const cancelling = new AbortController();
  const cancel = () => cancelling.abort();
  const forget = context.onCancel?.(cancel);
  try {
    const page = join(work, "pack.html");
    mkdirSync(join(work, "profile"));
    writeFileSync(page, document(firstOf(papers).title, papers));
    const bytes = await printToPdf(browser, pathToFileURL(page).href, join(work, "profile"), cancelling.signal);
    writeInto(folder, PDF, bytes);
    return Buffer.from(bytes).toString("latin1").match(PAGE_OBJECT)?.length ?? 0;
  } catch (problem) {
    if (cancelling.signal.aborted) return "cancelled";
    context.note(`${browser} did not print ${PDF}: ${(problem as Error).message}\n`);
    return false;
  } finally {
    forget?.();
    removeProfile(work);
  }
}

const PAGE_OBJECT = /\/Type\s*\/Page\b/g;

/**
 * Helper processes of a browser that was stopped may still write into its profile; the system clears away what stays.
 */
function removeProfile(folder: string): void {
  try {
    rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });
  } catch (problem) {
    if ((problem as NodeJS.ErrnoException).code === undefined) throw problem;
  }
}
