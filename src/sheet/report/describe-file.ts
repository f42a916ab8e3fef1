import { CellError, type CellValue } from "../../units/cell.ts";
import { firstOf, itemAt } from "../../units/certain.ts";
import { cellName } from "../formula/address.ts";
import { functionName } from "../formula/function-name.ts";
import { excelFunctionNames } from "../functions/excel-names.ts";
import type { Calculator } from "../graph/calculator.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";
import type { Workbook } from "../workbook/workbook.ts";
import { sameStored, VERIFY_TOLERANCE } from "../write/same-stored.ts";
import { type Counts, type FileReport, type FileResult, type JsonValue, type KeptReason, noCounts } from "./report.ts";

interface FileFacts {
  readonly in: string;
  readonly out: string | null;
  readonly changed: number;
  readonly seconds: number;
  readonly verify: boolean;
}

/** Everything the report says about one calculated workbook. */
export function describeFile(calculator: Calculator, facts: FileFacts): FileResult {
  const { workbook } = calculator;
  const formulas = [...calculator.formulas()];
  const stale = calculator.stale();
  const kept = formulas.flatMap((cell) => (cell.kept ? { cell, kept: cell.kept } : []));
  const counts = noCounts() as { -readonly [K in keyof Counts]: Counts[K] };
  const differences: { cell: string; stored: JsonValue; computed: JsonValue }[] = [];
  for (const cell of formulas) {
    if (cell.stored === undefined) continue;
    counts.cached++;
    const excluded = excludedAs(cell, stale);
    if (excluded) {
      counts.excluded[excluded]++;
      continue;
    }
    const difference = cell.kept || cell.circular ? held(cell) : firstDifference(workbook, cell);
    if (difference === undefined) counts.equal++;
    else differences.push({ ...difference, cell: nameOf(workbook, difference.cell) });
  }
  const shown = facts.verify ? differences : [];
  const report: FileReport = {
    in: facts.in,
    out: facts.out,
    status: shown.length > 0 ? "different" : kept.length > 0 || calculator.circles.length > 0 ? "stale" : "fresh",
    formulas: formulas.length,
    recalculated: formulas.length - kept.length - formulas.filter((cell) => cell.circular).length,
    changed: facts.changed,
    kept: kept.map(({ cell, kept: { reason, detail } }) => ({
      cell: nameOf(workbook, cell),
      reason: reason as KeptReason,
      detail,
    })),
    stale: [...stale].filter((cell) => !cell.kept && !cell.circular).map((cell) => nameOf(workbook, cell)),
    circular: calculator.circles.map((circle) => circle.map((cell) => nameOf(workbook, cell))),
    differences: shown,
    refused: null,
    seconds: facts.seconds,
  };
  return { report, counts };
}

/** Cells no one could recompute here: outside functions, outside links, clocks and dice, and what depends on them. */
function excludedAs(cell: FormulaCell, stale: ReadonlySet<FormulaCell>): keyof Counts["excluded"] | undefined {
  if (cell.kept) {
    const { reason, detail } = cell.kept;
    if (reason === "external-link" || reason === "volatile") return reason;
    if (reason === "unknown-function" && !excelFunctionNames.has(functionName(firstOf(detail.split(";")), "").name))
      return reason;
    return undefined;
  }
  return stale.has(cell) ? "dependant" : undefined;
}

interface Difference {
  readonly cell: Place;
  readonly stored: JsonValue;
  readonly computed: JsonValue;
}

/** A value that could not be computed is equal to nothing. */
const held = (cell: FormulaCell): Difference => ({ cell, stored: json(cell.stored), computed: null });

/** The first cell that a formula fills whose value is not the stored one. */
function firstDifference(workbook: Workbook, cell: FormulaCell): Difference | undefined {
  const sheet = itemAt(workbook.sheets, cell.sheet);
  const differs = (row: number, column: number, stored: CellValue | undefined): Difference | undefined => {
    const now = sheet.values[column]?.[row];
    if (sameStored(stored, now, VERIFY_TOLERANCE)) return undefined;
    return { cell: { sheet: cell.sheet, row, column }, stored: json(stored), computed: json(now) };
  };
  const own = differs(cell.row, cell.column, cell.stored);
  if (own || cell.kind === "normal" || !cell.ref) return own;
  for (let row = cell.ref.top; row <= cell.ref.bottom; row++) {
    for (let column = cell.ref.left; column <= cell.ref.right; column++) {
      const key = row * 16_384 + column;
      const found = sheet.originals.has(key) ? differs(row, column, sheet.originals.get(key)) : undefined;
      if (found) return found;
    }
  }
  return undefined;
}

const json = (value: CellValue | undefined): JsonValue => (value instanceof CellError ? value.code : (value ?? null));

interface Place {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
}

export function nameOf(workbook: Workbook, cell: Place): string {
  const { name } = itemAt(workbook.sheets, cell.sheet);
  const quoted = /^[A-Za-z_][\w.]*$/.test(name) ? name : `'${name.replaceAll("'", "''")}'`;
  return `${quoted}!${cellName(cell.row, cell.column)}`;
}
