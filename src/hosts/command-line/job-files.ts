/** The files that a plan is made from. What is missing or wrong in them is refused by name, before anything is planned. */
import { basename, extname } from "node:path";
import { isLine } from "../../bill/nouns/line.ts";
import type { BillPlan } from "../../bill/plan.ts";
import { unreadColumns } from "../../cells/parameters/unread-columns.ts";
import { BILL_COLUMNS } from "../../cells/tables/bill-columns.ts";
import { waitingRows } from "../../cells/tables/finished.ts";
import { MARK_COLUMNS } from "../../cells/tables/marks.ts";
import type { Book } from "../../job/book.ts";
import { type FoundTable, findTable } from "../../job/find-table.ts";
import { type BookShop, headerSays, jobPlan, planIn, shopOf } from "../../job/job-plan.ts";
import { mapColumns, statedColumns } from "../../job/part-list/column-map.ts";
import { rowsOfFile } from "../../job/part-list/list-file.ts";
import { MOST } from "../../job/part-list/list-limits.ts";
import { columnWords, faultWords, mapWords } from "../../job/part-list/list-words.ts";
import {
  headingOf,
  type PartList,
  type PartListOptions,
  partRows,
  readPartList,
} from "../../job/part-list/part-list.ts";
import { DATE_ORDERS } from "../../job/part-list/read-date.ts";
import { bookOf } from "../../job/workbook-book.ts";
import { FileRefusal, refusal } from "../../sheet/package/file-refusal.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { nearestIs } from "../../units/nearest.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { CommandContext } from "./command.ts";
import { bytesOf } from "./read-file.ts";
import { UsageError } from "./usage.ts";

const REFUSED = 2;

/** Runs what needs files: a refusal is said on standard error and is exit 2; nothing of it goes to standard output. */
export function orRefused(context: CommandContext, action: () => number): number {
  try {
    return action();
  } catch (problem) {
    if (!(problem instanceof Refusal) && !(problem instanceof FileRefusal)) throw problem;
    context.note(`${problem.message}\n`);
    return REFUSED;
  }
}

/** How a part list is to be read, as options of every command that takes one. */
export const LIST_OPTIONS = {
  columns: { type: "string" },
  every: { type: "string" },
  materials: { type: "string" },
  decimal: { type: "string" },
  dates: { type: "string" },
  units: { type: "string" },
  heading: { type: "string" },
} as const;
type Typed = { readonly [K in keyof typeof LIST_OPTIONS]?: string | undefined };

export function listOptions({ columns, every, materials, decimal, dates, units, heading }: Typed): PartListOptions {
  const sign = { point: ".", comma: "," }[decimal ?? "point"];
  if (sign === undefined) throw new UsageError(`--decimal must be point or comma; got ${decimal}`);
  if (units !== undefined && units !== "in" && units !== "mm")
    throw new UsageError(`--units must be in or mm; got ${units}`);
  const order = DATE_ORDERS.find((each) => each === dates);
  if (dates !== undefined && order === undefined)
    throw new UsageError(`--dates must be ${DATE_ORDERS.join(" or ")}; got ${dates}`);
  const row = heading === undefined ? undefined : Number(heading);
  if (row !== undefined && !(Number.isInteger(row) && row >= 0))
    throw new UsageError(`--heading must be the row of the heading, or 0 where there is none; got ${heading}`);
  return {
    columns,
    every,
    materials,
    decimal: decimal === undefined ? undefined : (sign as "." | ","),
    dates: order,
    units,
    heading: row,
  };
}

interface FilePlan {
  readonly plan: BillPlan;
  /** Rows of the file above the heading of its bill: a line is known by the row it stands in. */
  readonly above: number;
}

/** A part list in the shop of a workbook. */
export function planOfParts(
  parts: string,
  workbook: string,
  { note }: Pick<CommandContext, "note">,
  options: PartListOptions = {},
): FilePlan {
  const shop = shopIn(workbook);
  const list = listOf(parts, shop, options);
  for (const words of mapWords(list, false)) note(`${parts}: ${words.trim()}\n`);
  for (const words of faultWords(list.faults)) note(`${words}\n`);
  const name = basename(parts, extname(parts));
  return { plan: planIn(shop, partRows(list, shop.context), name), above: list.headingRow - 1 };
}

/** The shop of a workbook, without its bill; refused where a table is missing or wrong. */
export function shopIn(workbook: string): BookShop {
  const shop = shopOf(bookIn(workbook));
  refuseMissing(workbook, shop.missing);
  return shop;
}

/** Where it is refused the map of its columns says what each was read as. */
export function listOf(file: string, { context }: Pick<BookShop, "context">, options: PartListOptions): PartList {
  const { rows } = rowsOfFile(bytesOf(file, MOST.bytes));
  const list = refusalOr(() => readPartList(rows, options, context));
  if (!(list instanceof Refusal)) return list;
  const columns = refusalOr(() => mapColumns(headingOf(rows, options), statedColumns(options.columns ?? "")));
  if (columns instanceof Refusal) throw list;
  const map = columns
    .filter(({ title, read }) => title !== "" || read)
    .map((column) => columnWords(column, options.units ?? context.system));
  throw new Refusal(list.code, [list.message, "Its columns:", ...map].join("\n"));
}

/** The bill and the shop of one workbook. */
export function planOfWorkbook(workbook: string, { note }: Pick<CommandContext, "note">): FilePlan {
  const book = bookIn(workbook);
  const job = jobPlan(book);
  if (!job)
    throw refusal("unreadable", workbook, `a workbook with a bill, whose header has ${headerSays("bill")}`, "none");
  refuseMissing(workbook, job.missing);
  noteUnread(workbook, job.table.matrix, note);
  noteWaiting(workbook, findTable(book, "finished"), job, note);
  for (const words of unknownAreas(job.plan)) note(`${workbook}: ${words}\n`);
  return { plan: job.plan, above: job.table.top };
}

/** Areas of lines that the job does not name, which would be loaded as if nobody needed them first, and of the job without a line. */
function unknownAreas({ rows, shop: { job } }: BillPlan): string[] {
  const { areas } = job;
  const lines = rows.filter(isLine).filter(({ area }) => area !== "");
  const has = (names: readonly string[], area: string) =>
    names.some((name) => name.toLowerCase() === area.toLowerCase());
  const ofLines = [...new Set(lines.map(({ area }) => area))];
  const dated = job.areaDues.map(({ area }) => area);
  return [
    ...lines.flatMap(({ row, area }) => {
      if (areas.length === 0 || has(areas, area)) return [];
      const near = nearestIs(area, areas);
      return [
        `line ${row - 1}: area "${area}" is not one of the job's (${areas.join("; ")})${near ? `; ${near}` : ""}`,
      ];
    }),
    ...[...areas, ...dated.filter((area) => !has(areas, area))]
      .filter((area) => !has(ofLines, area))
      .map((area) => `area "${area}" of the job is that of no line`),
  ];
}

/** Finished work without its recorded minutes teaches nothing yet. */
function noteWaiting(
  file: string,
  table: FoundTable | undefined,
  { system }: { readonly system: UnitSystem },
  note: CommandContext["note"],
): void {
  const rows = table ? waitingRows(table.matrix, { system }).map((row) => table.top + row) : [];
  if (rows.length > 0)
    note(
      `${file}: finished sheet ${rows.length === 1 ? "row" : "rows"} ${rows.join(", ")}: not recorded yet, left out\n`,
    );
}

/** Columns of the bill that nothing reads are named on standard error; the answer stands. */
function noteUnread(file: string, bill: CellMatrix, note: CommandContext["note"]): void {
  for (const words of unreadColumns(bill, { ...BILL_COLUMNS, ...MARK_COLUMNS })) note(`${file}: ${words}\n`);
}

/** Without a table, or with a wrong one left out, every answer would differ. */
export function refuseMissing(workbook: string, missing: readonly string[]): void {
  if (missing.length > 0) throw new FileRefusal("unreadable", missing.map((each) => `${workbook}: ${each}`).join("\n"));
}

export const bookIn = (file: string): Book => {
  try {
    return bookOf(readWorkbook(bytesOf(file)));
  } catch (problem) {
    if (!(problem instanceof FileRefusal) || problem.message.startsWith(file)) throw problem;
    throw new FileRefusal(problem.reason, `${file}: ${problem.message}`);
  }
};
