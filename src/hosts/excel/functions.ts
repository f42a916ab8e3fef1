/**
 * Entry of the functions bundle. In Excel's runtime it registers every record of the catalogue; loaded as a worker, the
 * same file answers the long calls, so that the two can never be of different versions.
 */
import { callRecord } from "../../cells/call.ts";
import { findRecord, RECORDS } from "../../cells/catalogue.ts";
import { excelFunction } from "./excel-function.ts";
import { fromExcel } from "./excel-value.ts";
import { LongCalls } from "./long-calls.ts";

declare const importScripts: unknown;

if (typeof document === "undefined" && typeof importScripts === "function") answerLongCalls();
else if (typeof CustomFunctions !== "undefined") register();

function register(): void {
  const own = typeof document === "undefined" ? null : document.currentScript;
  const longCalls =
    own instanceof HTMLScriptElement && typeof Worker !== "undefined"
      ? new LongCalls(() => new Worker(own.src))
      : undefined;
  for (const record of RECORDS)
    CustomFunctions.associate(record.name, excelFunction(record, CustomFunctions, longCalls));
}

function answerLongCalls(): void {
  // An error cell crosses as a plain { code, message } and becomes an error again on the other side.
  self.onmessage = ({ data }: MessageEvent<{ name: string; given: unknown[] }>) =>
    self.postMessage(callRecord(findRecord(data.name)!, data.given.map(fromExcel)).value);
}
