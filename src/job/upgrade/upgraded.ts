/**
 * A job's workbook of an earlier release as this release makes it: the same shop, job and parts in the tables, columns and
 * formulas of today. Every change is named. Sheets of the person's own come along as values: what their formulas pointed
 * at may stand elsewhere now.
 */
import { BILL_COLUMNS } from "../../cells/tables/bill-columns.ts";
import { areaOfItem, JOB_ITEMS } from "../../cells/tables/job.ts";
import { foldHeader } from "../../cells/tables/recognized.ts";
import { type CellMatrix, type CellValue, isBlank, isCellError } from "../../units/cell.ts";
import { missing } from "../../units/certain.ts";
import { wrong } from "../../units/refusal.ts";
import { type Book, type BookSheet, cellAt, withoutError } from "../book.ts";
import { value } from "../building/cells.ts";
import { calledIn } from "../building/formulas.ts";
import { findTable } from "../find-table.ts";
import { shopOf } from "../job-plan.ts";
import type { JobContents, JobKey, PartColumn } from "../job-sheets/contents.ts";
import { jobWorkbook } from "../job-sheets/job-workbook.ts";
import { PART_COLUMNS } from "../job-sheets/parts-sheet.ts";
import { SCHEMA, schemaOf } from "../schema.ts";
import { shopTablesOf } from "../start/shop-tables.ts";
import type { SheetModel, WorkbookModel } from "../xlsx/model.ts";
import { currentColumns } from "./current-columns.ts";

interface Upgraded {
  readonly model: WorkbookModel;
  /** A sentence each. */
  readonly changes: readonly string[];
  readonly from: number;
}

/** Formulas of a sheet, as the file stores them. */
type FormulasOf = (sheet: string) => readonly string[];

/** Throws Refusal for a workbook without a bill, or of a later release. */
export function upgraded(book: Book, formulasOf: FormulasOf): Upgraded {
  const from = schemaOf(book);
  if (from > SCHEMA)
    throw wrong("schema", `at most ${SCHEMA}`, from, "the workbook is of a later release: take that one");
  const bill = findTable(book, "bill");
  if (!bill) throw wrong("workbook", "a job's, with a table of parts", null);
  const changes: string[] = [`schema ${from} is now ${SCHEMA}`];
  const shop = shopTablesOf(book).map((table) => currentColumns(table, changes));
  const { partColumns, parts } = partsOf(bill.matrix);
  const { job, areaDues, areTable } = jobOf(book);
  if (!areTable) changes.push("sheet Job is a table now (Job, Entry): every function about the bill reads it");
  const contents: JobContents = {
    system: shopOf(book).context.system,
    subject: String(job.job ?? "Job"),
    about: `Brought up to date from schema ${from}.`,
    shop,
    shopNote: "The unit of a column stands in its header. Angles are included angles of the tool.",
    shopName: shopNameOf(book),
    quoteFoot: "",
    jobNote: "Who asks, and by when. Every function about the bill reads this table.",
    job,
    areaDues,
    partColumns,
    parts,
    shown: shownOf(
      book,
      parts.map(([part]) => String(part ?? "")),
    ),
  };
  const made = jobWorkbook(contents);
  const ours = new Set(made.sheets.map(({ name }) => name));
  for (const { name } of made.sheets)
    if (!book.some((sheet) => sheet.name === name)) changes.push(`sheet ${name} is new`);
  changes.push(...formulaChanges(made, formulasOf));
  const own = book.filter(({ name }) => !ours.has(name) && !WITHDRAWN.includes(name) && !holdsShop(name, book));
  for (const { name } of book)
    if (WITHDRAWN.includes(name)) changes.push(`sheet ${name} is gone: the plan quotes by itself`);
  for (const { name } of own)
    changes.push(`sheet ${name} is not one of ours: its values come along, its formulas and looks do not`);
  return { model: { ...made, sheets: [...made.sheets, ...own.map(valuesSheet)] }, changes, from };
}

/** Sheets of earlier releases that nothing asks for any more. */
const WITHDRAWN = ["Quoted"];

/** A sheet that holds the shop under another name is the sheet Shop now. */
const holdsShop = (name: string, book: Book): boolean =>
  findTable(book, "brakes")?.sheet.name === name && name !== "Shop";

function partsOf([header = [], ...rows]: CellMatrix): { partColumns: PartColumn[]; parts: CellValue[][] } {
  const titles = header.map((cell) => String(cell ?? ""));
  const names = (title: string): readonly string[] =>
    Object.values(BILL_COLUMNS).find(({ headers }) =>
      (headers as readonly string[]).some((each) => foldHeader(each) === foldHeader(title)),
    )?.headers ?? [title];
  const standing = titles.map((title): PartColumn => {
    const known = PART_COLUMNS.find((column) => foldHeader(column.header) === foldHeader(title));
    return known ? { ...known, header: title } : { header: title, width: 12, keepsText: true };
  });
  const missing = PART_COLUMNS.filter(
    (column) => !titles.some((title) => names(title).some((each) => foldHeader(each) === foldHeader(column.header))),
  );
  return {
    partColumns: [...standing.filter(({ header }) => header !== ""), ...missing],
    parts: rows.map((row) => [
      ...titles.flatMap((title, i) => (title === "" ? [] : [withoutError(row[i])])),
      ...missing.map(() => null),
    ]),
  };
}

const ITEM_OF: Readonly<Record<JobKey, keyof typeof JOB_ITEMS>> = {
  job: "name",
  customer: "customer",
  number: "quote",
  day: "day",
  valid: "valid",
  start: "start",
  due: "due",
  areas: "areas",
  pace: "pace",
  profit: "profit",
  currency: "currency",
};

/** From the job's table, or from a sheet Job that has its items beside their entries. */
function jobOf(book: Book): Pick<JobContents, "job" | "areaDues"> & { areTable: boolean } {
  const table = findTable(book, "job");
  const rows = table?.matrix.slice(1) ?? book.find(({ name }) => name === "Job")?.rows.slice(1) ?? [];
  const entry = (key: JobKey): CellValue => {
    const names = JOB_ITEMS[ITEM_OF[key]].map(foldHeader);
    return rows.find(([item, cell]) => names.includes(foldHeader(item ?? null)) && !isBlank(cell))?.[1] ?? null;
  };
  const keys = Object.keys(ITEM_OF) as JobKey[];
  const areaDues = rows.flatMap(([item, due]): [string, CellValue][] => {
    const area = typeof item === "string" ? areaOfItem(item) : "";
    return area === "" || isBlank(due ?? null) ? [] : [[area, due ?? missing()]];
  });
  return { job: Object.fromEntries(keys.map((key) => [key, entry(key)])), areaDues, areTable: table !== undefined };
}

/** Below the title of the quote. */
const shopNameOf = (book: Book): string => {
  const quote = book.find(({ name }) => name === "Quote");
  const cell = quote ? cellAt(quote, 1, 0) : null;
  return typeof cell === "string" ? cell : "(the name of your shop)";
};

/** The parts that the sheet Calculation showed, as far as they are still in the bill. */
function shownOf(book: Book, parts: readonly string[]): JobContents["shown"] {
  const sheet = book.find(({ name }) => name === "Calculation");
  const chosen = (sheet?.rows ?? []).filter(([label]) => label === "Part").map((row) => String(row[1] ?? ""));
  const of = (i: number) => (parts.includes(chosen[i] ?? "") ? chosen[i] : undefined);
  const [flat, force, shear] = [of(0), of(1), of(2) ?? parts[0]];
  return { ...(flat ? { flat } : {}), ...(force ? { force } : {}), ...(shear ? { shear } : {}) };
}

/** Calls whose arguments are others than they were, a sentence a sheet. */
function formulaChanges({ sheets }: WorkbookModel, formulasOf: FormulasOf): string[] {
  return sheets.flatMap(({ name, cells }) => {
    const before = formulasOf(name);
    if (before.length === 0) return [];
    const now = cells.flatMap(({ formula }) => (formula === undefined ? [] : [formula]));
    const called = [...new Set(now.flatMap(calledIn))];
    const changed = called.filter(
      (each) => !now.filter((formula) => calledIn(formula).includes(each)).every((formula) => before.includes(formula)),
    );
    return changed.length === 0 ? [] : [`sheet ${name}: ${changed.join(", ")} takes the tables of today`];
  });
}

const valuesSheet = ({ name, rows }: BookSheet): SheetModel => ({
  name,
  widths: Array.from({ length: Math.max(1, ...rows.map((row) => row.length)) }, () => 14),
  cells: rows.flatMap((row, r) =>
    row.flatMap((cell, c) => (isBlank(cell) || isCellError(cell) ? [] : [value(r + 1, c + 1, "text", cell)])),
  ),
  print: { landscape: true },
});
