import { functionsSheet } from "../building/functions-sheet.ts";
import { shopSheet } from "../shop/shop-sheet.ts";
import type { WorkbookModel } from "../xlsx/model.ts";
import { JOB } from "./bill/job.ts";
import { answersSheet } from "./sheets/answers-sheet.ts";
import { calculationSheet } from "./sheets/calculation-sheet.ts";
import { finishedSheet } from "./sheets/finished-sheet.ts";
import { jobSheet } from "./sheets/job-sheet.ts";
import { partsSheet } from "./sheets/parts-sheet.ts";
import { quoteSheet } from "./sheets/quote-sheet.ts";
import { readMe } from "./sheets/read-me.ts";
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
} from "./sheets/spill-sheets.ts";

/** The estimator's workbook, from the bill to the customer's page; nothing calculated yet. */
export const sampleModel = (): WorkbookModel => ({
  title: `Bracket bill: ${JOB}`,
  sheets: [
    readMe(),
    shopSheet(),
    partsSheet(),
    jobSheet(),
    answersSheet(),
    calculationSheet(),
    checkSheet(),
    blanksSheet(),
    cutPlanSheet(),
    cutListSheet(),
    buyingSheet(),
    summarySheet(),
    routeSheet(),
    timesSheet(),
    finishedSheet(),
    setUpsSheet(),
    machinesSheet(),
    priceSheet(),
    whatIfSheet(),
    loadInSheet(),
    quoteSheet(),
    functionsSheet(),
  ],
});
