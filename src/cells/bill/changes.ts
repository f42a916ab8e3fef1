/** BILL.CHANGES: what a revision changes, a row a difference; lines by their part, then the job. */
import type { BillChanges, Difference, Said } from "../../bill/changes/plan-changes.ts";
import type { Instant } from "../../calc/schedule/calendar.ts";
import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { showNumber } from "../../units/show.ts";
import { fromInternal, type UnitSystem, unitName } from "../../units/system.ts";
import { asSerial } from "../parameters/instant.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";

/** What the rows about the job as a whole have in place of a part. */
const JOB_ROWS = "(job)";
const NO_CHANGE = "no change";

export function billChanges({ lines, job }: BillChanges, system: UnitSystem): CellMatrix {
  const rows = [
    ...lines.flatMap(({ part, change, differences }) => differences.map((each) => rowOf(part, change, each, system))),
    ...job.map((each) => rowOf(JOB_ROWS, "changed", each, system)),
  ];
  const none: SpillRow<"BILL.CHANGES"> = {
    Part: JOB_ROWS,
    Change: NO_CHANGE,
    What: "",
    Before: "",
    After: "",
    Unit: "",
  };
  return spill("BILL.CHANGES", rows.length > 0 ? rows : [none], system);
}

function rowOf(
  Part: string,
  Change: string,
  { what, before, after }: Difference,
  system: UnitSystem,
): SpillRow<"BILL.CHANGES"> {
  return {
    Part,
    Change,
    What: what,
    Before: cellOf(before, system),
    After: cellOf(after, system),
    Unit: unitOf(before, system),
  };
}

export function cellOf({ kind, value }: Said, system: UnitSystem): CellValue {
  if (value === undefined) return "";
  if (typeof value === "string") return value;
  if (typeof value === "object")
    return value.map((each) => showNumber(Number(cellOf({ kind, value: each }, system)), 7)).join("; ");
  if (kind === "date") return asSerial(value as Instant);
  return kind === "length" || kind === "mass" || kind === "angle" ? fromInternal(value, kind, system) : value;
}

export const unitOf = ({ kind }: Said, system: UnitSystem): string =>
  kind === "length" || kind === "mass" || kind === "angle" ? unitName(kind, system) : kind;
