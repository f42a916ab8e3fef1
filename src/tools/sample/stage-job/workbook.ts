import { functionsSheet } from "../building/functions-sheet.ts";
import type { WorkbookModel } from "../xlsx/model.ts";
import { JOB } from "./job.ts";
import { answersSheet } from "./sheets/answers-sheet.ts";
import { calculationSheet } from "./sheets/calculation-sheet.ts";
import { partsSheet } from "./sheets/parts-sheet.ts";
import { readMe } from "./sheets/read-me.ts";
import { shopSheet } from "./sheets/shop-sheet.ts";

/** The sample workbook, nothing calculated yet. */
export const sampleModel = (): WorkbookModel => ({
  title: `Bracket bill: ${JOB}`,
  sheets: [readMe(), shopSheet(), partsSheet(), answersSheet(), calculationSheet(), functionsSheet()],
});
