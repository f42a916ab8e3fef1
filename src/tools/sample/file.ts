/** The sample workbooks as generated files. */
import { calculatedBytes } from "../../job/building/calculated.ts";
import type { WorkbookModel } from "../../job/xlsx/model.ts";
import { firstRunModel } from "./first-run/workbook.ts";
import { partListModel } from "./part-list/workbook.ts";
import { pricingModel } from "./pricing/workbook.ts";
import { sampleModel } from "./stage-job/workbook.ts";
import { JOBS } from "./week/jobs.ts";
import { weekModel } from "./week/workbook.ts";

export interface Sample {
  readonly file: string;
  /** Where its answers are written down, and those of which sheets: the others hold what was typed, or the catalogue. */
  readonly results: string;
  readonly sheets: readonly string[];
  readonly model: () => WorkbookModel;
}

const sample = (name: string, sheets: readonly string[], model: () => WorkbookModel): Sample => ({
  file: `sample-workbooks/${name}.xlsx`,
  results: `tests/recorded/${name}.json`,
  sheets,
  model,
});

export const STAGE_JOB = sample(
  "stage-job",
  [
    "Answers",
    "Calculation",
    "Checks",
    "Blanks",
    "Cut plan",
    "Buying",
    "Summary",
    "Route",
    "Times",
    "Set-ups",
    "Machines",
    "Price",
    "What-if",
    "Load-in",
    "Quote",
  ],
  sampleModel,
);
export const PART_LIST = sample("part-list", ["Summary", "Checks"], partListModel);
export const PRICING = sample(
  "pricing",
  ["Price", "Breaks", "Strip check", "Correction", "Evenness", "Air bends", "One bend", "Every function"],
  () => pricingModel([sampleModel(), partListModel()]),
);
const FIRST_RUN = sample("first-run", ["First run"], firstRunModel);
/** Open jobs of one week, for `shop week`. */
export const WEEK: readonly Sample[] = JOBS.map((job) =>
  sample(`week/${job.file}`, ["Summary", "Times"], () => weekModel(job)),
);
export const SAMPLES: readonly Sample[] = [STAGE_JOB, PART_LIST, PRICING, FIRST_RUN, ...WEEK];
/** The one that is shown where none is named. */
export const SAMPLE_FILE = STAGE_JOB.file;

export const sampleBytes = ({ model }: Sample): Uint8Array => calculatedBytes(model());
