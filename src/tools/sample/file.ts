/** The sample workbook as a generated file. */
import { calculatedBytes } from "./calculated.ts";
import { sampleModel } from "./stage-job/workbook.ts";

export const SAMPLE_FILE = "sample-workbooks/stage-job.xlsx";

export const sampleBytes = (): Uint8Array => calculatedBytes(sampleModel());
