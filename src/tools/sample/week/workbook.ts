/** Three invented jobs that are on the floor of the invented shop in one week. */
import { RATES, SHOP_TABLES } from "../../../cells/example/invented-shop.ts";
import type { JobContents } from "../../../job/job-sheets/contents.ts";
import { jobWorkbook } from "../../../job/job-sheets/job-workbook.ts";
import { MARK_PART_COLUMNS, PART_COLUMNS } from "../../../job/job-sheets/parts-sheet.ts";
import type { WorkbookModel } from "../../../job/xlsx/model.ts";
import type { CellValue } from "../../../units/cell.ts";
import { firstOf } from "../../../units/certain.ts";
import { SHOP_NOTE } from "../stage-job/workbook.ts";
import type { WeekJobRows } from "./jobs.ts";

const COLUMNS = [...PART_COLUMNS, ...MARK_PART_COLUMNS];

/** The shop's table of rates with what a week asks for beside them. */
const tables = SHOP_TABLES.map((table) =>
  table.name === RATES.name
    ? {
        ...table,
        rows: [...table.rows, ["Overtime premium", 0.5, null], ["Transfer lot", 200, null]],
      }
    : table,
);

const contents = ({ name, customer, number, due, pace, rows }: WeekJobRows): JobContents => ({
  system: "in",
  subject: `${name} (invented)`,
  about: "One of three invented jobs in one week of an invented shop: see them together with shop week.",
  shop: tables,
  shopNote: SHOP_NOTE,
  shopName: "Tinker's Yard Sheet Works (an invented shop)",
  quoteFoot: "Invented shop, job and prices.",
  jobNote: "Who asks, and by when. All invented. Every function about the bill reads this table.",
  job: {
    job: `${name} (invented)`,
    customer,
    number,
    day: 46_150,
    valid: 21,
    start: 46_160 + 7 / 24,
    due,
    pace,
    profit: "margin",
    currency: "USD",
  },
  partColumns: COLUMNS,
  parts: rows.map((row) => COLUMNS.map(({ header }): CellValue => row[header] ?? null)),
  shown: { flat: String(firstOf(rows)["Part"]), shear: String(firstOf(rows)["Part"]) },
});

export const weekModel = (job: WeekJobRows): WorkbookModel => jobWorkbook(contents(job));
