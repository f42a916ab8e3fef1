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

if (typeof CustomFunctions !== "undefined") register();
else if (typeof document === "undefined" && typeof importScripts === "function") answerLongCalls();

function register(): void {
  const address = ownAddress();
  const longCalls = address && typeof Worker !== "undefined" ? new LongCalls(() => new Worker(address)) : undefined;
  for (const record of RECORDS)
    CustomFunctions.associate(record.name, excelFunction(record, CustomFunctions, longCalls));
}

/** Where this file was loaded from; undefined in a runtime without a page. */
function ownAddress(): string | undefined {
  return typeof document === "undefined" ? undefined : (document.currentScript as HTMLScriptElement | null)?.src;
}

function answerLongCalls(): void {
  // An error cell crosses as a plain { code, message } and becomes an error again on the other side.
  self.onmessage = ({ data }: MessageEvent<{ name: string; given: unknown[] }>) =>
    self.postMessage(callRecord(findRecord(data.name)!, data.given.map(fromExcel)).value);
}
