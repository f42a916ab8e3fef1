import { SHOP_TABLES } from "../../../cells/example/invented-shop.ts";
import type { JobContents } from "../../../job/job-sheets/contents.ts";
import { jobWorkbook } from "../../../job/job-sheets/job-workbook.ts";
import { PART_COLUMNS } from "../../../job/job-sheets/parts-sheet.ts";
import type { WorkbookModel } from "../../../job/xlsx/model.ts";
import { AREAS } from "./bill/features.ts";
import { FINISHED_TABLE } from "./bill/finished.ts";
import { CUSTOMER, JOB, QUOTE, TOWER_DUE } from "./bill/job.ts";
import { PART_ROWS } from "./bill/part-rows.ts";

export const SHOP_NOTE =
  "Invented machines, tools, prices, pay and times. Type your own over them, from plates, papers and clocks; the unit of a column stands in its header. Angles are included angles of the tool. Nothing of this sheet is built into the functions.";

const CONTENTS: JobContents = {
  system: "in",
  subject: JOB,
  about:
    "An invented job in an invented shop: no machine, firm or event of these names is meant. It shows what the functions answer.",
  shop: [...SHOP_TABLES, FINISHED_TABLE],
  shopNote: SHOP_NOTE,
  shopName: "Tinker's Yard Sheet Works (an invented shop)",
  quoteFoot: "Invented shop, job and prices.",
  jobNote: "Who asks, and by when. All invented. Every function about the bill reads this table.",
  job: {
    job: JOB,
    customer: CUSTOMER,
    number: QUOTE.number,
    day: QUOTE.day,
    valid: QUOTE.validDays,
    start: QUOTE.start,
    due: QUOTE.due,
    areas: Object.values(AREAS).join("; "),
    pace: "normal",
    profit: "margin",
    currency: "USD",
  },
  partColumns: PART_COLUMNS,
  parts: PART_ROWS,
  areaDues: [["Tower", TOWER_DUE]],
  finishedNote: " Invented.",
  shown: { flat: "DF-08", force: "DF-09", shear: "WW-05" },
};

/** The estimator's workbook, from the bill to the customer's page; nothing calculated yet. */
export const sampleModel = (): WorkbookModel => jobWorkbook(CONTENTS);
