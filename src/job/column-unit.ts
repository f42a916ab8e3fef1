/** What plain numbers in a column of the bill mean. */
import { BILL_COLUMNS } from "../cells/tables/bill-columns.ts";
import { foldHeader } from "../cells/tables/recognized.ts";
import type { CellValue } from "../units/cell.ts";
import type { UnitSystem } from "../units/system.ts";

/** "in", "mm", "deg"; "" of a column whose values have none. */
export function columnUnit(title: CellValue, system: UnitSystem): string {
  const isIt = (header: string) => foldHeader(header) === foldHeader(title);
  const column = Object.values(BILL_COLUMNS).find(({ headers }) => headers.some(isIt));
  const units: Partial<Record<string, string>> = { length: system, lengths: system, thickness: system, angles: "deg" };
  return units[column?.kind ?? ""] ?? "";
}
