/** Everything of the trade that a session needs, in a file of its own: the engine knows none of it. */

import { changesSay } from "../../bill/plan-changes.ts";
import { findRecord, RECORDS, shopFunctions } from "../../cells/catalogue.ts";
import { billRowAt } from "../../job/bill-row.ts";
import { columnUnit } from "../../job/column-unit.ts";
import { fixOffer } from "../../job/fix-cells.ts";
import { jobPlan } from "../../job/job-plan.ts";
import { cutSheets } from "../../papers/cut-sheets.ts";
import { jobFigures } from "../../papers/job-figures.ts";
import { lineList } from "../../papers/line-list.ts";
import { lineReport } from "../../papers/line-report.ts";
import { guideEntry } from "../pane/guide/entry.ts";

export const trade = {
  functions: shopFunctions,
  /** Takes long enough that whoever types should not wait for it. */
  isLong: (name: string): boolean => findRecord(name)?.long === true,
  jobPlan,
  billRowAt,
  columnUnit,
  lineList,
  lineReport,
  fixOffer,
  changesSay,
  jobFigures,
  cutSheets,
  guide: () => RECORDS.map(guideEntry),
};
export type Trade = typeof trade;
