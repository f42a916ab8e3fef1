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
    const isName = typeof given === "string" || (typeof given === "number" && Number.isFinite(given));
    if (isBlank(given) || !isName) throw wrong(name, "a part of the bill", given);
    return String(given).trim();
  },
});
