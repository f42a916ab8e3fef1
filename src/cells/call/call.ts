/**
 * Calls a cell function: brings the arguments into shape, reads them, calculates and writes the answer in the caller's
 * unit. Never throws and never returns NaN or Infinity: whatever comes in, a value or an error with a sentence comes out.
 */
import { type CellValue, isCellError } from "../../units/cell.ts";
import { firstOf } from "../../units/certain.ts";
import { message, Refusal } from "../../units/refusal.ts";
import type { ResultUnit } from "../../units/system.ts";
import type { Working } from "../../units/working.ts";
import { combine, isSingle, ONE, type Shape, shapeOf } from "../record/broadcast.ts";
import type { AnyRecord } from "../record/record.ts";
import { asError, type CallResult } from "./answer.ts";
import { type Argument, arrange, broadcasts, type Slot } from "./arguments.ts";
import { type OnRead, RowReader } from "./row-reader.ts";

export type { Argument, CallResult };

export function callRecord(record: AnyRecord, given: readonly Argument[], work?: Working, onRead?: OnRead): CallResult {
  try {
    return respond(record, arrange(record, given), work, onRead);
  } catch (problem) {
    return { value: asError(problem, record), unit: null };
  }
}

function respond(record: AnyRecord, slots: readonly Slot[], work?: Working, onRead?: OnRead): CallResult {
  const shape = combine([ONE, ...slots.filter(broadcasts).map(({ matrix }) => shapeOf(matrix))]);
  const row = new RowReader(record, slots);
  if (isSingle(shape)) return row.answer(0, 0, work, onRead);
  if (record.result.kind === "table")
    throw new Refusal(
      "#VALUE!",
      message(
        "arguments",
        `single cells for ${record.name}, which spills its own block`,
        `a range of ${shape.rows} x ${shape.columns}`,
      ),
    );
  if (record.result.kind === "row") return respondInRows(record, row, shape);
  let unit: ResultUnit | null | undefined;
  const value = Array.from({ length: shape.rows }, (_, r) =>
    Array.from({ length: shape.columns }, (_, c) => {
      const answer = row.answer(r, c);
      if (!isCellError(answer.value) && answer.value !== "")
        unit = unit === undefined || unit === answer.unit ? answer.unit : null;
      return answer.value as CellValue;
    }),
  );
  return { value, unit: unit ?? null };
}

/** Several values a part, side by side: the parts must run down. */
function respondInRows(record: AnyRecord, row: RowReader, shape: Shape): CallResult {
  const width = record.result.kind === "row" ? record.result.columns.length : 1;
  if (shape.columns > 1)
    throw new Refusal(
      "#VALUE!",
      message("arguments", `columns for ${record.name}: one part a row`, `a range ${shape.columns} wide`),
    );
  const value = Array.from({ length: shape.rows }, (_, r) => {
    const answer = row.answer(r, 0).value;
    return Array.isArray(answer) ? firstOf(answer) : Array.from({ length: width }, () => answer);
  });
  return { value, unit: null };
}
