/** Entry of the functions bundle: registers every record of the catalogue in Excel's runtime. */
import { RECORDS } from "../../cells/catalogue.ts";
import { PRODUCT_VERSION } from "../../cells/record/version.generated.ts";
import { excelFunction } from "./excel-function.ts";
import { functionId } from "./function-id.ts";
import { LongCalls } from "./long-calls.ts";

if (typeof CustomFunctions !== "undefined") register();

function register(): void {
  const address = workerAddress();
  const longCalls = address ? new LongCalls(() => new Worker(address)) : undefined;
  for (const record of RECORDS)
    CustomFunctions.associate(functionId(record.name), excelFunction(record, CustomFunctions, longCalls));
}

/** Beside this file, and never one of another version; undefined in a runtime without a page or without workers. */
function workerAddress(): URL | undefined {
  if (typeof document === "undefined" || typeof Worker === "undefined") return undefined;
  const own = (document.currentScript as HTMLScriptElement | null)?.src;
  return own ? new URL(`long.js?${PRODUCT_VERSION}`, own) : undefined;
}
