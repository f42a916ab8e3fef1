/** A fix as cells of the bill: what is typed where, so that the workbook reaches what was promised. */

import { askedSays, instructionSays, offerSays } from "../bill/fix-says.ts";
import { type Change, withChange } from "../bill/lines/changes.ts";
import type { Fix } from "../bill/lines/fix.ts";
import { type BillLine, isLine } from "../bill/nouns/line.ts";
import type { LineAnswer } from "../bill/plan.ts";
import type { Status } from "../bill/problems.ts";
import { findColumn } from "../cells/parameters/column.ts";
import { BILL_COLUMNS } from "../cells/tables/bill-columns.ts";
import { type CellValue, isBlank } from "../units/cell.ts";
import { itemAt } from "../units/certain.ts";
import { fromInternal, type UnitSystem } from "../units/system.ts";
import type { JobPlan } from "./job-plan.ts";

type BillColumn = keyof typeof BILL_COLUMNS;

/** A cell of the bill's sheet, counted from 0, with what stands in it now. */
export interface FixCell {
  readonly row: number;
  readonly column: number;
  readonly was: CellValue;
  readonly value: CellValue;
}
interface FixCells {
  readonly cells: readonly FixCell[];
  /** Headings that the bill would need and has not: among the cells they stand right of its table. */
  readonly lacks: readonly string[];
}

/** @param at index of the line in the bill. */
export function fixCells({ plan, table, system }: JobPlan, at: number, fix: Fix): FixCells {
  const row = itemAt(plan.rows, at);
  if (!isLine(row)) return { cells: [], lacks: [] };
  const lacks: string[] = [];
  const headings: FixCell[] = [];
  const [header = []] = table.matrix;
  const cells = new Map<number, FixCell>();
  let line = row;
  for (const change of fix.changes) {
    const next = withChange(line, change);
    for (const key of COLUMNS_OF[change.kind]) {
      const column = BILL_COLUMNS[key];
      const found = findColumn(header, { ...column, optional: true }, "bill");
      const { size } = found;
      const added = lacks.indexOf(column.headers[0]);
      let index = found.index < 0 && added >= 0 ? header.length + added : found.index;
      const before = cells.get(index);
      const was = index < 0 ? null : (table.matrix[row.row - 1]?.[index] ?? null);
      const value = written(key, { change, asked: line, line: next, cell: before ? before.value : was }, size, system);
      if (value === undefined) continue;
      // The quote prints the description; where the bill has none, somebody must tell the customer.
      if (index < 0 && (isBlank(value) || key === "description")) continue;
      if (index < 0) {
        index = header.length + lacks.push(column.headers[0]) - 1;
        const heading = { row: table.top, column: table.left + index, was: null, value: column.headers[0] };
        headings.push(heading);
      }
      cells.set(index, { row: table.top + row.row - 1, column: table.left + index, was, value });
    }
    line = next;
  }
  return { cells: [...[...cells.values()].filter(({ was, value }) => was !== value), ...headings], lacks };
}

const COLUMNS_OF: Readonly<Record<Change["kind"], readonly BillColumn[]>> = {
  tools: ["die", "punch", "brake"],
  grain: ["grain"],
  deburr: ["operations"],
  coat: ["operations"],
  "hole after": ["holeDistance", "instruction"],
  waterjet: ["route"],
  "trim after": ["flanges", "crossFlanges", "instruction"],
  pieces: ["quantity", "width", "description"],
  material: ["material", "description"],
  thickness: ["thickness", "actual", "description"],
};

interface Typed {
  readonly change: Change;
  /** Without the change, and with it. */
  readonly asked: BillLine;
  readonly line: BillLine;
  readonly cell: CellValue;
}

/** What is typed into the column; undefined where the change leaves it as it is. */
function written(
  key: BillColumn,
  { change, asked, line, cell }: Typed,
  size: number | undefined,
  system: UnitSystem,
): CellValue | undefined {
  const length = (value: number) => Number((size ? value / size : fromInternal(value, "length", system)).toFixed(6));
  switch (key) {
    case "instruction":
      return [cell, instructionSays(change, asked, system)].filter((words) => !isBlank(words)).join("; ");
    case "description":
      return [cell, askedSays(change, asked, system)].filter((words) => !isBlank(words)).join("; ");
    case "die":
    case "punch":
    case "brake":
      return change.kind === "tools" ? change[key] : undefined;
    case "material":
      return line.material.name;
    case "grain":
      return line.grain;
    case "operations":
      return change.kind !== "deburr" && change.kind !== "coat"
        ? undefined
        : isBlank(cell)
          ? change.station
          : `${String(cell)}; ${change.station}`;
    case "route":
      return line.pin;
    case "flanges":
    case "crossFlanges": {
      const flanges = key === "flanges" ? line.main.flanges : line.cross?.flanges;
      if (flanges === undefined || change.kind !== "trim after") return undefined;
      const items = String(cell).split(";");
      // A flange that is long enough stays as it was written.
      return flanges
        .map((flange, i) => (flange === change.flange ? length(flange) : itemAt(items, i).trim()))
        .join("; ");
    }
    case "quantity":
      return line.quantity;
    case "width":
      return length(line.width);
    case "thickness":
      return length(line.nominal);
    default:
      return null;
  }
}

/** A fix as page and pane offer it: its words, and the cells that applying it writes. */
export type FixOffer = {
  readonly says: string;
  readonly reaches: Status;
  /** Only the customer can agree to it. */
  readonly isAsked: boolean;
} & FixCells;

/** undefined where the line is clear, or nothing betters it. */
export function fixOffer(job: JobPlan, line: LineAnswer): FixOffer | undefined {
  const fix = job.plan.fix(line);
  if (!fix) return undefined;
  const at = job.plan.lines.indexOf(line);
  const row = itemAt(job.plan.rows, at);
  const isAsked = isLine(row) && fix.changes.some((change) => askedSays(change, row, job.system) !== "");
  return { says: offerSays(fix, job.system), reaches: fix.reaches, isAsked, ...fixCells(job, at, fix) };
}
