/** Writes an answer as a cell, in the caller's unit; nothing but a number ever leaves as one. */
import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { message, Refusal } from "../../units/refusal.ts";
import { fromInternal, RESULT_UNITS, type ResultUnit, type UnitSystem, unitName } from "../../units/system.ts";
import type { Answer, AnyRecord } from "../record/record.ts";

export interface CallResult {
  readonly value: CellValue | CellMatrix;
  readonly unit: ResultUnit | null;
}

export function writeAnswer(record: AnyRecord, answer: Answer, system: UnitSystem): CallResult {
  const { result } = record;
  switch (result.kind) {
    case "table":
      return { value: guardMatrix(answer as CellMatrix, record), unit: null };
    case "row":
      return { value: guardMatrix([answer as CellValue[]], record), unit: null };
    case "any": {
      const { value, unit } = answer as { value: CellValue; unit: ResultUnit | null };
      return { value: guard(value, record), unit: typeof value === "number" ? unit : null };
    }
    case "text":
      return { value: answer as string, unit: null };
    case "count":
    case "money":
    case "date":
    case "h":
    case "min":
      return { value: guard(answer as number, record), unit: result.kind };
    default: {
      const name = unitName(result.kind, system);
      const unit = (RESULT_UNITS as readonly string[]).includes(name) ? (name as ResultUnit) : null;
      return { value: guard(fromInternal(answer as number, result.kind, system), record), unit };
    }
  }
}

const guardMatrix = (matrix: CellMatrix, record: AnyRecord): CellMatrix =>
  matrix.map((row) => row.map((cell) => guard(cell, record)));

/** Inputs may each be in order and yet overflow together; a cell never shows that as a number. */
function guard(value: CellValue, record: AnyRecord): CellValue {
  if (typeof value !== "number") return value;
  // Excel keeps 15 digits: the last bits that a unit conversion leaves behind (1.4999999999999998) are not an answer.
  if (Number.isFinite(value)) return Number(value.toPrecision(15));
  throw new Refusal(
    "#N/A",
    message("arguments", `of a size that ${record.name} can answer`, "figures whose result is too large to write"),
  );
}

export function asError(problem: unknown, record: AnyRecord): CellError {
  if (problem instanceof CellError) return problem;
  if (problem instanceof Refusal) return problem.toCell();
  // Our own mistake: say so in the cell instead of taking the workbook down.
  const detail = problem instanceof Error ? problem.message : String(problem);
  return new CellError(
    "#VALUE!",
    message(record.name, "free of faults of its own", detail, "please report it with the arguments"),
  );
}
