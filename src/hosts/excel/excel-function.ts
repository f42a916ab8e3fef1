/** The JavaScript function that Excel calls for one record. It holds no trade: it converts, calls and converts back. */
import { callRecord } from "../../cells/call/call.ts";
import type { AnyRecord } from "../../cells/record/record.ts";
import { type ErrorMaker, fromExcel, toExcel } from "./excel-value.ts";
import { calledByAnotherList, noteCall, OTHER_LIST } from "./function-list.ts";
import type { Answered, LongCalls } from "./long-calls.ts";
import { ELSEWHERE } from "./outlined.ts";

/** Every parameter takes ranges, so every function that has one may answer a block; so does a table. */
export const spills = ({ parameters, result }: AnyRecord): boolean =>
  Object.keys(parameters).length > 0 || result.kind === "table" || result.kind === "row";

type ExcelFunction = (...given: unknown[]) => unknown;

/** `longCalls`: where long records are calculated; a runtime without workers has none. */
export function excelFunction(record: AnyRecord, maker: ErrorMaker, longCalls?: LongCalls): ExcelFunction {
  const count = Object.keys(record.parameters).length;
  const write = (value: Answered) => toExcel(value, spills(record), maker);
  const beside = async (calls: LongCalls, given: readonly Answered[], invocation: Invocation | undefined) => {
    const call = calls.call(record.name, given);
    if (invocation) invocation.onCanceled = () => call.cancel();
    return write(await call.answer);
  };
  return (...all) => {
    const last = all.at(-1);
    const invocation = isInvocation(last) ? last : undefined;
    const brought = invocation ? all.slice(0, -1) : all;
    if (invocation) noteCall(record.name, brought.length, count);
    const given = withoutOmitted(brought, count).map(fromExcel);
    if (record.long && longCalls) return beside(longCalls, given, invocation);
    const { value } = callRecord(record, given);
    // A quick function may ask for a long one: the working of a bend order.
    if (value === ELSEWHERE && longCalls) return beside(longCalls, given, invocation);
    return write(record.name === "VERSION" && calledByAnotherList() ? `${value}; ${OTHER_LIST}` : value);
  };
}

type Invocation = Partial<CustomFunctions.CancelableInvocation>;

/**
 * Excel adds its invocation object behind the arguments it knows of, which is not where this version's arguments end when
 * its list of functions is of another one. No argument is such an object: a range is rows, an error or data type says so.
 */
const isInvocation = (given: unknown): given is Invocation =>
  typeof given === "object" &&
  given !== null &&
  !Array.isArray(given) &&
  !("code" in given || "basicValue" in given || "primitive" in given);

/** Arguments of a newer list that were left out; one that was given stays and is refused, never passed over. */
function withoutOmitted(brought: readonly unknown[], count: number): readonly unknown[] {
  let end = brought.length;
  while (end > count && (brought[end - 1] ?? null) === null) end--;
  return brought.slice(0, end);
}
