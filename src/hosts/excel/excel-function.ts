/** The JavaScript function that Excel calls for one record. It holds no trade: it converts, calls and converts back. */
import { callRecord } from "../../cells/call/call.ts";
import type { AnyRecord } from "../../cells/record/record.ts";
import { type ErrorMaker, fromExcel, toExcel } from "./excel-value.ts";
import type { Answered, LongCalls } from "./long-calls.ts";
import { ELSEWHERE } from "./outlined.ts";

/** Every parameter takes ranges, so every function that has one may answer a block; so does a table. */
export const spills = ({ parameters, result }: AnyRecord): boolean =>
  Object.keys(parameters).length > 0 || result.kind === "table" || result.kind === "row";

export type ExcelFunction = (...given: unknown[]) => unknown;

/** `longCalls`: where long records are calculated; a runtime without workers has none. */
export function excelFunction(record: AnyRecord, maker: ErrorMaker, longCalls?: LongCalls): ExcelFunction {
  const count = Object.keys(record.parameters).length;
  // Excel always adds its invocation object behind the declared arguments.
  const read = (given: readonly unknown[]) => given.slice(0, count).map(fromExcel);
  const write = (value: Answered) => toExcel(value, spills(record), maker);
  const beside = async (calls: LongCalls, given: readonly unknown[]) => {
    const call = calls.call(record.name, read(given));
    const invocation = given[count] as CustomFunctions.CancelableInvocation | undefined;
    if (invocation) invocation.onCanceled = () => call.cancel();
    return write(await call.answer);
  };
  return (...given) => {
    if (record.long && longCalls) return beside(longCalls, given);
    const { value } = callRecord(record, read(given));
    // A quick function may ask for a long one: the working of a bend order.
    return value === ELSEWHERE && longCalls ? beside(longCalls, given) : write(value);
  };
}
