/** What the commands make of a workbook behind recalc: freeze, bill, print, start, and a part list checked in a shop. */
import { CURRENT_EDITION } from "../../data/materials/editions.ts";
import { billWords } from "../../hosts/command-line/bill-words.ts";
import { billJson } from "../../job/bill-json.ts";
import type { Book } from "../../job/book.ts";
import { calculatedBytes } from "../../job/building/calculated.ts";
import { freezeNotice } from "../../job/freeze-notice.ts";
import { jobPlan, planIn, shopOf } from "../../job/job-plan.ts";
import { jobWorkbook } from "../../job/job-sheets/job-workbook.ts";
import { rowsOfFile } from "../../job/part-list/list-file.ts";
import { partRows, readPartList } from "../../job/part-list/part-list.ts";
import { bookOfTables, exampleShop, shopTablesOf } from "../../job/start/shop-tables.ts";
import { startedContents } from "../../job/start/started.ts";
import { bookOf } from "../../job/workbook-book.ts";
import { document } from "../../papers/page.ts";
import { printOf } from "../../papers/papers.ts";
import { frozenBytes } from "../../sheet/freeze/frozen-bytes.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";

const DAY = "2026-03-02";
const TODAY = 46_083;
const ABOUT = { version: "0", edition: CURRENT_EDITION.name, date: DAY };

/** What is wrong with the values-only copy of a calculated workbook. */
export function freezeProblem(calculated: Uint8Array): string | undefined {
  const { bytes } = frozenBytes(calculated, freezeNotice({ ...ABOUT, from: "in.xlsx", kept: 0 }));
  const left = readWorkbook(bytes).sheets.flatMap(({ formulas }) => formulas);
  return left.length > 0 ? `its frozen copy still has ${left.length} formulas` : undefined;
}

/** What is wrong with the bill of a workbook, in words, as JSON and on paper; undefined also where it holds none. */
export function planProblem(calculated: Book): string | undefined {
  const job = jobPlan(calculated);
  if (!job) return undefined;
  const { papers } = printOf(job.plan, { ...ABOUT, name: "in.xlsx", stale: 0, missing: job.missing });
  const texts = [billWords(job.plan, true), ...papers.map((paper) => document(paper.title, [paper]))];
  return numberProblem(billJson(job.plan)) ?? textProblem(texts, calculated);
}

/** What is wrong with a part list that is checked in a sound shop. */
export function checkProblem(list: Uint8Array, shop: Uint8Array): string | undefined {
  const read = shopOf(bookOf(readWorkbook(shop)));
  const { rows } = rowsOfFile(list);
  const plan = planIn(read, partRows(readPartList(rows, {}, read.context), read.context));
  return numberProblem(billJson(plan)) ?? textProblem([billWords(plan, true)], [{ name: "list", rows }]);
}

/** What is wrong with the workbook that is begun from a part list, or from the shop of a calculated workbook. */
export function startProblem(parts: Uint8Array | undefined, shop: Book | undefined): string | undefined {
  const tables = shop ? shopTablesOf(shop) : exampleShop();
  const read = shopOf(bookOfTables(tables));
  if (read.missing.length > 0) return undefined;
  const list = parts && readPartList(rowsOfFile(parts).rows, {}, read.context);
  const facts = { name: "in", today: TODAY, partsFile: parts && "in.csv", shopFile: shop && "in.xlsx" };
  const begun = bookOf(readWorkbook(calculatedBytes(jobWorkbook(startedContents(facts, tables, read, list)))));
  const lines = jobPlan(begun)?.plan.rows.length;
  const wanted = list ? list.lines : 1;
  return lines === wanted ? planProblem(begun) : `the workbook that is begun has ${lines} lines for ${wanted}`;
}

/** The first NaN or Infinity in an answer, with the path to it. */
function numberProblem(value: unknown, path = "plan"): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `${path} is ${value}`;
  if (typeof value !== "object" || value === null) return undefined;
  return Object.entries(value)
    .map(([key, inner]) => numberProblem(inner, `${path}.${key}`))
    .find(Boolean);
}

/** What was typed, as a refusal repeats it: a cell may well say "NaN". */
const TYPED = /\bgot\s+(?:"[^"]*"|&quot;.*?&quot;)/gs;

/** Words of a program that no person should read. A part may be called so: then they are its name. */
function textProblem(texts: readonly string[], book: Book): string | undefined {
  const cells = new Set(book.flatMap(({ rows }) => rows.flat()));
  const found = texts
    .flatMap((text) => text.replace(TYPED, "").match(/\b(?:NaN|Infinity|undefined|\[object \w+\])/g) ?? [])
    .find((word) => !cells.has(word));
  return found && `${found} in what people read`;
}
