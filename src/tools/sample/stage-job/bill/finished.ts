/** Finished jobs of the invented shop. */
import type { ShopSheetTable } from "../../../../job/job-sheets/contents.ts";
import { NONE_FINISHED } from "../../../../job/job-sheets/finished-sheet.ts";
import type { CellMatrix } from "../../../../units/cell.ts";

/** Of jobs before this one, a line and station each; the own factor is the one that stood beside the estimate. */
const ROWS: ShopSheetTable["rows"] = [
  ["Lantern bracket", "Brake", 42, 46, null],
  ["Gate hinge plate", "Brake", 31, 36, null],
  ["Awning channel", "Brake", 58, 61, null],
  ["Bench foot", "Brake", 24, 29, null],
  ["Lantern bracket", "Shear", 26, 24, null],
  ["Gate hinge plate", "Shear", 18, 19, null],
  ["Awning channel", "Shear", 33, 31, null],
  ["Gate hinge plate", "Deburr", 22, 25, null],
  ["Bench foot", "Deburr", 15, 19, null],
];
export const FINISHED_TABLE: ShopSheetTable = { ...NONE_FINISHED, rows: ROWS };
export const FINISHED: CellMatrix = [[...NONE_FINISHED.headers], ...ROWS.map((row) => [...row])];
