/** Says in words why the selected cell shows no answer: separators, a name, or the refusal of the function itself. */
import { callRecord } from "../../../cells/call/call.ts";
import { findRecord, NAMESPACE } from "../../../cells/catalogue.ts";
import { CellError, type CellMatrix, type CellValue, isCellError } from "../../../units/cell.ts";
import { ELSEWHERE } from "../../excel/outlined.ts";
import { argumentValue } from "./argument-value.ts";
import { SAVED_ELSEWHERE, savedElsewhere } from "./repair.ts";
import type { Task } from "./task.ts";
import { splitDecimal, type TypedCall, typedCall, withSeparators } from "./typed-call.ts";

export async function explainCell(_task: Task): Promise<string> {
  return Excel.run(async (context) => {
    const cell = context.workbook.getActiveCell();
    cell.load("formulas,values,address");
    cell.worksheet.load("name");
    context.application.load("decimalSeparator");
    await context.sync();
    const [formula, shown] = [String(cell.formulas[0]?.[0]), cell.values[0]?.[0] as unknown];
    const where = cell.address;
    // As text a formula is its own value.
    if (typeof shown === "string" && new RegExp(`^=?\\s*${NAMESPACE}\\.`, "i").test(shown))
      return `${where} holds the formula as text. Set the cell's format to General and enter: ${asTyped(shown, context.application.decimalSeparator)}`;
    const call = typedCall(formula);
    if (!call) return `${where} calls no ${NAMESPACE} function: select the cell that holds the formula.`;
    return `${where}: ${await said(context, cell.worksheet, formula, call, shown)}`;
  });
}

function asTyped(text: string, decimal: string): string {
  const formula = `=${text.replace(/^=?\s*/, "")}`;
  const other = withSeparators(formula, decimal);
  return other
    ? `${other} (in this Excel the decimal sign is ${decimal}, so other signs separate the arguments)`
    : formula;
}

async function said(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  formula: string,
  call: TypedCall,
  shown: unknown,
): Promise<string> {
  const record = findRecord(call.name);
  if (savedElsewhere(formula)) return `${SAVED_ELSEWHERE}.`;
  if (!record) return `${NAMESPACE}.${call.name} is not a function of this version; look for it in the list below.`;
  const name = `${NAMESPACE}.${record.name}`;
  if (shown === "#NAME?") return `${name} was not known when this was entered: press Repair formulas.`;
  if (shown === "#BUSY!") return "It is still being calculated; if that does not end, press Stuck? Recalculate all.";
  const meant = splitDecimal(call);
  const comma = meant ? ` A comma separates arguments: if ${meant} is meant, write ${meant}.` : "";
  if (typeof shown !== "string" || !shown.startsWith("#"))
    return comma ? `it shows an answer, but look again.${comma}` : "it shows an answer; nothing to explain.";
  const given: (CellValue | CellMatrix)[] = [];
  for (const text of call.arguments) {
    const value = await argumentValue(context, sheet, text);
    if (value === undefined)
      return `${name} refuses; "${text}" is worked out by Excel, so point at the cell to see why.${comma}`;
    given.push(value);
  }
  const { value } = callRecord(record, given.length === 1 && call.arguments[0] === "" ? [] : given);
  const error = [value].flat(2).find((one) => isCellError(one));
  if (!(error instanceof CellError) || error === ELSEWHERE)
    return `${name} alone answers; another part of the formula does not, or it is worked out beside Excel: point at the cell.${comma}`;
  return `${name} says: ${error.message ?? error.code}.${comma}`;
}
