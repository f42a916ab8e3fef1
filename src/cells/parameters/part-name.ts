import { type CellValue, isBlank } from "../../units/cell.ts";
import { wrong } from "../../units/refusal.ts";
import type { CellParameter } from "../record/record.ts";

/** A line of the bill by its part; a name may be a number. */
export const partName = (description: string): CellParameter<string> => ({
  shape: "cell",
  type: "part",
  description,
  optional: false,
  default: null,
  read: (given: CellValue, name) => {
    if (!isBlank(given) && (typeof given === "string" || Number.isFinite(given))) return String(given).trim();
    throw wrong(name, "a part of the bill", given);
  },
});
