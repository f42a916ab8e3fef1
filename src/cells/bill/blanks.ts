/** BILL.BLANKS: the blank of every line, as the cut plan reads it. */
import type { CellMatrix } from "../../units/cell.ts";
import type { UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import { spill } from "../record/spill-columns.ts";
import type { Rates } from "../tables/rates.ts";
import { blankOf } from "./blank.ts";
import { isAnswered, outcomes, rowsOf } from "./rows.ts";
import { blanksFor } from "./shop.ts";
import { type BendTools, chooseTools } from "./tools.ts";

export function billBlanks(tools: BendTools, rates: Rates, system: UnitSystem, work?: Working): CellMatrix {
  rates.get("scrapAllowance"); // a table without it is refused once, not line by line
  rates.get("firstPieces");
  const found = outcomes(tools.bill, (line) => {
    const blank = blankOf(line, chooseTools(line, tools, system), system, work);
    return { blank, quantity: blanksFor(line.quantity, rates) };
  });
  const total = found
    .filter(isAnswered)
    .reduce((sum, { answer: { blank, quantity } }) => sum + quantity * blank.weight, 0);
  step(work, "W", "weight of all blanks", total, "kg", "sum");
  const rows = rowsOf(found, (line, { blank, quantity }) => ({
    Part: line.part,
    Material: line.material.name,
    Thickness: line.nominal,
    Length: blank.length,
    Width: blank.width,
    Quantity: quantity,
    Ordered: line.quantity,
    Grain: blank.grain,
    "Cut path": blank.path,
    Pierces: blank.pierces,
    "Weight each": blank.weight,
    Weight: quantity * blank.weight,
  }));
  return spill("BILL.BLANKS", rows, system);
}
