/** The workbook of a job, from the bill to the customer's page: the sample's, a started one's, an upgraded one's. */
import { functionsSheet } from "../building/functions-sheet.ts";
import type { WorkbookModel } from "../xlsx/model.ts";
import { answersSheet } from "./answers-sheet.ts";
import { calculationSheet } from "./calculation-sheet.ts";
import type { JobContents } from "./contents.ts";
import { FINISHED, finishedSheet, NONE_FINISHED } from "./finished-sheet.ts";
import { jobSheet } from "./job-sheet.ts";
import { partsSheet } from "./parts-sheet.ts";
import { quoteSheet } from "./quote-sheet.ts";
import { readMe } from "./read-me.ts";
import { shopSheet } from "./shop-sheet.ts";
import {
  blanksSheet,
  buyingSheet,
  checkSheet,
  cutListSheet,
  cutPlanSheet,
  loadInSheet,
  machinesSheet,
  priceSheet,
  routeSheet,
  setUpsSheet,
  summarySheet,
  timesSheet,
  whatIfSheet,
} from "./spill-sheets.ts";

/** Nothing is calculated yet. */
export const jobWorkbook = (job: JobContents): WorkbookModel => ({
  title: `Bracket bill: ${job.subject}`,
  sheets: [
    readMe(job),
    shopSheet(job),
    partsSheet(job),
    jobSheet(job),
    answersSheet(job),
    calculationSheet(job),
    checkSheet(job),
    blanksSheet(job),
    cutPlanSheet(job),
    cutListSheet(job),
    buyingSheet(job),
    summarySheet(job),
    routeSheet(job),
    timesSheet(job),
    finishedSheet(job.shop.find(({ name }) => name === FINISHED) ?? NONE_FINISHED, job.finishedNote),
    setUpsSheet(job),
    machinesSheet(job),
    priceSheet(job),
    whatIfSheet(job),
    loadInSheet(job),
    quoteSheet(job),
    functionsSheet(),
  ],
});
