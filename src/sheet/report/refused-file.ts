import type { FileRefusal } from "../package/file-refusal.ts";
import { type FileResult, noCounts } from "./report.ts";

/** The report's entry of a file that was not recalculated. */
export function refusedFile(path: string, refusal: FileRefusal, seconds: number): FileResult {
  return {
    report: {
      in: path,
      out: null,
      status: "refused",
      formulas: 0,
      recalculated: 0,
      changed: 0,
      kept: [],
      stale: [],
      circular: [],
      differences: [],
      refused: { reason: refusal.reason, message: refusal.message },
      seconds,
    },
    counts: noCounts(),
  };
}
