/** The JavaScript function that Excel calls for one record. It holds no trade: it converts, calls and converts back. */
import { callRecord } from "../../cells/call.ts";
import type { AnyRecord } from "../../cells/record.ts";
import { type ErrorMaker, fromExcel, toExcel } from "./excel-value.ts";
import type { LongCalls } from "./long-calls.ts";

/** Every parameter takes ranges, so every function that has one may answer a block; so does a table. */
export const spills = ({ parameters, result }: AnyRecord): boolean =>
  Object.keys(parameters).length > 0 || result.kind === "table" || result.kind === "row";

export type ExcelFunction = (...given: unknown[]) => unknown;

/** Without `longCalls` (a runtime that knows no worker) a long record still leaves Excel a breath before it starts. */
export function excelFunction(record: AnyRecord, maker: ErrorMaker, longCalls?: LongCalls): ExcelFunction {
  const count = Object.keys(record.parameters).length;
  // Excel always adds its invocation object behind the declared arguments.
  const read = (given: readonly unknown[]) => given.slice(0, count).map(fromExcel);
  const write = (value: Parameters<typeof toExcel>[0]) => toExcel(value, spills(record), maker);
  if (!record.long) return (...given) => write(callRecord(record, read(given)).value);
  return async (...given) => {
    const call = longCalls?.call(record.name, read(given));
    if (!call) {
      await new Promise((resume) => setTimeout(resume));
      return write(callRecord(record, read(given)).value);
    }
    const invocation = given[count] as CustomFunctions.CancelableInvocation | undefined;
    if (invocation) invocation.onCanceled = () => call.cancel();
    return write(await call.answer);
  };
}
