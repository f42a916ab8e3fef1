import type { ReadContext } from "../../cells/record/record.ts";
import { readBill } from "../../cells/tables/bill.ts";
import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { firstOf, itemAt } from "../../units/certain.ts";
import type { MappedColumn } from "./column-map.ts";
import type { Fault, FaultKind } from "./doubt.ts";
import { type Field, itemsOf } from "./fields.ts";
import { type BillKey, titleOf } from "./heading-words.ts";
import { sentenceOf } from "./read-cell.ts";

/** A list whose cells are read. */
interface ReadLines {
  readonly cells: CellMatrix;
  readonly headingRow: number;
  readonly columns: readonly MappedColumn[];
  readonly faults: readonly Fault[];
}

/** Where a cell is empty and should not be: a blank would be read as its default meaning. */
export const UNSAID = "?";

/** Lines whose cells are all right and do not fit together, as the bill's own table says, and bends without an angle. */
export function lineFaults(list: ReadLines, fields: readonly Field[], context: ReadContext): Fault[] {
  const has = new Set(list.faults.map(({ row }) => row));
  return readBill(list.cells, "parts", { ...context, headerRow: list.headingRow }).flatMap((row) => {
    const number = list.headingRow + row.row - 1;
    const unsaid = anglesUnsaid(itemAt(list.cells, row.row - 1), fields);
    if (unsaid) return [{ row: number, ...unsaid }];
    if (!("refusal" in row) || has.has(number)) return [];
    const title = /column "([^"]*)"/.exec(row.refusal.message)?.[1] ?? "";
    const at = list.columns.find(({ read }) => read && titleOf(read.key) === title);
    const given = at ? String(itemAt(list.cells, row.row - 1)[firstOf(list.cells).indexOf(title)] ?? "") : "";
    const kind: FaultKind = "does not fit together";
    const words = sentenceOf(row.refusal);
    return [{ row: number, column: at?.letter ?? "", title: at?.title ?? title, given, kind, words }];
  });
}

/** Said beside any other fault of the line. One angle of a column is that of all bends, one of several columns is its own. */
function anglesUnsaid(row: readonly CellValue[], fields: readonly Field[]): Omit<Fault, "row"> | undefined {
  const cellOf = (key: BillKey) => String(row[fields.findIndex((field) => field.key === key)] ?? "");
  const [flanges, angles] = [cellOf("flanges"), cellOf("bendAngles")];
  const bends = itemsOf(flanges).length - 1;
  const said = angles === "" ? 0 : itemsOf(angles).length;
  const field = fields.find(({ key }) => key === "bendAngles");
  if (flanges.endsWith(UNSAID) || angles.endsWith(UNSAID) || said >= bends) return undefined;
  if (said > 0 && (field?.from.length ?? 0) < 2) return undefined;
  const ofBends = `for ${bends} ${bends === 1 ? "bend" : "bends"}`;
  const place = { column: field?.letter ?? "", title: field?.title ?? titleOf("bendAngles"), given: angles };
  if (said > 0) return { ...place, kind: "does not fit together", words: `${said} of the angles ${ofBends}` };
  const hint = field ? "" : '; no column says them: --every "Bend angles=90"';
  return { ...place, kind: "missing", words: `no angle ${ofBends}${hint}` };
}
